"""What the page of alterations says of edges: no row that says nothing."""

from __future__ import annotations

from specc.document.document import Group
from specc.document.table import Table
from specc.pipeline import document
from tests.made import sheath

STEPS = """alter {
  leave out sleeve
  shorten front, back by 2 cm at hem
  band front.hem by 4 cm as band
}
"""
FINISH = """seam side joins front.side to back.side by french
seam shoulder joins front.shoulder to back.shoulder by french
finish neck along front.neck, back.neck by elastic-bound { binding edging }
finish armhole along front.armhole, back.armhole by elastic-bound { binding edging }
hem bottom along front.hem, back.hem by double-turned
hem band along band.top, band.bottom, band.start, band.end by double-turned
"""


def test_a_new_edge_takes_one_row_and_a_changed_one_three() -> None:
    result = sheath(
        f"{STEPS}{FINISH}",
        block="back-centre fold",
    )
    found = document(result)
    assert found is not None, [each.message for each in result.diagnostics]
    page = next(page for page in found.pages if page.kind == "alterations")
    tables: list[Table] = []
    blocks = list(page.blocks)
    while blocks:
        block = blocks.pop(0)
        if isinstance(block, Group):
            blocks += block.blocks
        elif isinstance(block, Table) and block.name.startswith("edges-changed"):
            tables.append(block)
    shortened, band = ([row.cells for row in table.rows] for table in tables)

    assert [cells[1] for cells in shortened[:3]] == ["before", "after", "change"]
    assert {cells[1] for cells in band} == {"new"}
    assert all(all(cells[1:]) for cells in (*shortened, *band))
