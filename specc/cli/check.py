"""Owns the command that says what is wrong with garments."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING

from specc.cli.console import Outcome, tell
from specc.cli.reading import compiled, for_each

if TYPE_CHECKING:
    import argparse

HELP = "say what is wrong with garments, write nothing"


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("files", nargs="+", metavar="FILE", help="a .garment file")
    parser.add_argument("--format", choices=("text", "json", "sarif"), default="text", help="how to say it")


def run(options: argparse.Namespace) -> int:
    """Check every file; the worst decides the status."""
    outcome = Outcome()
    for_each(options.files, outcome, lambda file: outcome.add(compiled(file).diagnostics))
    tell(outcome.said, options.format, sys.stderr if options.format == "text" else sys.stdout)
    return outcome.status
