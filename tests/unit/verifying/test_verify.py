"""A sheet is what its source gives, or it is said in what way it is not."""

from __future__ import annotations

import json
from functools import cache
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

import pypdf
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specc import pipeline
from specc.pipeline import check_bytes, document, lay_out
from specc.verifying import enclosures
from specc.verifying import verify as module
from specc.verifying.verify import verify
from specc.world import Folder
from tests.compiling import roughly
from tests.unit.verifying.sheets import PROJECT, SPEC, built, changed, enclosed, enclosing, saved_anew, sheet

if TYPE_CHECKING:
    from collections.abc import Iterator

    from specc.diagnostics import Diagnostic
    from specc.verifying.enclosures import Opened
    from specc.verifying.verify import Verdict


Made = tuple[bytes | None, tuple["Diagnostic", ...]]


@pytest.fixture(autouse=True, scope="module")
def _made_once() -> Iterator[None]:
    """One source gives one sheet, so each is made anew once, which takes a second."""
    make, known = module._made_anew, dict[object, Made]()

    def remembered(called: str, found: Opened, spec: str) -> Made:
        key = (called, spec, tuple(sorted(found.source.items())))
        if key not in known:
            known[key] = make(called, found, spec)
        return known[key]

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(module, "_made_anew", remembered)
        yield


def told(verdict: Verdict) -> list[str]:
    return [each.code.id for each in verdict.said]


def with_values(of: bytes, **members: object) -> bytes:
    """A sheet with other values enclosed; those that are None are left out."""
    result = json.loads(enclosed(of)["result.json"]) | members
    result = {name: value for name, value in result.items() if value is not None}
    return enclosing(*changed(enclosed(of), result_json=json.dumps(result).encode()), within=of)


