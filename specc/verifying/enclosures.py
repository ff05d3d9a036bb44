"""Owns taking out of a PDF what `specc build` encloses in it: the values of the sheet, and its source.

The only user of pypdf. Knows nothing of what the files say. A file from a stranger may be broken or hostile
in any way: everything in it is bounded, and what cannot be read is told.
"""

from __future__ import annotations

import json
import logging
from dataclasses import dataclass
from io import BytesIO
from itertools import islice
from pathlib import PurePosixPath
from typing import TYPE_CHECKING, Any

from specc.backends.pdf import RESULT, SOURCE
from specc.gather import MOST_FILES
from specc.verifying.codes import NOTHING_ENCLOSED, UNFIT, UNREADABLE
from specc.world import LARGEST_FILE

if TYPE_CHECKING:
    from collections.abc import Mapping
    from contextlib import AbstractContextManager

    from pypdf import PdfReader
    from pypdf.generic import DictionaryObject

    from specc.diagnostics import Diagnostic

LARGEST_SHEET = 200_000_000  # bytes; a hundred times what sheets have
_MOST_ENCLOSED = 4 * MOST_FILES
_LARGEST_SOURCE = 5 * LARGEST_FILE
_TOO_MANY = f"more than {LARGEST_FILE:,} bytes, too many for a spec"
_MOST_PAGES = 1_000
_MOST_PAINTED = 500_000  # operators of a page, and what they take; fifteen times what full pages have
_LONGEST_NAME = 1_000  # letters, as it is told
_PACKED = "/FlateDecode"  # how specc packs what it encloses, and who saves its sheet anew


@dataclass(frozen=True, slots=True)
class Opened:
    """A PDF as read: the values of the sheet as JSON, its source by path, what wrote the PDF."""

    result: dict[str, Any]
    source: Mapping[str, bytes]
    writer: str


def opened(called: str, data: bytes) -> tuple[Opened | None, tuple[Diagnostic, ...]]:
    """What is enclosed in a PDF that the user calls so; None when it is not to be had, and why."""
    try:
        files, said, writer = _read(called, data)
    except _UnreadableError as fault:
        told = UNREADABLE.at(None, file=called, reason=str(fault))
        return None, (told.help("name the `sheet.pdf` that `specc build` wrote"),)
    if not said and RESULT not in files:
        told = NOTHING_ENCLOSED.at(None, file=called)
        said = (told.help("build the sheet anew: what prints into a PDF, or puts PDFs together, loses it"),)
    if said:
        return None, said
    result = _as_tree(files.pop(RESULT))
    if result is None:
        return None, (UNFIT.at(None, name=RESULT, file=called, reason="it is not what `specc build` writes"),)
    return Opened(result, {name.removeprefix(SOURCE): one for name, one in files.items()}, writer), ()


def page_texts(data: bytes, most: int = _MOST_PAGES) -> tuple[str, ...]:
    """What is to be read on each of at most so many pages, blanks left out; nothing where that cannot be."""
    try:
        with _bounded():
            few = islice(_reader(data).pages, most)
            return tuple("".join(page.extract_text().split()) for page in few)
    except Exception:  # noqa: BLE001 - the same
        return ()


def _bounded() -> AbstractContextManager[object]:
    """Nothing is unpacked beyond what a spec may have, nothing damaged mended, no other program called."""
    from pypdf import apply_configuration  # noqa: PLC0415 - heavy, and only to verify is to read

    logging.getLogger("pypdf").addHandler(logging.NullHandler())  # what is wrong is told as a diagnostic
    return apply_configuration(
        zlib_maximum_output_length=LARGEST_FILE + 1,
        zlib_maximum_recovery_input_length=1,
        stream_parsing_work_maximum_count=_MOST_PAINTED,
        jbig2dec_binary=None,
    )


def _reader(data: bytes) -> PdfReader:
    """A reader that gives up where a file is damaged: to search it for what is left can take minutes."""
    from pypdf import PdfReader  # noqa: PLC0415 - the same

    return PdfReader(BytesIO(data), strict=True)


class _UnreadableError(Exception):
    """Why a file is not read at all."""


def _read(called: str, data: bytes) -> tuple[dict[str, bytes], tuple[Diagnostic, ...], str]:
    """What is enclosed, what is wrong with it, and what wrote the PDF."""
    if len(data) > LARGEST_SHEET:
        raise _UnreadableError(f"it has more than {LARGEST_SHEET:,} bytes")
    if b"%PDF-" not in data[:1024]:  # ISO 32000-1, annex H, implementation note 13
        raise _UnreadableError("it does not begin as a PDF does")
    try:
        with _bounded():
            reader = _reader(data)
            locked = reader.is_encrypted
            files, said = ({}, ()) if locked else _enclosed(called, reader)
            writer = "" if locked or reader.metadata is None else str(reader.metadata.producer or "")
    except _UnreadableError:
        raise
    except Exception as fault:
        # A damaged file may break its reader anywhere.
        raise _UnreadableError("it is damaged") from fault
    if locked:
        raise _UnreadableError("it is locked")
    return files, said, writer


def _enclosed(called: str, reader: PdfReader) -> tuple[dict[str, bytes], tuple[Diagnostic, ...]]:
    files: dict[str, bytes] = {}
    said: list[Diagnostic] = []
    for number, one in enumerate(reader.attachment_list):
        if number == _MOST_ENCLOSED:
            raise _UnreadableError(f"more than {_MOST_ENCLOSED} files are enclosed in it")
        name = str(one.alternative_name or one.name)
        try:
            _take(name, one.pdf_object, files)
        except _UnfitError as unfit:
            said.append(UNFIT.at(None, name=name[:_LONGEST_NAME], file=called, reason=str(unfit)))
    return files, tuple(said)


class _UnfitError(Exception):
    """Why an enclosed file is not taken."""


def _take(name: str, described: DictionaryObject, files: dict[str, bytes]) -> None:
    """Put the file among the others, if it is one of ours."""
    from pypdf.errors import LimitReachedError  # noqa: PLC0415 - the same

    path = PurePosixPath(name)
    if path.is_absolute() or ".." in path.parts or any(letter in name for letter in "\\:\0"):
        raise _UnfitError("its name leads out of the folder of the source")
    if name != RESULT and not name.startswith(SOURCE):
        return  # somebody else's, and left alone
    if name in files:
        raise _UnfitError("there are two of that name")
    streams: Any = described["/EF"]
    stream: Any = streams["/UF" if "/UF" in streams else "/F"]
    if stream.get("/Filter", _PACKED) not in (_PACKED, [_PACKED]):
        raise _UnfitError("it is packed in a way that specc does not use")
    try:
        data = bytes(stream.get_data())
    except LimitReachedError as fault:
        raise _UnfitError(f"it is damaged, or has {_TOO_MANY}") from fault
    if len(data) > LARGEST_FILE:
        raise _UnfitError(f"it has {_TOO_MANY}")
    if sum(map(len, files.values())) + len(data) > _LARGEST_SOURCE:
        raise _UnfitError(f"with it there are more than {_LARGEST_SOURCE:,} bytes in all")
    files[name] = data


def _as_tree(data: bytes) -> dict[str, Any] | None:
    """The values of a sheet; None when that is not what they are."""
    try:
        found = json.loads(data)
    except (ValueError, RecursionError):
        return None
    return found if isinstance(found, dict) else None
