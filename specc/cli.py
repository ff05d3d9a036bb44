"""Owns the command line: arguments, reading and writing files, exit statuses. The only module that prints.

Knows nothing of the insides of the stages. Exit status 0 when nothing is wrong (warnings allowed), 1 when a
garment has errors, 2 when something could not be carried out as it was asked for, 70 for a fault of ours.
"""

from __future__ import annotations

import argparse
import gc
import os
import sys
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING, TextIO

from specc import __version__

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence

    from specc.diagnostics import Diagnostic
    from specc.document.document import Document
    from specc.pipeline import Result
    from specc.searching import Known
    from specc.world import Folder

OK, WRONG, USAGE, OUR_FAULT = 0, 1, 2, 70
_LONGEST, _MOST_JOBS = 10_000.0, 256  # minutes, searches
_RARELY = 200_000  # objects made between two looks for garbage
INTERRUPTED, READER_GONE = 130, 141  # as a shell counts them: 128 and the number of the signal

_UNCUT = ("tree", "garment", "pieces", "assembly")
_BORDERS = (*_UNCUT, "quantities", "document")


class _UsageError(Exception):
    """Something cannot be carried out as it was asked for."""


@dataclass(slots=True)
class _Outcome:
    """What one run has to say in the end, and how it ended."""

    said: list[Diagnostic] = field(default_factory=list)
    problems: list[str] = field(default_factory=list)
    status: int = OK

    def worsen(self, status: int) -> None:
        """The worst status is that of the run."""
        self.status = max(self.status, status)

    def add(self, diagnostics: Sequence[Diagnostic]) -> None:
        """Keep the diagnostics of a file."""
        self.said += diagnostics
        if any(diagnostic.severity.name == "ERROR" for diagnostic in diagnostics):
            self.worsen(WRONG)


def main(arguments: Sequence[str] | None = None) -> int:
    """Carry out a command; return its exit status."""
    for stream in (sys.stdout, sys.stderr):
        # What a terminal or a file name cannot hold is shown as a number, never a fault.
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")
    options = _parser().parse_args(arguments)
    usual = gc.get_threshold()
    # A run is short and what it makes is mostly kept: looking for garbage often costs a sixth of a check.
    gc.set_threshold(_RARELY)
    try:
        return int(options.run(options))
    except _UsageError as fault:
        _complain(str(fault))
        return USAGE
    except BrokenPipeError:
        _leave_reader()
        return READER_GONE
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as fault:
        if os.environ.get("SPECC_DEBUG"):
            raise
        _complain(f"error[SPC900]: a fault of specc itself: {type(fault).__name__}: {fault}")
        return OUR_FAULT
    finally:
        gc.set_threshold(*usual)


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
    build.add_argument(
        "--out", default="build", metavar="DIR", help="folder for the sheets, one each (default: build)"
    )
    build.add_argument(
        "--show", choices=_BORDERS, help="print the value at a border instead of writing files"
    )
    build.set_defaults(run=_build)

    lay = commands.add_parser("lay", help="search for shorter lays, and keep them in a file beside a garment")
    lay.add_argument("file", metavar="FILE", help="a .garment file")
    lay.add_argument(
        "--minutes", type=_positive, default=2.0, metavar="N", help="how long to search (default: 2)"
    )
    lay.add_argument(
        "--jobs", type=_jobs, metavar="N", help="searches side by side (default: one a processor)"
    )
    lay.set_defaults(run=_lay)

    explain = commands.add_parser("explain", help="say more about a code")
    explain.add_argument("code", metavar="CODE", help="such as SPC501")
    explain.set_defaults(run=_explain)
    return parser


def _positive(text: str) -> float:
    value = float(text)
    if not 0.0 < value <= _LONGEST:
        raise ValueError(text)
    return value


def _jobs(text: str) -> int:
    value = int(text)
    if not 1 <= value <= _MOST_JOBS:
        raise ValueError(text)
    return value


