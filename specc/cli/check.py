"""Owns the command that says what is wrong with garments."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from specc.cli.console import Outcome, say, tell
from specc.cli.reading import compiled, for_each, garments_of, is_folder

if TYPE_CHECKING:
    import argparse

HELP = "say what is wrong with garments, write nothing"


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="a .garment file, or a folder of them")
    parser.add_argument("--format", choices=("text", "json", "sarif"), default="text", help="how to say it")


def run(options: argparse.Namespace) -> int:
    """Check every file; the worst decides the status. Of a folder the last line says how it stands."""
    outcome = Outcome()
    wrong: list[str] = []

    def check(file: str) -> None:
        said = compiled(file).diagnostics
        outcome.add(said)
        if any(each.severity.name == "ERROR" for each in said):
            wrong.append(file)

    files = garments_of(options.files)
    for_each(files, outcome, check)
    tell(outcome.said, options.format, sys.stderr if options.format == "text" else sys.stdout)
    if options.format == "text" and any(map(is_folder, options.files)):
        say(f"{len(files)} garments checked, {len(wrong) or 'none'} with errors\n", sys.stderr)
    return outcome.status
