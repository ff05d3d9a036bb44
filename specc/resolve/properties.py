"""Owns reading the properties of a declaration: each by its name, each value by the shape it must have.

Knows nothing of which declaration they stand in.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.names import did_you_mean, nearest
from specc.resolve.codes import (
    MISSING,
    UNKNOWN_PROPERTY,
    name_taken,
    out_of_range,
    there_are,
    unit_missing,
    unknown_word,
    wrong_value,
)
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity, unit

if TYPE_CHECKING:
    from collections.abc import Iterable
    from fractions import Fraction

    from specc.diagnostics import Collector
    from specc.source import Span

Value = tuple[tree.Atom, ...]

_MOST_RATIO = Quantity.of(1000, UNITS["%"])
# Nothing that a person sews is longer than a roll of a hundred metres is.
MOST_LENGTH = Quantity.of(100, UNITS["m"])


class Properties:
    """The properties of one declaration; unknown and repeated ones are reported as it is made."""

    def __init__(  # noqa: PLR0913 a sheet is told apart by its words
        self,
        kind: str,
        name: tree.Word | None,
        body: Iterable[object],
        *,
        known: tuple[str, ...],
        say: Collector,
        place: Span,
        repeated: tuple[str, ...] = (),
    ) -> None:
        """Messages call the declaration by its `kind`, with an article, and `name`; it stands at `place`."""
        self.say = say
        self.place = place
        self._owner = f"{kind.partition(' ')[2] or kind} `{name.text}`" if name else kind
        self._found: dict[str, list[tree.Property]] = {}
        self._misspelt: list[str] = []
        names = (*known, *repeated)
        for item in body:
            if not isinstance(item, tree.Property):
                continue
            written = item.name.text
            if written not in names:
                told = UNKNOWN_PROPERTY.at(item.name.span, owner=kind, what="property", name=written)
                say.add(told.help(did_you_mean(written, names) or there_are(names)))
                self._misspelt.append(written)
            elif written in self._found and written not in repeated:
                first = self._found[written][0].name.span
                say.add(name_taken(item.name.span, "a property", written, first=first))
            else:
                self._found.setdefault(written, []).append(item)

    def all(self, name: str) -> tuple[tree.Property, ...]:
        """Every property `name`, in order."""
        return tuple(self._found.get(name, ()))

    def get(self, name: str) -> tree.Property | None:
        """The property `name`, if it is there."""
        found = self._found.get(name)
        return found[0] if found else None

    def require(self, name: str, example: str) -> tree.Property | None:
        """The property `name`; its absence is reported, unless one has been that may be it, misspelt."""
        found = self.get(name)
        if found is None and not any(name in nearest(written, (name,)) for written in self._misspelt):
            told = MISSING.at(self.place, owner=self._owner, name=name)
            self.say.add(told.help(f"write a line such as `{name} {example}`"))
        return found

    def words(self, name: str, *, example: str = "text") -> str | None:
        """The one value as plain words, or the text between quotes; it says something."""
        found = self.get(name)
        if found is None:
            return None
        if len(found.values) > 1 or not spoken(found.values).strip():
            self.say.add(wrong_value(span_of(found.values), name, f'one text, such as `"{example}"`'))
            return None
        return spoken(found.values)

    def list_of_words(self, name: str) -> str | None:
        """The values as plain words with commas between them."""
        found = self.get(name)
        return None if found is None else spoken(found.values)

    def word(self, name: str, options: tuple[str, ...], *, kind: str) -> str | None:
        """The value as one of `options` (words written apart count as joined by hyphens or spaces)."""
        found = self.get(name)
        if found is None:
            return None
        written = spoken(found.values)
        for option in options:
            if written.replace(" ", "-") == option.replace(" ", "-"):
                return option
        self.say.add(unknown_word(span_of(found.values), written, kind, known=options))
        return None

    def quantity(
        self, name: str, dimension: Dimension, *, wanted: str, most: Quantity = MOST_LENGTH
    ) -> Quantity | None:
        """The value as one quantity of a dimension, above zero and at most `most`."""
        found = self.get(name)
        if found is None:
            return None
        if len(found.values) == 1 and len(found.values[0]) == 1:
            return self.measure(found.values[0][0], name, dimension, wanted=wanted, most=most)
        self.say.add(wrong_value(span_of(found.values), name, wanted))
        return None

    def count(self, name: str, example: str, *, least: int = 1, most: int) -> int | None:
        """The value as a whole number from `least` to `most`, without a unit."""
        found = self.get(name)
        if found is None:
            return None
        match found.values:
            case ((tree.Number(unit=None) as written,),):
                if written.value.denominator == 1 and least <= written.value <= most:
                    return int(written.value)
                bounds = f"a whole number from {least} to {most:,}"
                self.say.add(out_of_range(written.span, f"`{name}`", bounds, found=written.span.text))
            case _:
                self.say.add(wrong_value(span_of(found.values), name, f"a number, such as `{example}`"))
        return None

    def ratio(self, name: str) -> Fraction | None:
        """The value as a share of at least nothing."""
        found = self.quantity(name, Dimension.RATIO, wanted="a percentage, such as `6%`", most=_MOST_RATIO)
        return None if found is None else found.value

    def measure(
        self, atom: tree.Atom, name: str, dimension: Dimension, *, wanted: str, most: Quantity = MOST_LENGTH
    ) -> Quantity | None:
        """The atom as a quantity of `dimension` above zero (a ratio may be zero) and at most `most`."""
        quantity = as_quantity(atom)
        if quantity is None or quantity.dimension != dimension:
            told = wrong_value(atom.span, name, wanted)
            bare = isinstance(atom, tree.Number) and atom.unit is None
            self.say.add(told.help(unit_missing(atom.span.text, dimension)) if bare else told)
            return None
        if quantity.value == 0 and dimension != Dimension.RATIO:
            self.say.add(out_of_range(atom.span, f"`{name}`", "more than nothing", found=quantity))
            return None
        if quantity.value > most.value:
            self.say.add(out_of_range(atom.span, f"`{name}`", f"at most {most}", found=quantity))
            return None
        return quantity


def as_quantity(atom: tree.Atom) -> Quantity | None:
    """The number with its unit as an exact quantity; None for anything else."""
    if not isinstance(atom, tree.Number):
        return None
    written = unit(atom.unit or "")
    return None if written is None else Quantity.of(atom.value, written)


def titled(title: tree.Text | None, otherwise: str) -> str:
    """The title that was written; an empty one is none."""
    return (title.text.strip() if title else "") or otherwise


def reason(text: tree.Text, word: str, wanted: str, say: Collector) -> str:
    """The text behind `word`, which must say something."""
    if not text.text.strip():
        say.add(wrong_value(text.span, word, wanted))
    return text.text


def spoken(values: tuple[Value, ...]) -> str:
    """The values in words: texts without their quotes, a space between words, `, ` between values."""
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


def span_of_value(value: Value) -> Span:
    """The place of one value."""
    return value[0].span.to(value[-1].span)