def _check(options: argparse.Namespace) -> int:
    outcome = _Outcome()
    _for_each(options.files, outcome, lambda file: outcome.add(_compiled(file).diagnostics))
    _tell(outcome.said, options.format, sys.stderr if options.format == "text" else sys.stdout)
    return outcome.status


def _build(options: argparse.Namespace) -> int:
    outcome = _Outcome()
    written: dict[str, str] = {}

    def build(file: str) -> None:
        result = _compiled(file)
        if options.show not in _UNCUT:
            result = _laid_out(result, file)
        outcome.add(result.diagnostics)
        if options.show:
            _print(_shown(result, options.show), sys.stdout)
        else:
            _write(file, result, Path(options.out), written)

    _for_each(options.files, outcome, build)
    _tell(outcome.said, "text", sys.stderr)
    return outcome.status


def _write(file: str, result: Result, out: Path, written: dict[str, str]) -> None:
    """Write the sheet of a garment without errors into a folder; `written` says whose each folder is."""
    document = _document(result)
    if document is None or result.garment is None:
        return
    from specc.backends import write  # noqa: PLC0415  paper is heavy
    from specc.writing import OutputError, folder_name, write_all  # noqa: PLC0415  only a build writes

    folder = folder_name(result.garment.header.style)
    if folder.casefold() in written:
        other = written[folder.casefold()]
        raise _UsageError(f"{file} and {other} have one style, {folder}: build them into two folders")
    written[folder.casefold()] = file
    try:
        write_all(out / folder, write(document))
    except OutputError as fault:
        raise _UsageError(str(fault)) from fault
    _print(_visible((out / folder / "sheet.pdf").as_posix()) + "\n", sys.stdout)


def _lay(options: argparse.Namespace) -> int:
    from specc.searching import known_lays  # noqa: PLC0415  only this command searches

    outcome = _Outcome()
    result = _compiled(options.file)
    outcome.add(result.diagnostics)
    known, said = known_lays(result, _world(options.file)) if outcome.status == OK else (None, ())
    outcome.add(said)
    _tell(outcome.said, "text", sys.stderr)
    if known is None:
        return outcome.status
    return _search(known, options)


def _search(known: Known, options: argparse.Namespace) -> int:
    """Search until the time is over or somebody interrupts; then what was found is kept."""
    from specc.laying.lay_file import beside  # noqa: PLC0415
    from specc.searching import search  # noqa: PLC0415
    from specc.writing import OutputError  # noqa: PLC0415

    moving = _is_terminal(sys.stderr)
    jobs = options.jobs or os.cpu_count() or 1
    found = search(known, Path(options.file), seconds=options.minutes * 60.0, jobs=jobs)
    try:
        for each in found:
            line = f"lay {each.number} of {each.count}: {_visible(each.said)}"
            if moving:
                print(f"\r\033[K{line}", end="\n" if each.done else "", file=sys.stderr, flush=True)
            elif each.done:
                print(line, file=sys.stderr, flush=True)
    except KeyboardInterrupt:
        print("stopped; the best so far is kept", file=sys.stderr)
    except OutputError as fault:
        raise _UsageError(str(fault)) from fault
    finally:
        found.close()
    _print(_visible(beside(options.file)) + "\n", sys.stdout)
    return OK


def _explain(options: argparse.Namespace) -> int:
    from specc.diagnostics import explained, explanation  # noqa: PLC0415

    code = options.code.strip().upper()
    page = explanation(code)
    if page is None:
        from specc.names import did_you_mean  # noqa: PLC0415

        near = did_you_mean(code, explained())
        raise _UsageError(f"there is no code {options.code}" + (f"; {near}" if near else ""))
    _print(page, sys.stdout)
    return OK


