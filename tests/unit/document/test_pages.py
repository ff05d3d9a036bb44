"""The pages say what a maker needs, and only what the garment has."""

from __future__ import annotations

from decimal import Decimal
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.document.build import PAGES
from specc.document.document import Caution, Facts, Figure, Group, Heading, Paragraph
from specc.document.drawing import Label
from specc.document.pages.cautions import CONDITIONS
from specc.document.pages.measures import letter
from specc.document.table import Table
from specc.library.cautions import cautions
from tests.unit.document.values import SPEC, document, sheet

if TYPE_CHECKING:
    from specc.document.document import Document, Page

SKIFF = document()
TEMPLATES = Path(__file__).parents[3] / "templates"


def page(kind: str, of: Document = SKIFF) -> Page:
    return next(page for page in of.pages if page.kind == kind)


def blocks(of: Page | Group) -> list[object]:
    found: list[object] = []
    for block in of.blocks:
        found += blocks(block) if isinstance(block, Group) else [block]
    return found


def table(name: str, of: Document = SKIFF) -> Table:
    return next(
        block
        for page in of.pages
        for block in blocks(page)
        if isinstance(block, Table) and block.name == name
    )


def test_pages_stand_in_the_order_of_the_sheet() -> None:
    order = [module.__name__.rpartition(".")[2] for module in PAGES]

    assert [page.kind for page in SKIFF.pages] == [
        kind for kind in order if kind not in {"alterations", "bias"}
    ]


def test_every_page_has_its_template_and_every_template_its_page() -> None:
    kinds = {module.__name__.rpartition(".")[2] for module in PAGES}

    assert kinds == {path.name.removesuffix(".html.j2") for path in TEMPLATES.joinpath("pages").iterdir()}


def test_every_name_of_a_table_or_drawing_is_there_once() -> None:
    names = [
        block.name if isinstance(block, Table) else block.drawing.name
        for page in SKIFF.pages
        for block in blocks(page)
        if isinstance(block, Table | Figure)
    ]

    assert len(names) == len(set(names))


def test_the_title_block_names_the_last_revision() -> None:
    block = SKIFF.block

    assert (block.style, block.title, block.revision, block.date) == (
        "SK-01",
        "Skiff overtop",
        "B",
        "2026-03-02",
    )


def test_revisions_are_told_newest_first() -> None:
    assert [row.cells[0] for row in table("revisions").rows] == ["B", "A"]


def test_the_order_adds_up() -> None:
    assert table("order").rows[0].cells[1:] == ("4", "8", "10", "6", "2", "30")


@pytest.mark.parametrize(
    ("spec", "shown"),
    [
        (SPEC, {"blades", "dye", "open-cloth", "flammability-open", "fibre-label", "care-label"}),
        (
            SPEC.replace("open, sheer, ravel-free", "ravel-free").replace("140 g/m2", "80 g/m2"),
            {"blades", "dye", "flammability-light", "fibre-label", "care-label"},
        ),
        (
            SPEC.replace("worn-by   adult", "worn-by   child"),
            {
                "blades", "dye", "open-cloth", "flammability-open", "fibre-label", "care-label",
                "drawstrings", "small-parts", "sleepwear",
            },
        ),
    ],
)  # fmt: skip
def test_cautions_are_those_that_the_garment_calls_for(spec: str, shown: set[str]) -> None:
    titles = {each.title: each.id for each in cautions()}
    found = {
        titles[each.title] for each in blocks(page("cautions", document(spec))) if isinstance(each, Caution)
    }

    assert found == shown


def test_every_caution_has_a_condition_a_source_and_a_name_of_its_own() -> None:
    rows = cautions()

    assert {row.when for row in rows} == set(CONDITIONS)
    assert all(row.source for row in rows)
    assert len({row.id for row in rows}) == len(rows)


def test_laws_are_deferred_to() -> None:
    lead = page("cautions").lead

    assert "check the current text and your local law" in str(lead)
    assert "certifies nothing" in str(lead)


def test_accepted_warnings_stand_with_the_reason_and_the_others_with_a_cure() -> None:
    assert table("accepted").rows[0].cells == (
        "SPC501", "85", "dart front.bust-dart shows in open cloth", "the dart is the ornament & <b>shows</b>",
    )  # fmt: skip
    (remaining,) = table("warnings").rows
    assert (remaining.cells[0], remaining.cells[2:]) == (
        "SPC599", ("the neck may gape", "hold the binding in along the curve"),
    )  # fmt: skip


