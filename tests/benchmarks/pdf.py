"""The PDF of the example from its document, against WeasyPrint alone on the same HTML for paper.

Both in one warm process each.
"""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from specc.backends import html
from specc.gather import read
from specc.pipeline import check, document, lay_out
from specc.world import Folder
from tests.benchmarks.pairs import compare

EXAMPLE = Path(__file__).parents[2] / "examples" / "estuary-shell" / "estuary-shell.garment"
ALONE = "import sys; from weasyprint import HTML; HTML(sys.argv[1]).write_pdf(sys.argv[2])"


def paper() -> str:
    """The page that the PDF is made from."""
    world = Folder(EXAMPLE.parent)
    source, _ = read(EXAMPLE.name, EXAMPLE.read_bytes())
    made = document(lay_out(check(source, world), world))
    assert made is not None
    return html.pages(made).paper


with tempfile.TemporaryDirectory() as folder:
    page = Path(folder, "paper.html")
    page.write_text(paper(), encoding="utf-8", newline="\n")
    build = [sys.executable, "-m", "specc", "build", str(EXAMPLE), "--out", folder]
    compare(
        "specc build, everything written (aim: at most 1.3)",
        build,
        [sys.executable, "-c", ALONE, str(page), f"{folder}/alone.pdf"],
        runs=7,
    )