def _for_each(files: Sequence[str], outcome: _Outcome, act: Callable[[str], None]) -> None:
    """Do it with each file; what goes wrong with one is kept for the end, and the others are still read."""
    for file in _each(files):
        try:
            act(file)
        except _UsageError as fault:
            outcome.problems.append(str(fault))
            outcome.worsen(USAGE)
        except BrokenPipeError:
            raise
        except Exception as fault:
            if os.environ.get("SPECC_DEBUG"):
                raise
            from specc.diagnostics.ours import FAULT  # noqa: PLC0415

            told = FAULT.at(None, fault=f"{type(fault).__name__}: {fault}")
            outcome.said.append(told.note(f"it came up in {file}; the output is as it was"))
            outcome.worsen(OUR_FAULT)
    for problem in outcome.problems:
        _complain(problem)


def _compiled(file: str) -> Result:
    """Everything that can be said of a file; its own folder is the project folder."""
    from specc.pipeline import check_bytes  # noqa: PLC0415
    from specc.world import LARGEST_FILE  # noqa: PLC0415

    path = Path(file)
    try:
        with path.open("rb") as opened:
            data = opened.read(LARGEST_FILE + 1)
    except IsADirectoryError:
        raise _UsageError(f"{file} is a folder; name a .garment file") from None
    except (OSError, ValueError) as fault:
        reason = getattr(fault, "strerror", None) or str(fault)
        raise _UsageError(f"cannot read {file}: {reason}") from None
    if len(data) > LARGEST_FILE:
        raise _UsageError(f"{file} has more than {LARGEST_FILE} bytes, too many for a spec")
    return check_bytes(path.name, data, _world(file))


def _world(file: str) -> Folder:
    """What may be seen beside a file: its own folder is the project folder."""
    from specc.world import Folder  # noqa: PLC0415

    return Folder(Path(file).parent)


def _laid_out(result: Result, file: str) -> Result:
    from specc.pipeline import lay_out  # noqa: PLC0415

    return lay_out(result, _world(file))


def _document(result: Result) -> Document | None:
    from specc.pipeline import document  # noqa: PLC0415

    return document(result)


def _shown(result: Result, border: str) -> str:
    from specc.borders import BORDERS  # noqa: PLC0415  only `--show` needs it

    return BORDERS[border](result)


def _each(files: Sequence[str]) -> Iterator[str]:
    """The files, with a line of progress on a terminal when there are many."""
    several = len(files) > 1 and _is_terminal(sys.stderr)
    for number, file in enumerate(files, start=1):
        if several:
            line = f"\r\033[K{number} of {len(files)}: {_visible(file)}"
            print(line, end="", file=sys.stderr, flush=True)
        yield file
        if several:
            print("\r\033[K", end="", file=sys.stderr, flush=True)


def _tell(said: Sequence[Diagnostic], form: str, stream: TextIO | None) -> None:
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

        text = render_text(said, colour=stream is not None and wants_colour(stream, os.environ))
    else:
        return
    if stream is not None and form != "text" and hasattr(stream, "reconfigure"):
        stream.reconfigure(encoding="utf-8")  # RFC 8259, 8.1
    _print(text, stream)


def _print(text: str, stream: TextIO | None) -> None:
    """Print the text, at once, so that it is known here whether it could be."""
    if stream is None:  # it was closed before we began
        return
    try:
        print(text, end="", file=stream, flush=True)
    except BrokenPipeError:
        raise
    except OSError as fault:
        raise _UsageError(f"cannot write what there is to say: {fault.strerror or fault}") from fault


def _complain(message: str) -> None:
    print(f"specc: {_visible(message)}", file=sys.stderr)


def _visible(text: str) -> str:
    """The text with all that could steer a terminal shown as a number."""
    return "".join(letter if letter.isprintable() else ascii(letter)[1:-1] for letter in text)


def _is_terminal(stream: TextIO | None) -> bool:
    return stream is not None and stream.isatty() and os.environ.get("TERM") != "dumb"


def _leave_reader() -> None:
    """Let what is still on its way to a reader who has gone go nowhere, so that Python ends in silence."""
    nowhere = os.open(os.devnull, os.O_WRONLY)
    for stream in (sys.stdout, sys.stderr):
        if stream is not None:
            os.dup2(nowhere, stream.fileno())
    os.close(nowhere)
