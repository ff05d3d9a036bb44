"""The PDF of the example from its document, against WeasyPrint alone on the same HTML.

Both in one warm process each.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from tests.benchmarks.pairs import compare

EXAMPLE = Path(__file__).parents[2] / "examples" / "estuary-shell" / "estuary-shell.garment"
ALONE = "import sys; from weasyprint import HTML; HTML(sys.argv[1]).write_pdf(sys.argv[2])"

with tempfile.TemporaryDirectory() as folder:
    build = [sys.executable, "-m", "specc", "build", str(EXAMPLE), "--out", folder]
    compare(
        "specc build, everything written (aim: at most 1.3)",
        build,
        [sys.executable, "-c", ALONE, f"{folder}/ES-07/sheet.html", f"{folder}/alone.pdf"],
        runs=7,
    )
