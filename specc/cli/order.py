"""Owns the command that answers what another order would take and cost."""

from __future__ import annotations

import re
import sys
from typing import TYPE_CHECKING

from specc.cli.console import OK, Outcome, UsageError, say, tell, visible
from specc.cli.reading import compiled, laid_out

if TYPE_CHECKING:
    import argparse

    from specc.pipeline import Result
    from specc.units import Quantity

HELP = "say what another order, or another width of cloth, would take and cost; nothing is written"
_PAGES = ("bill", "lays")
_SIZE = re.compile(r"\s*(?P<size>[^:,]+?)\s*:\s*(?P<count>[0-9]{1,6})\s*")
_WIDTH = re.compile(r"\s*(?:(?P<cloth>[^:]+?)\s*:\s*)?(?P<number>[0-9][0-9 ./]*?)\s*(?P<unit>[a-z]+)\s*")


def arguments(parser: argparse.ArgumentParser) -> None:
    """What the command takes."""
    parser.add_argument("file", metavar="FILE", help="a .garment file")
    parser.add_argument("--sizes", metavar="ORDER", help='how many of each size, such as "8: 2, 10: 6"')
    parser.add_argument(
        "--cloth-width",
        metavar="WIDTH",
        help='the usable width of the first cloth, such as 45in, or of another: "lining: 140cm"',
    )


def run(options: argparse.Namespace) -> int:
    """Print the bill and the lays of the order that is asked for."""
    outcome = Outcome()
    result = compiled(options.file)
    if options.sizes is not None:
        result = _ordered(result, options.sizes)
    if options.cloth_width is not None:
        result = _widened(result, options.cloth_width)
    outcome.add(result.diagnostics)
    if outcome.status == OK:
        from specc.laying.lay import STALE  # noqa: PLC0415  only what is laid is told of lays

        result = laid_out(result, options.file)
        # Of what the garment does not order the lay file cannot know.
        other = options.sizes is not None or options.cloth_width is not None
        outcome = Outcome()
        outcome.add(tuple(said for said in result.diagnostics if not (other and said.code is STALE)))
    tell(outcome.said, "text", sys.stderr)
    if outcome.status == OK:
        say(_answer(result), sys.stdout)
    return outcome.status


def _answer(result: Result) -> str:
    from specc.backends.terminal import lines  # noqa: PLC0415  only what is printed needs paper
    from specc.pipeline import document  # noqa: PLC0415

    made = document(result)
    assert made is not None, "a garment without errors has a sheet"
    return "".join(f"{visible(line)}\n" for line in lines(page for page in made.pages if page.kind in _PAGES))


def _ordered(result: Result, text: str) -> Result:
    from specc.what_if import with_order  # noqa: PLC0415  only this command asks

    order: dict[str, int] = {}
    for part in text.split(","):
        match = _SIZE.fullmatch(part)
        if match is None:
            raise UsageError(f'cannot read "{part.strip()}"; write sizes and numbers: "8: 2, 10: 6"')
        if match["size"] in order:
            raise UsageError(f"size {match['size']} is there twice")
        order[match["size"]] = int(match["count"])
    if not any(order.values()):
        raise UsageError("nothing is ordered: all numbers are 0")
    try:
        return with_order(result, order)
    except KeyError as unknown:
        assert result.garment is not None
        known = ", ".join(result.garment.header.sizes)
        raise UsageError(f"there is no size {unknown.args[0]}; the garment has {known}") from None


def _widened(result: Result, text: str) -> Result:
    from specc.what_if import with_width  # noqa: PLC0415

    match = _WIDTH.fullmatch(text)
    width = _length(match["number"], match["unit"]) if match else None
    if match is None or width is None:
        raise UsageError(f'cannot read "{text}"; write a width such as 45in, or "lining: 140cm"')
    try:
        return with_width(result, match["cloth"], width)
    except KeyError as unknown:
        assert result.garment is not None
        known = ", ".join(cloth.name for cloth in result.garment.cloths)
        raise UsageError(f"there is no cloth {unknown.args[0]}; the garment has {known}") from None


def _length(number: str, symbol: str) -> Quantity | None:
    """A length above zero; None for anything else."""
    from specc.units import Dimension, Quantity, parse_number, unit  # noqa: PLC0415

    written = unit(symbol)
    if written is None or written.dimension != Dimension.LENGTH:
        return None
    try:
        found = Quantity.of(parse_number(number.strip()), written)
    except ValueError:
        return None
    return found if found.value > 0 else None