@cache
def older() -> bytes:
    """The sheet as an older version made it, by its own word; its pages and values are as now."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(pipeline, "__version__", "0.0.9")
        return built()


# --- what it encloses ---


def test_a_sheet_encloses_its_values_and_the_whole_project_as_it_was_written() -> None:
    files = enclosed(sheet())

    assert {name: data for name, data in files.items() if name.startswith("source/")} == {
        f"source/{path}": data for path, data in PROJECT.items()
    }
    listed = json.loads(files["result.json"])["garment"]["sources"]
    assert {each["file"]: each["sha256"] for each in listed if each["file"] in PROJECT} == {
        path: sha256(data).hexdigest() for path, data in PROJECT.items()
    }


def test_the_names_of_what_is_enclosed_stand_in_order_as_a_name_tree_must() -> None:
    names = [each.name for each in pypdf.PdfReader(BytesIO(sheet())).attachment_list]

    assert names == sorted(names, key=str.encode)


def test_what_is_enclosed_bears_no_date_of_its_making() -> None:
    dates = {
        date
        for each in pypdf.PdfReader(BytesIO(sheet())).attachment_list
        for date in (each.creation_date, each.modification_date)
    }

    assert [date.isoformat() for date in dates if date] == ["1980-01-01T00:00:00+00:00"]


def test_a_copy_without_prices_encloses_no_source_and_no_price() -> None:
    files = enclosed(sheet(priced=False))

    assert list(files) == ["result.json"]
    assert b"3.2" not in files["result.json"]


# --- what is said of it ---


def test_a_sheet_as_it_was_built_is_what_it_says() -> None:
    verdict = verify("sheet.pdf", sheet())

    assert verdict.said == ()
    first, *files = verdict.words.splitlines()
    assert first == "sheet.pdf is what it says: its source gives it again, byte for byte."
    assert files == [f"{path}  SHA-256 {sha256(data).hexdigest()}" for path, data in PROJECT.items()]


def test_a_copy_without_prices_says_that_the_source_was_left_out_on_purpose() -> None:
    (said,) = verify("sheet.pdf", sheet(priced=False)).said

    assert said.code.id == "SPC633"
    assert said.message == (
        "`sheet.pdf` is a copy without prices: its source was left out on purpose, so it cannot be verified"
    )


def test_a_sheet_that_was_saved_anew_is_not_vouched_for() -> None:
    (said,) = verify("sheet.pdf", saved_anew(sheet())).said

    assert said.code.id == "SPC636"
    assert "saved anew; values and texts agree, drawings were not compared" in said.message


def test_a_value_that_was_changed_is_named_with_what_the_source_gives() -> None:
    sizes = json.loads(enclosed(sheet())["result.json"])["sizes"]
    sizes["S"]["pieces"]["panel"]["area_mm2"] = 1.5
    (said,) = verify("sheet.pdf", with_values(sheet(), sizes=sizes)).said

    assert said.code.id == "SPC636"
    assert said.message.endswith("1 value differs")
    assert said.notes[0] == "`sizes.S.pieces.panel.area_mm2`: 1.5 on the sheet, 176000.0 from its source"


def test_a_page_that_was_changed_is_named() -> None:
    writer = pypdf.PdfWriter(clone_from=BytesIO(sheet()))
    writer.remove_page(1)
    out = BytesIO()
    writer.write(out)
    (said,) = verify("sheet.pdf", out.getvalue()).said

    assert said.code.id == "SPC636"
    assert "is not what its source gives: what is written on pages 2, 3, 4 and " in said.message


def test_a_source_that_was_changed_is_told_by_its_hash() -> None:
    other = SPEC.replace("40 cm", "41 cm").encode()
    data = enclosing(*changed(enclosed(sheet()), source__cover_garment=other), within=sheet())
    (said,) = verify("sheet.pdf", data).said

    assert said.code.id == "SPC634"
    assert said.notes[1] == f"SHA-256 of the text: {sha256(other).hexdigest()}"


def test_a_source_that_was_changed_together_with_its_hash_gives_other_values() -> None:
    """Whoever changes the text and its hash in the values still has a sheet that says something else."""
    other = SPEC.replace("40 cm", "41 cm").encode()
    result = json.loads(enclosed(sheet())["result.json"])
    result["garment"]["sources"][0]["sha256"] = sha256(other).hexdigest()
    files = changed(enclosed(sheet()), source__cover_garment=other, result_json=json.dumps(result).encode())
    (said,) = verify("sheet.pdf", enclosing(*files, within=sheet())).said

    assert said.code.id == "SPC636"
    assert any("pieces.panel" in note for note in said.notes)


def test_whoever_changes_all_that_is_enclosed_has_the_pages_against_them() -> None:
    other = built({**PROJECT, "cover.garment": SPEC.replace("CV-1", "CV-2").encode()})
    data = enclosing(*enclosed(other).items(), within=sheet())
    (said,) = verify("sheet.pdf", data).said

    assert said.code.id == "SPC636"
    assert said.message.endswith("the hash of `cover.garment` is not printed on it")


def test_a_file_of_the_source_that_is_missing_is_named() -> None:
    data = enclosing(*changed(enclosed(sheet()), source__parts__cloths_garment=None), within=sheet())
    (said,) = verify("sheet.pdf", data).said

    assert (said.code.id, "`parts/cloths.garment`" in said.message) == ("SPC638", True)


def test_a_source_with_errors_is_told_with_them() -> None:
    wrong = SPEC.replace("panel.left", "panel.lfet").encode()
    result = json.loads(enclosed(sheet())["result.json"])
    result["garment"]["sources"][0]["sha256"] = sha256(wrong).hexdigest()
    files = changed(enclosed(sheet()), source__cover_garment=wrong, result_json=json.dumps(result).encode())

    assert told(verify("sheet.pdf", enclosing(*files, within=sheet()))) == ["SPC201", "SPC635"]


def test_a_sheet_of_another_version_is_compared_by_its_values() -> None:
    verdict = verify("sheet.pdf", older())

    assert told(verdict) == ["SPC637"]
    assert "was made by specc 0.0.9 with WeasyPrint" in verdict.said[0].message
    assert verdict.words.startswith("sheet.pdf says what its source gives: all ")


def test_a_sheet_that_only_claims_to_be_of_another_version_has_its_pages_against_it() -> None:
    (said,) = verify("sheet.pdf", with_values(sheet(), program="specc 0.0.9")).said

    assert said.code.id == "SPC636"
    assert said.message.endswith("the program that made it is not printed on it")


def test_an_older_version_may_say_less_and_have_another_library() -> None:
    result = json.loads(enclosed(sheet())["result.json"])
    result["garment"]["sources"][-1]["sha256"] = "0" * 64
    assert result["garment"]["sources"][-1]["file"].startswith("library/")
    data = with_values(older(), bias_strips=None, garment=result["garment"])

    assert told(verify("sheet.pdf", data)) == ["SPC637"]


def test_a_sheet_of_another_version_with_other_values_is_not_what_its_source_gives_here() -> None:
    verdict = verify("sheet.pdf", with_values(older(), accepted=["something"]))

    assert told(verdict) == ["SPC636"]
    assert "a newer version may reckon otherwise" in verdict.said[0].notes[-1]
    assert verdict.words == ""


# --- files from strangers ---


def whole() -> tuple[tuple[str, bytes], ...]:
    return tuple(enclosed(sheet()).items())


@pytest.mark.parametrize(
    ("data", "reason"),
    [
        (b"", "does not begin as a PDF does"),
        (b"GIF89a", "does not begin as a PDF does"),
        (SPEC.encode(), "does not begin as a PDF does"),
        (b"%PDF-1.7\n", "damaged"),
        (b"%PDF-1.7\n" + b"\0" * 4000, "damaged"),
    ],
)
def test_what_is_no_pdf_is_told(data: bytes, reason: str) -> None:
    (said,) = verify("sheet.pdf", data).said

    assert said.code.id == "SPC630"
    assert reason in said.message


@pytest.mark.parametrize("share", [0.1, 0.5, 0.9])
def test_a_sheet_that_was_cut_short_is_answered(share: float) -> None:
    assert set(told(verify("sheet.pdf", sheet()[: int(len(sheet()) * share)]))) <= {"SPC630", "SPC631"}


@pytest.mark.parametrize("place", [3, 30, 60, 90, 99])
def test_a_sheet_with_damaged_bytes_is_answered(place: int) -> None:
    start = len(sheet()) * place // 100
    data = sheet()[:start] + b"\xff\0(<<" * 40 + sheet()[start + 200 :]
    verdict = verify("sheet.pdf", data)

    assert verdict.words == ""
    assert set(told(verdict)) & {"SPC630", "SPC631", "SPC632", "SPC634", "SPC636"}


def test_a_locked_pdf_is_told() -> None:
    writer = pypdf.PdfWriter(clone_from=BytesIO(sheet()))
    writer.encrypt("secret", algorithm="RC4-128")
    out = BytesIO()
    writer.write(out)
    (said,) = verify("sheet.pdf", out.getvalue()).said

    assert (said.code.id, said.message.endswith("it is locked")) == ("SPC630", True)


def test_a_pdf_without_anything_enclosed_is_told() -> None:
    assert told(verify("sheet.pdf", enclosing())) == ["SPC631"]
    assert told(verify("sheet.pdf", enclosing(("notes.txt", b"hello")))) == ["SPC631"]


@pytest.mark.parametrize(
    "name",
    ["source/../../x.garment", "/etc/passwd", "..\\x.garment", "source/C:/x.garment", "../result.json"],
)
def test_a_name_that_leads_out_is_refused(name: str) -> None:
    (said,) = verify("sheet.pdf", enclosing(*whole(), (name, b"x"))).said

    assert said.code.id == "SPC632"
    assert name in said.message
    assert "leads out of the folder" in said.message


def test_two_of_one_name_are_refused() -> None:
    assert told(verify("sheet.pdf", enclosing(*whole(), whole()[-1]))) == ["SPC632"]


def test_a_file_that_grows_without_end_is_refused() -> None:
    """30 MB of blanks are 30 kB in the file."""
    (said,) = verify("sheet.pdf", enclosing(*whole(), ("source/bomb.garment", b" " * 30_000_000))).said

    assert said.code.id == "SPC632"
    assert "more than 10,000,000 bytes" in said.message


@pytest.mark.parametrize("packing", ["/LZWDecode", "/JBIG2Decode", "/RunLengthDecode", "/Crypt"])
def test_a_packing_of_somebody_else_is_not_unpacked(packing: str) -> None:
    said = verify("sheet.pdf", enclosing(("result.json", b"{}"), packed=packing)).said

    assert "packed in a way that specc does not use" in said[0].message


def test_too_many_files_are_refused() -> None:
    many = [(f"source/{number}.garment", b"") for number in range(400)]
    (said,) = verify("sheet.pdf", enclosing(*whole(), *many)).said

    assert (said.code.id, "more than 200 files" in said.message) == ("SPC630", True)


def test_a_file_too_large_to_be_a_sheet_is_not_read(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(enclosures, "LARGEST_SHEET", 1000)

    assert told(verify("sheet.pdf", sheet())) == ["SPC630"]


@pytest.mark.parametrize(
    "values",
    [
        b"",
        b"\xff",
        b"[]",
        b"3",
        b"{}",
        b"[" * 100_000,
        b'{"garment": 3}',
        b'{"garment": {"sources": [3]}}',
        b'{"garment": {"sources": []}}',
        b'{"garment": {"sources": [{"file": "x"}]}}',
    ],
)
def test_values_that_are_not_those_of_a_sheet_are_refused(values: bytes) -> None:
    assert told(verify("sheet.pdf", enclosing(*changed(dict(whole()), result_json=values)))) == ["SPC632"]


def test_a_spec_that_is_not_text_is_answered() -> None:
    data = b"\xff\xfe garment"
    values = {"garment": {"sources": [{"file": "a.garment", "sha256": sha256(data).hexdigest()}]}}
    files = (("result.json", json.dumps(values).encode()), ("source/a.garment", data))

    assert told(verify("sheet.pdf", enclosing(*files))) == ["SPC109", "SPC635"]


def test_a_spec_that_asks_for_what_is_not_enclosed_does_not_get_it() -> None:
    data = SPEC.replace("parts/cloths.garment", "../../etc/passwd").encode()
    values = {"garment": {"sources": [{"file": "a.garment", "sha256": sha256(data).hexdigest()}]}}
    files = (("result.json", json.dumps(values).encode()), ("source/a.garment", data))

    assert set(told(verify("sheet.pdf", enclosing(*files)))) >= {"SPC225", "SPC635"}


@settings(max_examples=60)
@given(
    places=st.lists(st.floats(0, 1, exclude_max=True), min_size=1, max_size=20),
    byte=st.integers(0, 255),
)
def test_any_bytes_that_are_changed_are_answered(places: list[float], byte: int) -> None:
    data = bytearray(sheet())
    for place in places:
        data[int(place * len(data))] = byte
    found, said = enclosures.opened("sheet.pdf", bytes(data))

    assert (found is None) == bool(said)
    assert {each.code.id for each in said} <= {"SPC630", "SPC631", "SPC632"}


def test_the_drawings_and_the_lay_file_of_a_project_are_enclosed_with_the_spec() -> None:
    folder = Path(__file__).parents[3] / "examples/loft-waistcoat"
    world, name = Folder(folder), "loft-waistcoat.garment"
    made = document(lay_out(check_bytes(name, (folder / name).read_bytes(), world), world, roughly))

    assert made is not None
    assert {file.name: file.text for file in made.enclosed} == {
        path.name: path.read_text(encoding="utf-8")
        for path in folder.iterdir()
        if path.suffix in {".garment", ".lay", ".svg"}
    }
    assert [file.name for file in made.enclosed][::2] == [name, "loft-waistcoat.lay"]
