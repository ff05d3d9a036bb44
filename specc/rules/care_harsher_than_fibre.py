"""The whole garment bears no more than the weakest thing in it: an elastic that melts spoils a linen skirt.

16 CFR 423.6 (edition of 2015, read) wants care that suits the whole garment, trims included, and a reasonable
basis for it. What fibres usually bear is common practice, no source (`library/data/fibres.toml` says more): a
mill that tested its cloth knows better. `not on the zip` in a line spares what it names.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from specc.diagnostics import Severity, declare
from specc.library.fibres import fibre_called
from specc.model.material import Trim

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.library.fibres import Fibre
    from specc.model.garment import CareLine
    from specc.model.material import Cloth
    from specc.rules.subject import Subject

TOO_HARSH = declare(
    "SPC584",
    "care-harsher-than-fibre",
    Severity.WARNING,
    "care says `{process} {text}`, but {fibre} in `{name}` {bears}",
)

_DEGREES = re.compile(r"(\d+)\s*°?\s*([CF])\b", re.IGNORECASE)
_NOT = re.compile(r"\b(?:not|no|non|never|without)\b", re.IGNORECASE)
_WORD = re.compile(r"[^\W\d_]{3,}")
_LAW = (
    "care for the whole garment, on a reasonable basis: 16 CFR 423.6; check the current text and your local"
    " law"
)
_GENTLE = ("low", "cool", "no heat", "air")
_BOILS = 95  # °C, what `boil` says


def check(subject: Subject) -> Iterator[Diagnostic]:
    """One diagnostic a line of care, about the first fibre that does not bear it; others are shown beside."""
    for line in subject.garment.care:
        weak = list(_weak(subject, line))
        if not weak:
            continue
        (material, fibre, bears), *others = weak
        told = TOO_HARSH.at(
            line.origin, process=line.process, text=line.text, fibre=fibre, name=material.name, bears=bears
        ).see(material.origin, f"has {fibre}")
        for other, named, _ in others:
            told = told.see(other.origin, f"has {named}, too")
        yield told.note(_LAW).help("say the milder, spare the part (`not on the elastic`), or take another")


def _weak(subject: Subject, line: CareLine) -> Iterator[tuple[Cloth | Trim, str, str]]:
    """What does not bear the line: the material, its fibre, what that usually bears; one fibre of each."""
    spared = _spared(line.text)
    materials: tuple[Cloth | Trim, ...] = (*subject.garment.cloths, *subject.garment.trims)
    for material in materials:
        if spared & _words_of(material):
            continue
        for share in material.fibres:
            fibre = fibre_called(share.fibre)
            bears = None if fibre is None else _BEARS[line.process](line.text.casefold(), fibre)
            if bears is not None:
                yield material, share.fibre, bears
                break


def _spared(text: str) -> set[str]:
    """The words behind a `not`: `200 C, not on the zip`."""
    found = _NOT.search(text)
    return set() if found is None else _words(text[found.end() :])


def _words_of(material: Cloth | Trim) -> set[str]:
    """The words by which a line of care may mean the material."""
    kind = material.kind if isinstance(material, Trim) else ""
    return _words(f"{material.name} {material.title} {kind}")


def _words(text: str) -> set[str]:
    return set(_WORD.findall(text.casefold()))


def _celsius(said: str) -> float | None:
    """The degrees of a line, in Celsius; of Fahrenheit whole ones, since 105 °F stands for 40 °C."""
    found = _DEGREES.search(said)
    if found is None:
        return _BOILS if "boil" in said else None
    degrees = float(found.group(1))
    return degrees if found.group(2).upper() == "C" else (degrees - 32) // 1.8


def _bears_washing(said: str, fibre: Fibre) -> str | None:
    degrees = _celsius(said)
    hot = fibre.wash is not None and degrees is not None and degrees > fibre.wash
    return f"usually bears a wash of {fibre.wash} °C" if hot else None


def _bears_bleaching(said: str, fibre: Fibre) -> str | None:
    strong = not _NOT.search(said) and any(word in said for word in ("chlorine", "any"))
    return "usually bears no chlorine bleach" if strong and not fibre.chlorine else None


def _bears_drying(said: str, fibre: Fibre) -> str | None:
    if "tumble" not in _NOT.split(said)[0]:
        return None
    if fibre.tumble == "no":
        return "is usually not dried in a tumble dryer"
    hot = fibre.tumble == "low" and not any(word in said for word in _GENTLE)
    return "is usually dried in a tumble dryer at low heat only" if hot else None


def _bears_ironing(said: str, fibre: Fibre) -> str | None:
    degrees = _celsius(said)
    if fibre.iron is None or degrees is None or degrees <= fibre.iron:
        return None
    return f"usually bears an iron of {fibre.iron} °C" if fibre.iron else "is usually not ironed"


def _bears_cleaning(_said: str, _fibre: Fibre) -> str | None:
    """Solvents are many, and no fibre here is spoiled by all."""
    return None


_BEARS = {
    "wash": _bears_washing,
    "bleach": _bears_bleaching,
    "dry": _bears_drying,
    "iron": _bears_ironing,
    "clean": _bears_cleaning,
}
