"""Owns the step from Lark's tree to ours for ways of making, what is made by them, and plies cut again.

Knows nothing of other statements, nor of faults.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from lark import v_args

from specc.syntax import tree
from specc.syntax.lower_alterations import present
from specc.syntax.lower_closures import LowerClosures
from specc.units import parse_number

if TYPE_CHECKING:
    from lark import Token
    from lark.tree import Meta


# Children are `Any`: Lark hands on whatever the method of the rule below has returned. The nodes are typed.
@v_args(inline=True, meta=True)
class LowerMakings(LowerClosures):
    """Turns the rules of methods, seams, finishes and hems into nodes."""

    def method(self, meta: Meta, name: tree.Word, title: Any, makes: tree.Word, *body: Any) -> tree.Method:
        return tree.Method(name, title, makes, present(body), self._span(meta))

    def made(self, _meta: Meta, made: Token) -> tree.Word:
        return self._word(made)

    def chosen_property(self, meta: Meta, chosen: tree.Property, when: tree.When) -> tree.ChosenProperty:
        return tree.ChosenProperty(chosen, when, self._span(meta))

    def material(self, meta: Meta, name: tree.Word, title: Any) -> tree.Material:
        return tree.Material(name, title, self._span(meta))

    def allowance(self, meta: Meta, width: tree.Expression, *parts: Any) -> tree.Allowance:
        on, folded, trimmed, when = parts
        return tree.Allowance(width, on, folded, trimmed, when, self._span(meta))

    def turned_by(self, meta: Meta, deep: tree.Expression, under: Any, when: Any) -> tree.TurnedBy:
        return tree.TurnedBy(deep, under, when, self._span(meta))

    def takes(self, meta: Meta, material: tree.Word, cut_width: tree.Expression, *parts: Any) -> tree.Takes:
        lying, *added, when = parts
        long, overlapping, turning, joining, hanging, beyond = added
        return tree.Takes(
            material,
            cut_width,
            lying,
            long,
            overlapping,
            turning,
            joining,
            hanging,
            beyond,
            when,
            self._span(meta),
        )

    def lying(self, _meta: Meta, how: tree.Word, turned: Any) -> tree.Lying:
        return tree.Lying(how, turned)

    def inward_or_outward(self, _meta: Meta, side: Token) -> tree.Word:
        return self._word(side)

    def pass_(self, meta: Meta, text: tree.Text, stitch: Token | None, *parts: Any) -> tree.Pass:
        number = None if stitch is None else tree.Number(parse_number(stitch), None, self._span(stitch))
        stitch_length, inset, inset_from, through, when = parts
        return tree.Pass(
            text, number, stitch_length, inset, inset_from, through or (), when, self._span(meta)
        )

    def pierced(self, _meta: Meta, *plies: tree.Word) -> tuple[tree.Word, ...]:
        return plies

    def seam(self, meta: Meta, *parts: Any) -> tree.Seam:
        name, title, first, second, *others, method, settings = parts
        return tree.Seam(name, title, first, second, tuple(others), method, settings or (), self._span(meta))

    def finish(self, meta: Meta, *parts: Any) -> tree.Finish:
        kind, name, title, along, method, settings = parts
        return tree.Finish(kind, name, title, along, method, settings or (), self._span(meta))

    def finish_kind(self, _meta: Meta, kind: Token) -> tree.Word:
        return self._word(kind)

    def refs(self, _meta: Meta, *refs: tree.Ref) -> tuple[tree.Ref, ...]:
        return refs

    def hold(self, meta: Meta, share: tree.Expression, along: tree.Ref, *bounds: Any) -> tree.Hold:
        start, end = bounds
        return tree.Hold(share, along, start, end, self._span(meta))

    def allowance_on(
        self, meta: Meta, width: tree.Expression, edges: tuple[tree.Ref, ...]
    ) -> tree.AllowanceOn:
        return tree.AllowanceOn(width, edges, self._span(meta))

    def cut_long(self, meta: Meta, material: tree.Word, length: tree.Expression) -> tree.CutLong:
        return tree.CutLong(material, length, self._span(meta))

    def also_cut(self, meta: Meta, count: Token | None, *parts: Any) -> tree.AlsoCut:
        *pieces, cloth, bare = parts
        number = None if count is None else tree.Number(parse_number(count), None, self._span(count))
        return tree.AlsoCut(number, tuple(pieces), cloth, bare is not None, self._span(meta))

    def bare(self, _meta: Meta) -> bool:
        return True
