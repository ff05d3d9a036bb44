"""Owns using a method of the library in a test: with its trims, on a garment without faults."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

from specc.drafting import Evaluator, FinishedPieces
from specc.library.methods import file_of
from specc.units import UNITS
from tests.drafting import garment

if TYPE_CHECKING:
    from specc.model.attachment import Attachment
    from specc.model.construction import Finish, Making, Seam
    from specc.model.expression import Expression

_MATERIALS = {
    "bound-outside": "binding edging",
    "elastic-bound": "binding edging",
    "bias-bound": "binding strip",
    "double-bias-bound": "binding strip",
    "hong-kong": "binding strip",
    "bias-faced": "strip strip",
    "stayed": "tape tape",
    "piped": "piping strip; cord cord",
    "elastic-casing": "elastic edging",
    "elastic-waistband": "elastic edging",
    "drawstring-casing": "cord cord",
    "zip-centred": "zip zip",
    "zip-lapped": "zip zip",
    "zip-concealed": "zip zip",
    "buttoned": "button button; places 3",
    "buttoned-grown-on": "button button; places 3",
    "buttoned-strip": "button button; places 3",
    "hook-and-eye": "hook hook; places 1",
    "snapped": "snap snap; places 3",
    "continuous-bound": "strip strip",
}
_SEAMS_ON_BANDS = ("waistband", "rib-band", "elastic-waistband", "turned-tube", "folded-strap")


def made(method: str, settings: str = "") -> Making:
    """A method in use: elastic of 1 in, tape and cord of 1/4 in, a bias strip."""
    making = used(method, settings).making
    assert making is not None
    return making


@cache
def used(method: str, settings: str = "", *, seam: str = "") -> Seam | Finish | Attachment:
    """What is made by a method; `seam` are the edges of a seam, otherwise of two sides.

    The garment has a waistband and a strap, which are sewn nowhere else.
    """
    body = f"{{ {_MATERIALS.get(method, '')}; {settings} }}"
    file = file_of(method) or ""
    joins = file.endswith("seams") or method in _SEAMS_ON_BANDS
    attached = file == "attachments"
    use = f"finish f along back.neck, front.neck by {method} {body}"
    if joins:
        use = f"seam s joins {seam or 'back.side to front.side'} by {method} {body}"
    if attached:
        use = f"attach back on front with centre-neck at centre-neck by {method} {body}"
    if file == "closures":
        use = f"closure f along back.side to front.side by {method} {body}"
    found = garment(
        f"""garment t "T" {{ style "T"; sizes 12; sample 12; units in }}
        use chart misses
        use block sheath
        use block rectangle as band {{ wide 20 in; long 3 in; cutting once }}
        cloth lawn {{ fibre 100% cotton; width 44 in; weight 90 g/m2 }}
        trim edging "the edging" {{ kind fold-over elastic; width 1 in; stretch 60% }}
        trim strip "the strip" {{ kind bias strip; cut-from lawn }}
        trim tape "the tape" {{ kind tape; width 1/4 in }}
        trim zip "the zip" {{ kind zip; lengths 7 in, 20 in }}
        trim button "the button" {{ kind button; diameter 5/8 in; thickness 1/8 in }}
        trim hook "the hook" {{ kind hook and eye }}
        trim snap "the press stud" {{ kind snap }}
        trim cord "the cord" {{ kind cord; width 1/4 in }}
        {use}"""
    )
    if attached:
        return found.attachments[0]
    return found.seams[0] if joins else found.finishes[0]


def inches(expression: Expression | None) -> float:
    """The value of a length that is set, in inches."""
    assert expression is not None
    none: dict[str, float] = {}
    value: float = Evaluator(none.__getitem__, FinishedPieces(())).value(expression)
    return value / float(UNITS["in"].size)
