"""Owns the command that makes sheets, or prints what stands at a border between stages."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from specc.cli.console import Outcome, UsageError, say, tell, visible
from specc.cli.reading import compiled, for_each, laid_out

if TYPE_CHECKING:
    import argparse

    from specc.document.document import Document
    from specc.pipeline import Result

HELP = "make the sheets of garments"
_UNCUT = ("tree", "garment", "pieces", "assembly")
_BORDERS = (*_UNCUT, "quantities", "document")


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="a .garment file")
    parser.add_argument(
        "--out", default="build", metavar="DIR", help="folder for the sheets, one each (default: build)"
    )
    parser.add_argument(
        "--without-prices",
        action="store_true",
        help="leave out prices, costs and the text of the spec: the copy for the sample room",
    )
    parser.add_argument(
        "--show", choices=_BORDERS, help="print the value at a border instead of writing files"
    )


def run(options: argparse.Namespace) -> int:
    """Build every file; the worst decides the status."""
    outcome = Outcome()
    written: dict[str, str] = {}

    def build(file: str) -> None:
        result = compiled(file)
        if options.show not in _UNCUT:
            result = laid_out(result, file)
        outcome.add(result.diagnostics)
        if options.show:
            say(_shown(result, options.show), sys.stdout)
        else:
            made = _document(result, priced=not options.without_prices)
            _write(file, result, made, Path(options.out), written)

    for_each(options.files, outcome, build)
    tell(outcome.said, "text", sys.stderr)
    return outcome.status


def _write(file: str, result: Result, document: Document | None, out: Path, written: dict[str, str]) -> None:
    """Write the sheet of a garment without errors into a folder; `written` says whose each folder is."""
    if document is None or result.garment is None:
        return
    from specc.backends import write  # noqa: PLC0415  paper is heavy
    from specc.writing import OutputError, folder_name, write_all  # noqa: PLC0415  only a build writes

    folder = folder_name(result.garment.header.style)
    if folder.casefold() in written:
        other = written[folder.casefold()]
        raise UsageError(f"{file} and {other} have one style, {folder}: build them into two folders")
    written[folder.casefold()] = file
    try:
        write_all(out / folder, write(document))
    except OutputError as fault:
        raise UsageError(str(fault)) from fault
    say(visible((out / folder / "sheet.pdf").as_posix()) + "\n", sys.stdout)


def _document(result: Result, *, priced: bool) -> Document | None:
    from specc.pipeline import document  # noqa: PLC0415

    return document(result, priced=priced)


def _shown(result: Result, border: str) -> str:
    from specc.borders import BORDERS  # noqa: PLC0415  only `--show` needs it

    return BORDERS[border](result)
