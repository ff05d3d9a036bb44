"""`specc check` on the example against importing the two libraries that it cannot do without."""

from __future__ import annotations

import sys
from pathlib import Path

from tests.benchmarks.pairs import compare

EXAMPLE = Path(__file__).parents[2] / "examples" / "estuary-shell" / "estuary-shell.garment"

compare(
    "specc check (aim: at most 2.5)",
    [sys.executable, "-m", "specc", "check", str(EXAMPLE)],
    [sys.executable, "-c", "import lark, shapely"],
)
