"""Owns fitting a path between the sides of an outline; knows nothing of what either is."""

from __future__ import annotations

from typing import TYPE_CHECKING

from specc.geometry.crossing import crossings

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.geometry.path import Path


def within(path: Path, outline: Path) -> Iterator[Path]:
    """The path made longer, or shorter, until both ends lie on the outline; none where they cannot."""
    middle, reach = 0.5 * path.length(), path.length()
    longer = path.extended(reach, reach)
    stops = [crossing.along - reach for crossing in crossings(longer, outline)]
    before, after = [at for at in stops if at < middle], [at for at in stops if at > middle]
    if before and after:
        yield longer.between(max(before) + reach, min(after) + reach)
