"""Owns the command line."""

from specc.cli.command_line import main

__all__ = ["main"]
