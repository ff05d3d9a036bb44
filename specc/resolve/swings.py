"""Owns giving `swing` its meaning: which shares of a dart go where, and the names that they leave behind.

Knows nothing of how a dart is swung.
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.model.alteration import Form, Swing, SwingTarget
from specc.model.expression import Constant
from specc.resolve.codes import enumerated, out_of_range
from specc.resolve.expressions import FIGURES, meaning
from specc.resolve.parts import DARTS, Gone, wrong_kind
from specc.syntax import tree
from specc.units import Dimension

if TYPE_CHECKING:
    from specc.diagnostics import Collector
    from specc.model.expression import PartRef
    from specc.resolve.parts import Parts
    from specc.resolve.reshaping import Finder

INSIDE_DART = declare(
    "SPC218", "dart-inside-piece", Severity.ERROR, "`{dart}` lies inside its piece and cannot be swung"
)
WRONG_TARGET = declare(
    "SPC219", "wrong-target", Severity.ERROR, "`{dart}` cannot be swung into `{target}`, {reason}"
)
SHARED_OUT = declare(
    "SPC426", "more-than-the-dart", Severity.ERROR, "more than the whole of `{dart}` is swung: {shares}"
)

_WHAT = "the share of a dart"
_SHARE = (Dimension.RATIO, Dimension.NUMBER)


class Swinger:
    """Resolves swings in order; `parts` are as the alterations before have left them."""

    def __init__(self, finder: Finder, parts: Parts, say: Collector) -> None:
        self._finder = finder
        self._parts = parts
        self._say = say

    def step(self, node: tree.Swing) -> Swing | None:
        """What the statement asks for; None after a fault."""
        dart = self._parts.find(node.dart, DARTS, self._say)
        into = [self._target(each, dart) for each in node.into]
        if dart is None or not self._on_an_edge(node, dart):
            return None
        targets = tuple(target for target in into if target is not None)
        if len(targets) < len(into) or not self._shared(node, dart, targets):
            return None
        self._left_behind(node, dart, targets)
        return Swing(dart, targets, node.span)

    def _on_an_edge(self, node: tree.Swing, dart: PartRef) -> bool:
        """Whether the dart opens on an edge; if not, it is reported."""
        if self._parts.pieces[dart.piece or ""].kinds[dart.name] == "dart":
            return True
        told = INSIDE_DART.at(node.dart.span, dart=f"{dart.piece}.{dart.name}")
        self._say.add(told.help("release it, or crop the piece at its widest so that it opens on the edge"))
        return False

    def _target(self, node: tree.SwingTarget, dart: PartRef | None) -> SwingTarget | None:
        part = self._parts.find(node.part, ("edge", "dart"), self._say)
        share = None
        if node.share is not None and not isinstance(node.share, tree.Rest):
            share = meaning(node.share, FIGURES, self._say, what=_WHAT, wanted=_SHARE)
            if isinstance(share, Constant) and not 0 < share.value.value <= 1:
                bounds = "above 0% and up to 100%"
                self._say.add(out_of_range(node.share.span, _WHAT, bounds, found=share.value))
                return None
            if share is None:
                return None
        if dart is None or part is None:
            return None
        fault = self._not_a_target(dart, part)
        if fault is not None:
            own = self._parts.pieces[dart.piece or ""]
            name, into = f"{dart.piece}.{dart.name}", f"{part.piece}.{part.name}"
            told = WRONG_TARGET.at(node.part.span, dart=name, target=into, reason=fault)
            edges = enumerated([f"`{dart.piece}.{edge}`" for edge in own.of("edge")], "or")
            self._say.add(told.help(f"swing it into an edge of its own piece: {edges}"))
            return None
        place = None
        if node.place is not None:
            if self._is_dart(part):
                told = wrong_kind(node.place.span, f"{part.piece}.{part.name}", "dart", ("edge",))
                self._say.add(told.help("take the place out: the dart is added to the other one"))
            else:
                place = self._finder.place(node.place, part)
            if place is None:
                return None
        return SwingTarget(part, place, Form(node.form.text) if node.form else Form.DART, share)

    @staticmethod
    def _not_a_target(dart: PartRef, target: PartRef) -> str | None:
        if target.piece != dart.piece:
            return "which is on another piece"
        return "which is the dart itself" if target.name == dart.name else None

    def _is_dart(self, part: PartRef) -> bool:
        return self._parts.pieces[part.piece or ""].kinds[part.name] == "dart"

    def _shared(self, node: tree.Swing, dart: PartRef, targets: tuple[SwingTarget, ...]) -> bool:
        """Whether the shares are those of one dart; if not, it is reported."""
        named = sum(map(_figure, targets))
        rests = [target for target in targets if target.share is None]
        if named < 1 if len(rests) == 1 else named <= 1 and not rests:
            return True
        shares = enumerated([_written(each) for each in node.into], "and")
        told = SHARED_OUT.at(node.into[-1].span, dart=f"{dart.piece}.{dart.name}", shares=shares)
        self._say.add(told.help("let the shares come to 100% at most; what they leave stays in the dart"))
        return False

    def _left_behind(self, node: tree.Swing, dart: PartRef, targets: tuple[SwingTarget, ...]) -> None:
        """The names after the swing: the dart is lost where nothing of it is left."""
        own = self._parts.pieces[dart.piece or ""]
        whole = any(target.share is None for target in targets) or sum(map(_figure, targets)) == 1
        darts = [t.part.name for t in targets if t.form is Form.DART and not self._is_dart(t.part)]
        if whole and len(targets) == 1 and darts:
            return  # the dart moves under its own name
        for edge in darts:
            name, number = f"{dart.name}-into-{edge}", 1
            while name in own.kinds:
                number += 1
                name = f"{dart.name}-into-{edge}-{number}"
            own.kinds[name] = "dart"
        if whole:
            into = enumerated([f"`{t.part.piece}.{t.part.name}`" for t in targets], "and")
            self._parts.lose(dart, Gone(f"swung into {into} on line {node.span.line}", node.dart.span))


def _figure(target: SwingTarget) -> Fraction:
    """The share as written; nothing for all that the others leave."""
    return target.share.value.value if isinstance(target.share, Constant) else Fraction(0)


def _written(target: tree.SwingTarget) -> str:
    """The share in words."""
    if target.share is None:
        return "all of it"
    return "the rest" if isinstance(target.share, tree.Rest) else target.share.span.text
