"""Owns the command that searches for shorter lays, and keeps them in a file beside the garment."""

from __future__ import annotations

import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from specc.cli.console import OK, Outcome, UsageError, passing, progress, say, tell, visible
from specc.cli.reading import compiled, world

if TYPE_CHECKING:
    import argparse

    from specc.searching import Known

HELP = "search for shorter lays, and keep them in a file beside a garment"
_LONGEST, _MOST_JOBS = 10_000.0, 256  # minutes, searches


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", metavar="FILE", help="a .garment file")
    parser.add_argument(
        "--minutes", type=_minutes, default=2.0, metavar="N", help="how long to search (default: 2)"
    )
    parser.add_argument(
        "--jobs", type=_jobs, metavar="N", help="processors to search on (default: all there are)"
    )


def run(options: argparse.Namespace) -> int:
    """Search until the time is over or somebody interrupts; what was found is kept."""
    from specc.searching import known_lays  # noqa: PLC0415  only this command searches

    outcome = Outcome()
    result = compiled(options.file)
    outcome.add(result.diagnostics)
    known, said = known_lays(result, world(options.file)) if outcome.status == OK else (None, ())
    outcome.add(said)
    tell(outcome.said, "text", sys.stderr)
    if known is None:
        return outcome.status
    if not known.wanted:
        raise UsageError(f"{options.file} has nothing to lay: no cloth says its width")
    _search(known, options)
    return OK


def _search(known: Known, options: argparse.Namespace) -> None:
    from specc.laying.lay_file import beside  # noqa: PLC0415
    from specc.searching import search  # noqa: PLC0415
    from specc.writing import OutputError  # noqa: PLC0415

    jobs = options.jobs or os.cpu_count() or 1
    found = search(known, Path(options.file), seconds=options.minutes * 60.0, jobs=jobs)
    try:
        for each in found:
            line = f"lay {each.number} of {each.count}: {visible(each.said)}"
            (progress if each.done else passing)(line)
    except KeyboardInterrupt:
        progress("stopped; the best so far is kept")
    except OutputError as fault:
        raise UsageError(str(fault)) from fault
    finally:
        found.close()
    say(visible(beside(Path(options.file).as_posix())) + "\n", sys.stdout)


def _minutes(text: str) -> float:
    value = float(text)
    if not 0.0 < value <= _LONGEST:
        raise ValueError(text)
    return value


def _jobs(text: str) -> int:
    value = int(text)
    if not 1 <= value <= _MOST_JOBS:
        raise ValueError(text)
    return value
