"""Owns the command that says whether a sheet is what it says."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from specc.cli.console import Outcome, say, tell, visible
from specc.cli.reading import bytes_of, for_each

if TYPE_CHECKING:
    import argparse

HELP = "say whether a sheet is what the source enclosed in it gives; nothing is written"


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("files", nargs="+", metavar="SHEET", help="a sheet.pdf that `specc build` wrote")


def run(options: argparse.Namespace) -> int:
    """Hold every sheet against its own source; the worst decides the status."""
    from specc.verifying.enclosures import LARGEST_SHEET  # noqa: PLC0415  only this command reads sheets
    from specc.verifying.verify import verify  # noqa: PLC0415

    outcome = Outcome()

    def hold(file: str) -> None:
        verdict = verify(file, bytes_of(file, LARGEST_SHEET, kind="a sheet", ending=".pdf"))
        outcome.add(verdict.said)
        say("".join(f"{visible(line)}\n" for line in verdict.words.splitlines()), sys.stdout)

    for_each(options.files, outcome, hold)
    tell(outcome.said, "text", sys.stderr)
    return outcome.status
