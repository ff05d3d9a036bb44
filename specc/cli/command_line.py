"""Owns the command line: which commands there are, and the status in which a run ends.

Knows nothing of the insides of the stages. Exit status 0 when nothing is wrong (warnings allowed), 1 when a
garment has errors or a sheet is not what it says, 2 when something could not be carried out as it was asked
for, 70 for a fault of ours.
"""

from __future__ import annotations

import argparse
import gc
import os
import sys
from typing import TYPE_CHECKING

from specc import __version__
from specc.cli import build, check, explain, lay, order, verify
from specc.cli.console import OUR_FAULT, USAGE, UsageError, complain, leave_reader

if TYPE_CHECKING:
    from collections.abc import Sequence

COMMANDS = (check, build, lay, order, verify, explain)
"""A command is a module: what helps to choose it, what it takes, what it does."""

_RARELY = 200_000  # objects made between two looks for garbage
INTERRUPTED, READER_GONE = 130, 141  # as a shell counts them: 128 and the number of the signal


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
    except UsageError as fault:
        complain(str(fault))
        return USAGE
    except BrokenPipeError:
        leave_reader()
        return READER_GONE
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as fault:
        if os.environ.get("SPECC_DEBUG"):
            raise
        complain(f"error[SPC900]: a fault of specc itself: {type(fault).__name__}: {fault}")
        return OUR_FAULT
    finally:
        gc.set_threshold(*usual)


def _parser() -> argparse.ArgumentParser:
    parser = argparse.ArgumentParser(prog="specc", description="A garment in text becomes a technical sheet.")
    parser.add_argument("--version", action="version", version=f"specc {__version__}")
    commands = parser.add_subparsers(required=True, metavar="COMMAND")
    for command in COMMANDS:
        one = commands.add_parser(command.__name__.rpartition(".")[2], help=command.HELP)
        command.arguments(one)
        one.set_defaults(run=command.run)
    return parser
