"""Owns giving seams, finishes and hems their meaning.

Knows nothing of their lengths.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.construction import EdgeAllowance, Finish, Hold, Seam, ToFit
from specc.model.expression import Constant
from specc.model.material import Trim
from specc.resolve.buying import NOTHING_SAID
from specc.resolve.closures import resolve_closing
from specc.resolve.codes import MORE_THAN_ONE, NAMED_TWICE, one_of, out_of_range, unit_missing, wrong_value
from specc.resolve.expressions import FIGURES, meaning
from specc.resolve.fixed import fixed
from specc.resolve.makings import MAKES_OTHER, resolve_making, with_article
from specc.resolve.properties import as_quantity, span_of, spoken, titled
from specc.resolve.settings import Settings
from specc.syntax import tree
from specc.units import UNITS, Dimension, Quantity

if TYPE_CHECKING:
    from collections.abc import Mapping

    from specc.diagnostics import Collector
    from specc.model.construction import Making
    from specc.model.expression import Expression, PartRef
    from specc.resolve.declared import Declared
    from specc.resolve.makings import Terms
    from specc.resolve.parts import Parts

HOLD_ELSEWHERE = declare(
    "SPC222", "hold-on-other-edge", Severity.ERROR, "`{edge}` is not an edge of {kind} `{name}`"
)
LENGTH_AND_HOLD = declare(
    "SPC531",
    "length-and-hold",
    Severity.ERROR,
    "`{trim}` is held in along the {kind} and has a length of its own: each says how long it is cut",
)

_EASE = (Dimension.LENGTH, Dimension.RATIO)
_PLACE = (Dimension.LENGTH, Dimension.RATIO)
# A millimetre on a walked seam is within what cutting and sewing lose: common practice, no source.
_TOLERANCE = Quantity.of(1, UNITS["mm"])
_MOST_TOLERANCE = Quantity.of(50, UNITS["mm"])
_NONE = Quantity.of(0, UNITS["mm"])
_ANY_WIDTH = Quantity.of(100, UNITS["mm"])
_SEAMS = ("seam",)
_FINISHES = ("finish", "hem")
_CLOSURES = ("closure",)


class Maker:
    """Resolves what is sewn from methods, trims (None for one with a fault) and parts."""

    def __init__(
        self,
        declared: Declared,
        trims: Mapping[str, Trim | None],
        parts: Parts,
        say: Collector,
        *,
        terms: Terms,
    ) -> None:
        """`terms` say what the length of a trim, and what is held in, may be reckoned from."""
        self._terms = terms
        self._declared = declared
        self._trims = trims
        self._parts = parts
        self._say = say

    def seam(self, node: tree.Seam) -> Seam | None:
        """The seam; None when an edge or its method is not to be had."""
        first, second, *others = (self._chain(refs) for refs in (node.first, node.second, *node.others))
        settings = Settings(node.settings, node.method.span, self._say)
        ease, gathered = self._ease(node, settings)
        tolerance = self._tolerance(settings)
        making = self.making(node.method, settings, made=_SEAMS, wanted="seam")
        own = self._allowances(settings, node, (first, second, *others), making)
        if not first or not second or not all(others) or making is None:
            return None
        return Seam(
            node.name.text,
            titled(node.title, f"{node.name.text.replace('-', ' ')} seam"),
            first,
            second,
            tuple(others),
            making,
            ease,
            gathered,
            tolerance or Constant(_TOLERANCE, node.name.span),
            own,
            node.name.span,
        )

    def finish(self, node: tree.Finish) -> Finish | None:
        """The finish or hem; None when an edge or its method is not to be had."""
        along = self._chain(node.along)
        settings = Settings(node.settings, node.method.span, self._say)
        making = self.making(node.method, settings, made=_FINISHES, wanted=node.kind.text)
        holds = [self._hold(item, node, along) for item in settings.holds]
        own = self._allowances(settings, node, (along,), making)
        if not along or making is None:
            return None
        self._tell_held_twice(settings, node, making)
        return Finish(
            node.kind.text,
            node.name.text,
            titled(node.title, node.name.text.replace("-", " ")),
            along,
            making,
            tuple(hold for hold in holds if hold is not None),
            own,
            node.name.span,
        )

    def closure(self, node: tree.Closure) -> Finish | None:
        """The closure; None when an edge or its method is not to be had, or its places are not."""
        first = self._chain(node.along)
        second = self._chain(node.to) if node.to else first
        settings = Settings(node.settings, node.method.span, self._say)
        making = self.making(node.method, settings, made=_CLOSURES, wanted="closure")
        if not first or not second or making is None:
            return None
        closing = resolve_closing(node, (first, second), making, self._parts, self._say)
        if closing is None:
            return None
        return Finish(
            "closure",
            node.name.text,
            titled(node.title, node.name.text.replace("-", " ")),
            (*first, *(ref for ref in second if not _among(ref, first))),
            making,
            (),
            (),
            node.name.span,
            closing,
        )

    def _chain(self, refs: tuple[tree.Ref, ...]) -> tuple[PartRef, ...]:
        found: list[PartRef] = []
        complete = True
        for ref in refs:
            edge = self._parts.find(ref, ("edge",), self._say)
            complete = complete and edge is not None
            if edge is not None and _among(edge, found):
                first = next(one for one in found if _among(edge, [one]))
                told = NAMED_TWICE.at(ref.span, name=f"{edge.piece}.{edge.name}")
                self._say.add(told.see(first.origin, "first here"))
            elif edge is not None:
                found.append(edge)
        return tuple(found) if complete else ()

    # --- methods ---

    def making(
        self, word: tree.Word, settings: Settings, *, made: tuple[str, ...], wanted: str
    ) -> Making | None:
        """The method with its settings filled in; None when it is not to be had or makes something else."""
        method = self._declared.find(tree.Method, word)
        if method is None:
            return None
        if method.makes.text not in made:
            told = MAKES_OTHER.at(
                word.span,
                method=word.text,
                made=with_article(method.makes.text),
                wanted=with_article(wanted),
            )
            self._say.add(told.help(one_of(self._declared.methods_making(made))))
            return None
        making = resolve_making(method, settings, self._trims, self._say, terms=self._terms)
        settings.close(
            f"method `{word.text}`",
            holds=wanted in _FINISHES,
            spacings=wanted in _CLOSURES,
            allowances=wanted in (*_SEAMS, *_FINISHES),
        )
        return making

    def unused_method(self, node: tree.Method) -> None:
        """Report what is wrong in a method that nothing uses: any trim will do for its materials."""
        place = node.name.span
        stand_in = Trim(
            "any",
            "any",
            "tape",
            (),
            _ANY_WIDTH,
            Fraction(0),
            None,
            None,
            None,
            None,
            (),
            NOTHING_SAID,
            _ANY_WIDTH,
            _ANY_WIDTH,
            None,
            None,
            place,
        )
        materials = {item.name.text: item.name for item in node.body if isinstance(item, tree.Material)}
        any_trim = ((tree.Word("any", place),),)
        settings = tuple(tree.Property(name, any_trim, name.span) for name in materials.values())
        used = Settings(settings, place, self._say)
        resolve_making(node, used, {"any": stand_in}, self._say, terms=self._terms)

    # --- settings of the seam itself ---

    def _ease(self, node: tree.Seam, settings: Settings) -> tuple[Expression | ToFit | None, bool]:
        """`ease 1/2 in`, `ease 4%`, or `gathers 50%`; `to fit` in place of the amount."""
        both = settings.take("ease"), settings.take("gathers")
        if both[0] is not None and both[1] is not None:
            owner = f"seam `{node.name.text}`"
            told = MORE_THAN_ONE.at(both[1].span, owner=owner, what="of `ease` and `gathers`")
            self._say.add(told.see(both[0].span, "the first"))
        wanted = "a length or a percentage, such as `1/2 in` or `4%`, or `to fit`"
        ease, gathers = (
            ToFit(found.span)
            if found is not None and spoken(found.values) == "to fit"
            else self._amount(found, _EASE, wanted)
            for found in both
        )
        return (ease, False) if gathers is None else (gathers, True)

    def _tolerance(self, settings: Settings) -> Expression | None:
        found = settings.take("tolerance")
        amount = self._amount(found, (Dimension.LENGTH,), "a length, such as `2 mm`")
        if found is not None and amount is not None and amount.value.value > _MOST_TOLERANCE.value:
            bounds = f"at most {_MOST_TOLERANCE}"
            place = span_of(found.values)
            self._say.add(out_of_range(place, "the tolerance of a seam", bounds, found=amount.value))
        return amount

    def _amount(
        self, found: tree.Property | None, wanted: tuple[Dimension, ...], words: str
    ) -> Constant | None:
        if found is None:
            return None
        atom = found.values[0][0] if len(found.values) == len(found.values[0]) == 1 else None
        quantity = None if atom is None else as_quantity(atom)
        if quantity is None or quantity.dimension not in wanted:
            told = wrong_value(span_of(found.values), found.name.text, words)
            bare = isinstance(atom, tree.Number) and atom.unit is None
            self._say.add(told.help(unit_missing(span_of(found.values).text, wanted[0])) if bare else told)
            return None
        return Constant(quantity, found.span)

    # --- allowances of single edges ---

    def _allowances(
        self,
        settings: Settings,
        node: tree.Seam | tree.Finish,
        sides: tuple[tuple[PartRef, ...], ...],
        making: Making | None,
    ) -> tuple[EdgeAllowance, ...]:
        """The edges whose allowance is not that of the method."""
        found: list[EdgeAllowance] = []
        edges = tuple(edge for side in sides for edge in side)
        for item in settings.allowances:
            what = "an allowance"
            width = meaning(item.width, FIGURES, self._say, what=what, wanted=(Dimension.LENGTH,))
            known = None if width is None else fixed(width)
            # Of an allowance turned twice what is turned under stays, and lies within what is turned up.
            depths = () if making is None else making.turned
            under = fixed(depths[1]) if len(depths) > 1 else None
            least = _NONE if under is None else Quantity(2 * under.value.value, under.value.unit)
            if known is not None and known.value.value < least.value:
                self._say.add(out_of_range(item.width.span, what, f"at least {least}", found=known.value))
            for ref in item.edges:
                edge = self._parts.find(ref, ("edge",), self._say)
                if edge is None or known is None:
                    continue
                if all(sides) and not _among(edge, edges):
                    self._tell_elsewhere(ref, edge, node, edges)
                elif _among(edge, [one.edge for one in found]):
                    first = next(one.edge for one in found if _among(edge, [one.edge]))
                    told = NAMED_TWICE.at(ref.span, name=f"{edge.piece}.{edge.name}")
                    self._say.add(told.see(first.origin, "first here"))
                else:
                    found.append(EdgeAllowance(edge, known))
        return tuple(found)

    def _tell_elsewhere(
        self, ref: tree.Ref, edge: PartRef, node: tree.Seam | tree.Finish, edges: tuple[PartRef, ...]
    ) -> None:
        kind = "seam" if isinstance(node, tree.Seam) else node.kind.text
        told = HOLD_ELSEWHERE.at(ref.span, edge=f"{edge.piece}.{edge.name}", kind=kind, name=node.name.text)
        self._say.add(told.help(one_of(dict.fromkeys(f"{one.piece}.{one.name}" for one in edges))))

    # --- holds ---

    def _tell_held_twice(self, settings: Settings, node: tree.Finish, making: Making) -> None:
        """Report a trim that is held in by shares and has a length of its own."""
        stated = next((takes for takes in making.takes if takes.long is not None), None)
        if stated is None or stated.long is None or not settings.holds:
            return
        told = LENGTH_AND_HOLD.at(settings.holds[0].span, trim=stated.trim, kind=node.kind.text)
        self._say.add(told.see(stated.long.origin, "its length").help("take out one of them"))

    def _hold(self, node: tree.Hold, finish: tree.Finish, along: tuple[PartRef, ...]) -> Hold | None:
        reckoned = not isinstance(node.share, tree.Number)
        wanted = (Dimension.RATIO, Dimension.NUMBER) if reckoned else (Dimension.RATIO,)
        share = meaning(
            node.share, self._terms.measured, self._say, what="how much is held in", wanted=wanted
        )
        if isinstance(share, Constant) and not 0 < share.value.value < 1:
            bounds = "above 0% and below 100%"
            told = out_of_range(node.share.span, "what is held in", bounds, found=share.value)
            self._say.add(told)
        # An edge that could not be found along the finish has been reported there.
        named = {" ".join(ref.span.text.split()) for ref in finish.along}
        if not along and " ".join(node.along.span.text.split()) in named:
            return None
        edge = self._parts.find(node.along, ("edge",), self._say)
        if edge is None:
            return None
        if along and not _among(edge, along):
            self._tell_elsewhere(node.along, edge, finish, along)
            return None
        start, end = self._limit(node.start, edge), self._limit(node.end, edge)
        if share is None or (node.start and start is None) or (node.end and end is None):
            return None
        return Hold(share, edge, start, end, node.span)

    def _limit(self, node: tree.Expression | None, edge: PartRef) -> Expression | str | None:
        """A corner by name, or a length or ratio from the edge's start."""
        if isinstance(node, tree.Named):
            return self._parts.corner(node.name, edge, self._say)
        return meaning(node, FIGURES, self._say, what="a place on an edge", wanted=_PLACE)


def _among(edge: PartRef, others: tuple[PartRef, ...] | list[PartRef]) -> bool:
    return any((edge.piece, edge.name) == (other.piece, other.name) for other in others)