def test_points_of_measure_have_letters_tolerances_and_room_for_the_sample() -> None:
    points = table("points-of-measure")

    assert [row.cells[0] for row in points.rows] == ["A", "B"]
    assert points.rows[1].cells[2:4] == ("1/8", "1/4")
    assert [column.heading for column in points.columns if column.blank] == ["measured", "off by"]
    assert [column.heading for column in points.columns if column.strong] == ["12"]


@pytest.mark.parametrize(("index", "name"), [(0, "A"), (25, "Z"), (26, "AA"), (51, "AZ"), (52, "BA")])
def test_letters_go_on_after_z(index: int, name: str) -> None:
    assert letter(index) == name


def test_each_piece_has_its_drawing_its_edges_and_what_they_go_into() -> None:
    rows = {row.cells[0]: row.cells for row in table("edges-front").rows}

    assert rows["centre"][-2:] == ("", "fold of the cloth")
    assert rows["side"][-2:] == ("3/8 in", "seam side: seam overlocked, both plies together")
    assert rows["neck"][-2:] == ("none", "finish neckline: edge bound with folded elastic")
    assert rows["armhole"][-2:] == ("none", "nothing")
    assert len(rows["hem"]) == 1 + 5 + 2


def test_operations_carry_stitch_length_and_place() -> None:
    row = table("operations-1").rows[1]

    assert row.cells[0] == "1.2"
    assert row.cells[2:] == ("301 lockstitch", "3.0", "8.5", "1/8 in from the open edges of the binding")


def test_seams_are_walked_side_by_side() -> None:
    rows = table("walks").rows

    assert [row.cells[1] for row in rows[:3]] == [
        "front.shoulder", "back.shoulder", "left over, mm; 1.0 mm allowed",
    ]  # fmt: skip
    assert rows[2].cells[4] == "-3.4"


def test_a_cut_length_is_made_of_what_stands_above_it() -> None:
    rows = [(row.cells[0], row.cells[3]) for row in table("trim-2").rows]

    assert [name for name, _ in rows] == [
        "2 × back.neck: laid flat",
        "2 × front.neck from neck-point: laid flat",
        "2 × front.neck: then held in by 6%",
        "seam line in all",
        "less what is held in",
        "and overlap",
        "Cut length",
    ]
    assert rows[-1][1] == "21 3/4"


def test_the_bill_counts_lays_and_where_there_are_none_says_that_cloth_is_by_area() -> None:
    by_area = document(laid=False)
    assert "by the area" in str(page("bill", by_area).lead)
    assert not {"lays", "ticket"} & {page.kind for page in by_area.pages}
    notes = [block.text for block in blocks(page("bill")) if isinstance(block, Paragraph)]
    assert any("the lays, added up" in str(note) for note in notes)


def test_a_plan_in_a_hurry_says_how_to_get_better_ones() -> None:
    assert str(page("lays").lead).startswith("Quick plan")
    assert "specc lay" in str(page("lays").lead)


def test_the_cloth_of_the_lays_adds_up_and_is_at_least_what_they_take() -> None:
    rows = table("lays-leno").rows
    lays = {lays.cloth: lays for lays in sheet().quantities.lays}["leno"]
    assert len(rows) == len(lays.lays)
    for row, lay in zip(rows, lays.lays, strict=True):
        printed = Decimal(row.cells[-1].removesuffix(" yd"))
        assert float(printed) * 914.4 >= lay.length * lay.plies * lay.times - 1e-3
        assert float(printed) * 914.4 < lay.length * lay.plies * lay.times + 9.2


def test_every_piece_of_a_lay_is_named_in_its_drawing_or_in_the_key_below() -> None:
    (leno, *_) = sheet().quantities.lays
    drawn = [block for block in blocks(page("lays")) if isinstance(block, Figure)]
    for figure, lay in zip(drawn, leno.lays, strict=False):
        texts = [item.text for item in figure.drawing.items if isinstance(item, Label)]
        for piece in lay.pieces:
            assert f"{piece.size} {piece.piece}" in texts


