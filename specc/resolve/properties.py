"""Owns reading the properties of a sheet: each by its name, each value by the shape it must have.

Knows nothing of which sheet they stand in.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.names import did_you_mean
from specc.resolve.codes import (
    MISSING,
    NAME_TAKEN,
    OUT_OF_RANGE,
    UNKNOWN_PROPERTY,
    listed,
    unknown_word,
    wrong_value,
)
from specc.source import Span
from specc.syntax import tree
from specc.units import Dimension, Quantity, unit

if TYPE_CHECKING:
    from collections.abc import Iterable

    from specc.diagnostics import Collector

Value = tuple[tree.Atom, ...]


class Properties:
    """The properties of one declaration; unknown and repeated ones are reported as it is made."""

    def __init__(
        self,
        owner: str,
        body: Iterable[object],
        *,
        known: tuple[str, ...],
        say: Collector,
        repeated: tuple[str, ...] = (),
        place: Span,
    ) -> None:
        self.owner = owner
        self.say = say
        self.place = place
        self._found: dict[str, list[tree.Property]] = {}
        for item in body:
            if not isinstance(item, tree.Property):
                continue
            name = item.name.text
            if name not in (*known, *repeated):
                said = UNKNOWN_PROPERTY.at(item.name.span, kind=owner, name=name)
                say.add(said.help(did_you_mean(name, (*known, *repeated)) or listed((*known, *repeated))))
            elif name in self._found and name not in repeated:
                said = NAME_TAKEN.at(item.name.span, kind="property", name=name)
                say.add(said.see(self._found[name][0].name.span, "first here"))
            else:
                self._found.setdefault(name, []).append(item)

    def all(self, name: str) -> tuple[tree.Property, ...]:
        """Every property `name`, in order."""
        return tuple(self._found.get(name, ()))

    def get(self, name: str) -> tree.Property | None:
        """The property `name`, if it is there."""
        found = self._found.get(name)
        return found[0] if found else None

    def require(self, name: str) -> tree.Property | None:
        """The property `name`; its absence is reported."""
        found = self.get(name)
        if found is None:
            self.say.add(MISSING.at(self.place, owner=self.owner, name=name).help(f"write a line `{name} …`"))
        return found

    def words(self, name: str) -> str | None:
        """The value as plain words, or the text between quotes."""
        found = self.get(name)
        return None if found is None else spoken(found.values)

    def word(self, name: str, options: tuple[str, ...], *, kind: str) -> str | None:
        """The value as one of `options` (words written apart count as joined by hyphens or spaces)."""
        found = self.get(name)
        if found is None:
            return None
        said = spoken(found.values)
        for option in options:
            if said.replace(" ", "-") == option.replace(" ", "-"):
                return option
        self.say.add(unknown_word(span_of(found.values), said, kind, known=options))
        return None

    def quantity(self, name: str, dimension: Dimension, *, wanted: str) -> Quantity | None:
        """The value as one positive quantity of a dimension."""
        found = self.get(name)
        if found is None:
            return None
        if len(found.values) == 1 and len(found.values[0]) == 1:
            return self.measure(found.values[0][0], name, dimension, wanted=wanted)
        self.say.add(wrong_value(span_of(found.values), name, wanted))
        return None

    def ratio(self, name: str, *, most: Fraction = Fraction(10)) -> Fraction | None:
        """The value as a share of at least nothing and at most `most`."""
        found = self.quantity(name, Dimension.RATIO, wanted="a percentage, such as `6%`")
        if found is not None and found.value > most:
            place = self.get(name)
            at = place.span if place else self.place
            self.say.add(OUT_OF_RANGE.at(at, what=f"`{name}`", bounds=f"at most {most * 100}%", found=str(found)))
            return None
        return None if found is None else found.value

    def measure(self, atom: tree.Atom, name: str, dimension: Dimension, *, wanted: str) -> Quantity | None:
        """The atom as a quantity of `dimension` above zero (or zero, for a ratio); else it is reported."""
        quantity = as_quantity(atom)
        if quantity is None or quantity.dimension != dimension:
            self.say.add(wrong_value(atom.span, name, wanted))
            return None
        if quantity.value == 0 and dimension != Dimension.RATIO:
            self.say.add(OUT_OF_RANGE.at(atom.span, what=f"`{name}`", bounds="more than nothing", found=str(quantity)))
            return None
        return quantity


def as_quantity(atom: tree.Atom) -> Quantity | None:
    """The number with its unit as an exact quantity; None for anything else and for a unit that does not exist."""
    if not isinstance(atom, tree.Number):
        return None
    written = unit(atom.unit or "")
    return None if written is None else Quantity.of(atom.value, written)


def spoken(values: tuple[Value, ...]) -> str:
    """The values as written, in words: texts without their quotes, one space between words, `, ` between values."""
    return ", ".join(" ".join(said(atom) for atom in value) for value in values)


def said(atom: tree.Atom) -> str:
    """One atom as it is read aloud."""
    match atom:
        case tree.Word() | tree.Text() | tree.Date():
            return atom.text
        case _:
            return " ".join(atom.span.text.split())


def span_of(values: tuple[Value, ...]) -> Span:
    """The place of all the values of a property."""
    return values[0][0].span.to(values[-1][-1].span)
