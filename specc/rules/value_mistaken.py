"""A number far from what cloth and sewing have is a slip of the pen, or of the unit.

Each bound has its reason in the table; all are common practice, no source. What is meant is proposed only
where the same number in one other unit, and only one, is an ordinary value.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from specc.diagnostics import Severity, declare
from specc.rules.makings import all_sewn
from specc.units import UNITS, Quantity, format_ratio

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.rules.subject import Subject
    from specc.source import Span

MISTAKEN = declare(
    "SPC593", "value-mistaken", Severity.WARNING, "{what} of `{name}` looks mistaken: {found} is {why}"
)


@dataclass(frozen=True, slots=True)
class Bounds:
    """What is believed: `least` to `most`, in base units; why not less and why not more."""

    least: float
    most: float
    thin: str
    thick: str

    def why(self, value: float) -> str | None:
        """Why a value is not believed; None for one that is."""
        return self.thin if value < self.least else self.thick if value > self.most else None


WEIGHT: Final = Bounds(15.0, 900.0, "less than a veil weighs", "more than a heavy coating weighs")  # g/m²
WIDTH: Final = Bounds(
    200.0, 3200.0, "narrower than cloth is woven, which is 20 cm", "wider than looms weave, which is 3.2 m"
)
SHRINKS: Final = Bounds(0.0, 0.15, "", "more than even a loose knit shrinks, which is 15%")
STITCH: Final = Bounds(0.8, 10.0, "so short that the needle cuts the cloth", "longer than a machine sews")
STRAIGHT: Final = ("101", "301", "401")  # ISO 4915, from memory: a zigzag lies close, as in a buttonhole
HEM: Final = Bounds(0.0, 250.0, "", "deeper than a hem hangs well, which is 25 cm")
ALLOWANCE: Final = Bounds(0.0, 60.0, "", "wider than an allowance that is let out, which is 6 cm")
PRICE: Final = Bounds(0.0, 1000.0, "", "more than the dearest cloth costs by the metre")
ORDER: Final = Bounds(0.0, 100_000.0, "", "more than is cut in one order")

_USUAL_WIDTH: Final = (700.0, 3200.0)  # mm
_USUAL_WEIGHT: Final = (30.0, 600.0)  # g/m²
_EXACT = 1e-6
_METRE = 1000
# Currencies whose unit buys much the same; a yen buys a hundredth, and 1000 of them are an ordinary price.
_LARGE = ("USD", "EUR", "GBP", "CHF", "CAD", "AUD")


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a value."""
    yield from _cloths(subject)
    yield from _sewn(subject)
    count = sum(ordered.count for ordered in subject.garment.header.order)
    if why := ORDER.why(count):
        header = subject.garment.header
        yield _told(header.origin, "the order", header.name, str(count), why)


def _cloths(subject: Subject) -> Iterator[Diagnostic]:
    for cloth in subject.garment.cloths:
        if cloth.weight is not None and (why := WEIGHT.why(float(cloth.weight.value))):
            told = _told(cloth.origin, "the weight", cloth.name, str(cloth.weight), why)
            yield _meant(told, cloth.weight, ("g/m2", "oz/yd2"), _USUAL_WEIGHT)
        if cloth.width is not None and (why := WIDTH.why(float(cloth.width.value))):
            told = _told(cloth.origin, "the width", cloth.name, str(cloth.width), why)
            yield _meant(told, cloth.width, ("mm", "cm", "in"), _USUAL_WIDTH)
        for way, share in (("length", cloth.shrinks_length), ("width", cloth.shrinks_width)):
            if why := SHRINKS.why(float(share)):
                yield _told(cloth.origin, f"the shrinkage in {way}", cloth.name, format_ratio(share), why)
        if cloth.price is not None and cloth.price.currency in _LARGE:
            by_metre = float(cloth.price.amount * _METRE / UNITS[cloth.price.per].size)
            if why := PRICE.why(by_metre):
                found = f"{float(cloth.price.amount):.2f} {cloth.price.currency} per {cloth.price.per}"
                yield _told(cloth.origin, "the price", cloth.name, found, why)


def _sewn(subject: Subject) -> Iterator[Diagnostic]:
    for sewn in all_sewn(subject):
        making = sewn.making
        for done in making.passes:
            if done.stitch_length is None:
                continue
            length = subject.evaluate(done.stitch_length)
            close = length < STITCH.least and done.stitch not in STRAIGHT
            if not close and (why := STITCH.why(length)):
                found = subject.difference(length)
                yield _told(sewn.origin, "the stitch length", sewn.name, found, why)
                break
        depth = max((subject.evaluate(each) for each in making.turned), default=0.0)
        widths = (making.allowance, *(() if making.second is None else (making.second,)))
        width = max(subject.evaluate(each) for each in widths)
        if sewn.kind == "hem":
            if depth > HEM.most + _EXACT:
                yield _told(sewn.origin, "the depth", sewn.name, subject.length(depth), HEM.thick)
        elif not making.turned and width > ALLOWANCE.most + _EXACT:
            yield _told(sewn.origin, "the allowance", sewn.name, subject.length(width), ALLOWANCE.thick)


def _told(origin: Span, what: str, name: str, found: str, why: str) -> Diagnostic:
    told = MISTAKEN.at(origin, what=what, name=name, found=found, why=why)
    return told.help("look at the number and its unit; if it is meant, accept it with the reason")


def _meant(
    told: Diagnostic, found: Quantity, units: tuple[str, ...], usual: tuple[float, float]
) -> Diagnostic:
    """The same with the value in another unit that would be ordinary, where there is one and no more."""
    others = (Quantity.of(found.number, UNITS[unit]) for unit in units if unit != found.unit.symbol)
    likely = [each for each in others if usual[0] <= float(each.value) <= usual[1]]
    return told.help(f"perhaps `{likely[0]}` is meant") if len(likely) == 1 else told