def test_the_ticket_counts_the_pieces_of_the_order() -> None:
    last = table("ticket-bundles").rows[-1]
    assert last.cells[0] == "In all"
    assert [int(cell) for cell in last.cells[2:]] == [2 * count for count in (4, 8, 10, 6, 2)]
    assert any(
        "no pins" in str(block.text) for block in blocks(page("ticket")) if isinstance(block, Paragraph)
    )
    assert [block.title for block in blocks(page("ticket")) if isinstance(block, Caution)] == ["Blades"]


def test_the_bill_is_summed_by_currency_and_says_what_has_no_price() -> None:
    rows = table("bill-of-materials").rows

    assert rows[-1].cells[0] == "In all, of what is priced"
    assert rows[-1].strong
    assert [row.cells[-2] for row in rows if row.cells[0].startswith("corespun")] == ["not priced"]


def test_care_stands_in_the_order_of_iso_3758() -> None:
    spec = SPEC.replace("  wash      40 C, mild\n  dry       flat, in shade\n", "  dry flat\n  wash 40 C\n")

    assert [row.cells[0] for row in table("care", document(spec)).rows] == ["Wash", "Dry"]


def test_the_source_is_there_word_for_word_with_its_digest() -> None:
    from hashlib import sha256

    facts = next(each for each in blocks(page("source")) if isinstance(each, Facts))

    assert sha256(SPEC.encode()).hexdigest() in next(str(f.value) for f in facts.rows if f.label == "SHA-256")
    assert page("source").blocks[-1].lines == tuple(SPEC.removesuffix("\n").split("\n"))  # type: ignore[union-attr]


def test_units_are_stated_on_every_page_with_lengths() -> None:
    for kind in ("measures", "pieces", "making", "trims"):
        assert "inches" in str(page(kind).lead)
    metric = document(SPEC.replace("units     in", "units     cm"))
    assert "centimetres" in str(page("measures", metric).lead)
    assert "0.1 cm" in str(page("trims", metric).lead)


def test_headings_of_seams_are_numbered_in_order() -> None:
    headings = [each for each in blocks(page("making")) if isinstance(each, Heading)]

    assert [heading.number for heading in headings] == ["1", "2", "3", "4"]


def test_the_page_for_comments_and_approvals_leaves_room_to_write_and_names_nobody() -> None:
    comments, signed, sample = table("comments"), table("approvals-signed"), table("sample")

    assert [column.heading for column in comments.columns] == [
        "Date", "Place on the garment", "What to change", "By",
    ]  # fmt: skip
    assert all(set(row.cells) == {""} for row in comments.rows)
    assert [row.cells[0] for row in sample.rows] == ["Sample received", "Sample measured", "Sample fitted"]
    assert [column.heading for column in signed.columns] == ["", "Name", "Date", "Signature"]
    assert all(set(row.cells[1:]) == {""} for row in (*signed.rows, *sample.rows))
    assert all(column.blank for of in (comments, signed, sample) for column in of.columns if column.heading)


def test_charts_blocks_and_methods_stand_with_the_hash_of_their_own_text() -> None:
    rows = {row.cells[0]: row.cells[1:] for row in table("declarations-used").rows}
    before, text = SPEC.split("\nchart mini", 1)
    text = f"chart mini{text[: text.index('}') + 1]}"
    line = before.count("\n") + 2

    assert rows["chart mini"] == (f"skiff.garment {line}", sha256(text.encode()).hexdigest())
    assert set(rows) >= {"chart mini", "block plain", "method elastic-bound", "method overlocked"}
    assert rows["method overlocked"][0].startswith("library/seams.garment ")


def test_a_hash_changes_with_what_is_declared_and_with_nothing_else() -> None:
    def hashes(spec: str) -> dict[str, str]:
        return {row.cells[0]: row.cells[2] for row in table("declarations-used", document(spec)).rows}

    before = hashes(SPEC)
    assert hashes(SPEC.replace("first sample", "the first sample")) == before
    changed = hashes(SPEC.replace("31.5, 32.5", "31.4, 32.5"))
    assert {name for name, one in changed.items() if one != before[name]} == {"chart mini"}


def test_a_status_stands_on_every_page_and_is_left_out_where_none_is_said() -> None:
    approved = document(SPEC.replace("season ", "status approved\n  season "))

    assert approved.block.state == "Revision B, 2026-03-02, approved"
    assert SKIFF.block.state == "Revision B, 2026-03-02"
