"""Owns whether a sheet is what it says: whether the source enclosed in it gives that very sheet.

Knows nothing of how a PDF is read.
"""

from __future__ import annotations

from dataclasses import dataclass
from hashlib import sha256
from itertools import islice
from typing import TYPE_CHECKING, Any

from specc.backends import write
from specc.backends.pdf import RESULT
from specc.pipeline import check_bytes, document, lay_out
from specc.verifying.codes import (
    DIFFERS,
    LEFT_OUT,
    NO_SHEET,
    NOT_ITS_SOURCE,
    NOT_THERE,
    OTHER_VERSION,
    UNFIT,
)
from specc.verifying.differences import count, pages, values
from specc.verifying.enclosures import opened, page_texts
from specc.world import Enclosed

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.verifying.enclosures import Opened

_TIMES = 4  # as many pages as ours has are read at most, of a sheet that another version made
_SHOWN = 3  # differences that are told one by one


@dataclass(frozen=True, slots=True)
class Verdict:
    """What there is to say of a sheet: faults and notes, and, where it is what it says, that in words."""

    said: tuple[Diagnostic, ...]
    words: str = ""


def verify(called: str, data: bytes) -> Verdict:
    """Whether a PDF that the user calls so is what its source gives with this version of the program.

    By the same program, it is when every byte is the same. By another, the values are compared.
    """
    found, said = opened(called, data)
    if found is None:
        return Verdict(said)
    named = _named(found)
    wrong = tuple(_faults(called, found, named))
    if wrong:
        return Verdict(wrong)
    fresh, said = _made_anew(called, found, next(iter(named)))
    if fresh is None:
        return Verdict(said)
    if fresh == data:
        words = f"{called} is what it says: its source gives it again, byte for byte."
        return Verdict((), f"{words}\n{_told(named)}")
    again, _ = opened(called, fresh)
    assert again is not None, "a sheet of ours can be read"
    return _held_against(called, (data, found), (fresh, again), named)


def _made_anew(called: str, found: Opened, spec: str) -> tuple[bytes | None, tuple[Diagnostic, ...]]:
    """The sheet that the enclosed source gives, and what is said of it when it gives none."""
    world = Enclosed(found.source)
    result = lay_out(check_bytes(spec, found.source[spec], world), world)
    made = document(result)
    if made is None:
        return None, (*result.diagnostics, NO_SHEET.at(None, file=called))
    (sheet,) = write(made, ("pdf",))
    return sheet.data, ()


def _held_against(
    called: str, one: tuple[bytes, Opened], other: tuple[bytes, Opened], named: dict[str, str]
) -> Verdict:
    """What to say of a sheet that is not the same, byte for byte, as the one made anew."""
    (data, found), (fresh, again) = one, other
    theirs, ours = _program(found, again.writer), _program(again)
    wanted = page_texts(fresh)
    texts = page_texts(data, _TIMES * len(wanted))
    unprinted = tuple(_unprinted(found, named, texts))
    old, new = _values(found, named), _values(again, named)
    # A newer version may say more than an older one did.
    differing = tuple(values(old, new, added=theirs == ours))
    elsewhere = pages(texts, wanted) if theirs == ours else ()
    if theirs != ours and not differing and not unprinted:
        note = OTHER_VERSION.at(None, file=called, theirs=theirs, ours=ours)
        note = note.note("pages of two versions are not alike: the values were compared, and the pages not")
        return Verdict(
            (note,),
            f"{called} says what its source gives: all {count(old)} values agree.\n{_told(named)}",
        )
    if differing:
        what = "1 value differs" if len(differing) == 1 else f"{len(differing)} values differ"
    elif not texts:
        what = "what is written on its pages cannot be read"
    elif unprinted:
        what = f"{unprinted[0]} is not printed on it"
    elif elsewhere:
        what = f"what is written on {_listed(elsewhere)} differs"
    else:
        what = "the file was changed or saved anew; values and texts agree, drawings were not compared"
    told = DIFFERS.at(None, file=called, what=what)
    for each in islice(differing, _SHOWN):
        told = told.note(f"`{each.path}`: {each.one} on the sheet, {each.other} from its source")
    if differing and elsewhere:
        told = told.note(f"what is written on {_listed(elsewhere)} differs")
    if theirs != ours:
        told = told.note(f"it was made by {theirs}, and this is {ours}: a newer version may reckon otherwise")
    return Verdict((told.help("build the sheet from its spec anew, and use no other"),))


def _unprinted(found: Opened, named: dict[str, str], texts: tuple[str, ...]) -> Iterator[str]:
    """What the values name and the pages do not: whoever changes the one has the other against them."""
    if not any("".join(str(found.result.get("program")).split()) in text for text in texts):
        yield "the program that made it"
    for name, digest in named.items():
        if not any(digest in text for text in texts):
            yield f"the hash of `{name}`"


def _named(found: Opened) -> dict[str, str]:
    """The files of the project that the sheet names, with the hash of each, the spec first.

    What is of the library comes with the program. Nothing, where the values do not say it.
    """
    try:
        listed = {str(each["file"]): str(each["sha256"]) for each in found.result["garment"]["sources"]}
    except (KeyError, TypeError):
        return {}
    library = {f"library/{name}.garment" for name in Enclosed({}).library_names()}
    return {name: digest for name, digest in listed.items() if name in found.source or name not in library}


def _faults(called: str, found: Opened, named: dict[str, str]) -> Iterator[Diagnostic]:
    """Why the source enclosed cannot be held against the sheet."""
    if found.result.get("priced") is False:
        told = LEFT_OUT.at(None, file=called)
        yield told.help("whoever has the spec can verify the sheet that has the prices")
        return
    if not named:
        reason = "it does not name the source of the sheet"
        yield UNFIT.at(None, name=RESULT, file=called, reason=reason)
    for name, digest in named.items():
        if name not in found.source:
            yield NOT_THERE.at(None, name=name, file=called)
        elif (enclosed := sha256(found.source[name]).hexdigest()) != digest:
            told = NOT_ITS_SOURCE.at(None, name=name, file=called)
            yield told.note(f"SHA-256 on the sheet: {digest}").note(f"SHA-256 of the text: {enclosed}")


def _values(found: Opened, named: dict[str, str]) -> dict[str, Any]:
    """The values but for what made them: the program, and the texts of its library."""
    garment = dict(found.result["garment"])
    garment["sources"] = [each for each in garment["sources"] if each["file"] in named]
    members = found.result | {"garment": garment}
    return {name: value for name, value in members.items() if name not in {"program", "version"}}


def _program(found: Opened, else_writer: str = "") -> str:
    """What made a sheet; a PDF that does not say what wrote it gets no leniency for that."""
    return f"{found.result.get('program', 'an unknown program')} with {found.writer or else_writer}"


def _told(named: dict[str, str]) -> str:
    return "".join(f"{name}  SHA-256 {digest}\n" for name, digest in named.items())


def _listed(numbers: tuple[int, ...]) -> str:
    if len(numbers) == 1:
        return f"page {numbers[0]}"
    few = ", ".join(map(str, numbers[:_SHOWN]))
    return f"pages {few}" + (f" and {len(numbers) - _SHOWN} more" if len(numbers) > _SHOWN else "")
