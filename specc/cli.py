"""Owns the command line: arguments, reading and writing files, exit statuses. The only module that prints.

Knows nothing of the insides of the stages. Exit status 0 when nothing is wrong (warnings allowed), 1 when a garment has
errors, 2 for wrong usage, 70 for a fault of ours.
"""

from __future__ import annotations

import argparse
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from specc import __version__

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from specc.diagnostics import Diagnostic
    from specc.document.document import Document
    from specc.pipeline import Result

OK, WRONG, USAGE, OUR_FAULT = 0, 1, 2, 70

_BORDERS: dict[str, Callable[[Result], object]] = {
    "tree": lambda result: result.gathered and result.gathered.spec.declarations,
    "garment": lambda result: result.garment,
    "pieces": lambda result: result.shaped,
    "assembly": lambda result: result.assembly,
    "quantities": lambda result: result.quantities,
    "document": lambda result: _document(result),
}


class _UsageError(Exception):
    """The command cannot be carried out as it was given."""


def main(arguments: Sequence[str] | None = None) -> int:
    """Carry out a command; return its exit status."""
    options = _parser().parse_args(arguments)
    try:
        return int(options.run(options))
    except _UsageError as fault:
        print(f"specc: {fault}", file=sys.stderr)
        return USAGE
    except BrokenPipeError:
        sys.stdout = open(os.devnull, "w", encoding="utf-8")  # noqa: SIM115, PTH123 the reader has gone
        return OK
    except KeyboardInterrupt:
        return 130
    except Exception as fault:  # noqa: BLE001 whatever it is, it is ours, and the user gets an answer
        print(f"specc: error[SPC900]: a fault of specc itself: {type(fault).__name__}: {fault}", file=sys.stderr)
        print("specc: the output is as it was before; `specc explain SPC900` says what to do", file=sys.stderr)
        if os.environ.get("SPECC_DEBUG"):
            raise
        return OUR_FAULT


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="specc", description="A garment in text becomes a technical sheet.")
    parser.add_argument("--version", action="version", version=f"specc {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")

    check = commands.add_parser("check", help="say what is wrong with garments, write nothing")
    check.add_argument("files", nargs="+", metavar="FILE", help="a .garment file")
    check.add_argument("--format", choices=("text", "json", "sarif"), default="text", help="how to say it")
    check.set_defaults(run=_check)

    build = commands.add_parser("build", help="make the sheets of garments")
    build.add_argument("files", nargs="+", metavar="FILE", help="a .garment file")
    build.add_argument("--out", default="build", metavar="DIR", help="folder for the sheets, one each (default: build)")
    build.add_argument("--show", choices=tuple(_BORDERS), help="print the value at a border instead of writing files")
    build.set_defaults(run=_build)

    explain = commands.add_parser("explain", help="say more about a code")
    explain.add_argument("code", metavar="CODE", help="such as SPC501")
    explain.set_defaults(run=_explain)
    return parser


def _check(options: argparse.Namespace) -> int:
    said: list[Diagnostic] = []
    for file in _each(options.files):
        said += _compiled(file).diagnostics
    _tell(said, options.format, sys.stdout if options.format != "text" else sys.stderr)
    return WRONG if _failed(said) else OK


def _build(options: argparse.Namespace) -> int:
    from specc.writing import OutputError, write_all  # noqa: PLC0415  only a build writes

    said: list[Diagnostic] = []
    written: dict[str, str] = {}
    for file in _each(options.files):
        result = _compiled(file)
        said += result.diagnostics
        if options.show:
            print(_shown(result, options.show), end="")
            continue
        document = _document(result)
        if document is None or result.garment is None:
            continue
        folder = _folder(result.garment.header.style)
        if folder in written:
            raise _UsageError(f"{file} and {written[folder]} have one style, {folder}: build them into two folders")
        written[folder] = file
        from specc.backends import write  # noqa: PLC0415  paper is heavy

        try:
            write_all(Path(options.out) / folder, write(document))
        except OutputError as fault:
            raise _UsageError(str(fault)) from fault
        print(Path(options.out, folder, "sheet.pdf").as_posix())
    _tell(said, "text", sys.stderr)
    return WRONG if _failed(said) else OK


def _explain(options: argparse.Namespace) -> int:
    from specc.diagnostics import explained, explanation  # noqa: PLC0415

    page = explanation(options.code.upper())
    if page is None:
        from specc.names import did_you_mean  # noqa: PLC0415

        near = did_you_mean(options.code.upper(), explained())
        raise _UsageError(f"there is no code {options.code}" + (f"; {near}" if near else ""))
    print(page, end="" if page.endswith("\n") else "\n")
    return OK


def _compiled(file: str) -> Result:
    """Everything that can be said of a file; its own folder is the project folder."""
    from specc.pipeline import check_bytes  # noqa: PLC0415
    from specc.world import LARGEST_FILE, Folder  # noqa: PLC0415

    path = Path(file)
    try:
        if path.stat().st_size > LARGEST_FILE:
            raise _UsageError(f"{file} has more than {LARGEST_FILE} bytes, too many for a spec")
        data = path.read_bytes()
    except IsADirectoryError:
        raise _UsageError(f"{file} is a folder; name a .garment file") from None
    except (OSError, ValueError) as fault:
        reason = getattr(fault, "strerror", None) or str(fault)
        raise _UsageError(f"cannot read {file}: {reason}") from None
    return check_bytes(path.name, data, Folder(path.parent))


def _document(result: Result) -> Document | None:
    from specc.pipeline import document  # noqa: PLC0415

    return document(result)


def _shown(result: Result, border: str) -> str:
    from specc.show import show  # noqa: PLC0415

    value = _BORDERS[border](result)
    return "" if value is None else show(value)


def _folder(style: str) -> str:
    """The style as a folder name: letters, digits, dots, hyphens and underscores; others become hyphens."""
    kept = "".join(letter if letter.isalnum() or letter in "._-" else "-" for letter in style)
    return kept.strip(".-") or "garment"


def _each(files: Sequence[str]) -> Iterator[str]:
    """The files, with a line of progress on a terminal when there are many."""
    several = len(files) > 1 and sys.stderr.isatty()
    for number, file in enumerate(files, start=1):
        if several:
            print(f"\r\033[K{number} of {len(files)}: {file}", end="", file=sys.stderr, flush=True)
        yield file
    if several:
        print("\r\033[K", end="", file=sys.stderr, flush=True)


def _tell(said: Sequence[Diagnostic], form: str, stream: object) -> None:
    """Print the diagnostics in the form asked for."""
    if form == "json":
        from specc.diagnostics.render_json import render_json  # noqa: PLC0415

        text = render_json(said)
    elif form == "sarif":
        from specc.catalog import CODES  # noqa: PLC0415
        from specc.diagnostics.render_sarif import render_sarif  # noqa: PLC0415

        text = render_sarif(said, CODES, version=__version__)
    elif said:
        from specc.diagnostics.render_text import render_text, wants_colour  # noqa: PLC0415

        text = render_text(said, colour=wants_colour(stream, os.environ))  # type: ignore[arg-type]
    else:
        return
    print(text, end="" if text.endswith("\n") else "\n", file=stream)  # type: ignore[call-overload]


def _failed(said: Sequence[Diagnostic]) -> bool:
    return any(diagnostic.severity.name == "ERROR" for diagnostic in said)
