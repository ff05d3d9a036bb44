"""The command line: what it prints and where, how it ends, and what it loads."""

from __future__ import annotations

import errno
import io
import json
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import jsonschema
import pytest

import specc
from specc import cli, pipeline, searching
from specc.laying import improve

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

ROOT = Path(__file__).resolve().parent.parent.parent
EXAMPLE = ROOT / "examples/estuary-shell/estuary-shell.garment"
# The smallest garment that has its own chart and block, so that a test is quick.
SOUND = """\
garment cover "Cover" { style "CV-1"; sizes S, L; units cm }
use chart cover-sizes
use block cover
chart cover-sizes { sizes S, L; measurement bust = 88, 100 cm }
block cover {
  piece panel {
    cut 1
    point a at 0, 0
    point b at bust / 2, 0
    point c at bust / 2, 40 cm
    point d at 0, 40 cm
    edge hem from a { line to b }
    edge right from b { line to c }
    edge top from c { line to d }
    edge left from d { line to a }
    grain from a to d
  }
}
cloth calico { fibre 100% cotton; width 150 cm; weight 150 g/m2 }
hem edges along panel.hem, panel.right, panel.top, panel.left by double-turned
"""
WRONG = SOUND.replace("100% cotton", "90% cotton")


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder to be in, with a sound and a wrong spec."""
    tmp_path.joinpath("sound.garment").write_text(SOUND, encoding="utf-8")
    tmp_path.joinpath("wrong.garment").write_text(WRONG, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def started(*arguments: str, folder: Path, **environment: str) -> subprocess.CompletedProcess[str]:
    """`python -m specc` as a user starts it."""
    return subprocess.run(
        [sys.executable, "-m", "specc", *arguments],
        cwd=folder,
        env=os.environ | {"PYTHONPATH": str(ROOT)} | environment,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )


# --- how it ends ---


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize(
    ("arguments", "status"),
    [
        (["check", "sound.garment"], 0),
        (["check", "wrong.garment"], 1),
        (["check", "sound.garment", "wrong.garment"], 1),
        (["check", "nowhere.garment"], 2),
        (["check", "wrong.garment", "nowhere.garment"], 2),
        (["check", "."], 1),
        (["check", ""], 2),
        (["check", "a\0b"], 2),
        (["check", "x" * 5000], 2),
        (["build", "wrong.garment"], 1),
        (["build", "nowhere.garment"], 2),
        (["build", "--show", "garment", "sound.garment"], 0),
        (["build", "--show", "garment", "wrong.garment"], 1),
        (["verify", "sound.garment"], 1),
        (["verify", "nowhere.pdf"], 2),
        (["verify", "."], 2),
        (["explain", "SPC201"], 0),
        (["explain", "spc201"], 0),
        (["explain", "SPC000"], 2),
        (["explain", "../../README"], 2),
    ],
)
def test_the_status_tells_how_it_ended(arguments: list[str], status: int) -> None:
    assert cli.main(arguments) == status


@pytest.mark.parametrize(
    "arguments",
    [[], ["check"], ["chekc", "x"], ["check", "--format", "xml", "x"], ["build", "--show", "x", "y"]],
)
def test_wrong_usage_is_2(arguments: list[str]) -> None:
    with pytest.raises(SystemExit) as end:
        cli.main(arguments)

    assert end.value.code == 2


def test_it_tells_its_version(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as end:
        cli.main(["--version"])

    assert end.value.code == 0
    assert capsys.readouterr().out == f"specc {specc.__version__}\n"


def failing(*_: object, **__: object) -> None:
    raise ZeroDivisionError("nobody thought of this")


@pytest.mark.usefixtures("here")
def test_a_fault_of_ours_is_70_and_the_other_files_are_still_answered(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    check_bytes: Callable[..., object] = pipeline.check_bytes

    def fails_once(name: str, *rest: object) -> object:
        if name == "sound.garment":
            failing()
        return check_bytes(name, *rest)

    monkeypatch.setattr(pipeline, "check_bytes", fails_once)
    monkeypatch.delenv("SPECC_DEBUG", raising=False)

    assert cli.main(["check", "sound.garment", "wrong.garment"]) == 70
    said = capsys.readouterr().err
    assert "error[SPC900]: a fault of specc itself: ZeroDivisionError: nobody thought of this" in said
    assert "it came up in sound.garment; the output is as it was" in said
    assert "error[SPC306]" in said
    assert "Traceback" not in said


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize("form", ["json", "sarif"])
def test_a_fault_of_ours_is_told_in_the_form_asked_for(
    form: str, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(pipeline, "check_bytes", failing)

    assert cli.main(["check", "--format", form, "sound.garment"]) == 70
    printed = capsys.readouterr()
    assert "SPC900" in printed.out
    assert json.loads(printed.out)
    assert printed.err == ""


@pytest.mark.usefixtures("here")
def test_a_fault_of_ours_shows_where_it_lies_when_asked(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(pipeline, "check_bytes", failing)
    monkeypatch.setenv("SPECC_DEBUG", "1")

    with pytest.raises(ZeroDivisionError):
        cli.main(["check", "sound.garment"])


@pytest.mark.usefixtures("here")
def test_an_interrupt_ends_it(monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupt(*_: object) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(pipeline, "check_bytes", interrupt)

    assert cli.main(["check", "sound.garment"]) == 130


# --- what it prints, and where ---


@pytest.mark.usefixtures("here")
def test_a_sound_garment_is_met_with_silence(capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["check", "sound.garment"])

    assert capsys.readouterr() == ("", "")


@pytest.mark.usefixtures("here")
def test_people_are_told_beside_the_output(capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["check", "wrong.garment"])
    printed = capsys.readouterr()

    assert printed.out == ""
    assert printed.err.startswith("error[SPC306]: the fibres of `calico` come to 90%, not 100%\n")
    assert " --> wrong.garment:19:22\n" in printed.err
    assert printed.err.endswith("1 error; specc explain SPC306 says more\n")


def test_a_place_is_called_by_the_path_that_the_user_gave(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    here.joinpath("deep").mkdir()
    shutil.copy("wrong.garment", "deep")
    cli.main(["check", "deep/wrong.garment"])

    assert " --> deep/wrong.garment:19:22\n" in capsys.readouterr().err


def test_all_that_is_wrong_with_several_files_is_told(here: Path, capsys: pytest.CaptureFixture[str]) -> None:
    here.joinpath("empty").mkdir()
    cli.main(["check", "nowhere.garment", "wrong.garment", "empty", "sound.garment"])
    said = capsys.readouterr().err

    assert "specc: cannot read nowhere.garment: No such file or directory\n" in said
    assert "specc: empty is a folder; name a .garment file\n" in said
    assert "error[SPC306]" in said


def test_a_folder_stands_for_the_garments_in_it_and_the_last_line_says_how_they_stand(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    here.joinpath("deep").mkdir()
    shutil.copy("wrong.garment", "deep")
    here.joinpath("deep", "chart.garment").write_text("chart one { sizes S }\n", encoding="utf-8")
    status = cli.main(["check", "deep", "sound.garment"])
    said = capsys.readouterr().err

    assert status == 1
    assert " --> deep/wrong.garment:19:22\n" in said
    assert "chart.garment" not in said
    assert said.endswith("2 garments checked, 1 with errors\n")


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize("files", [["sound.garment"], ["wrong.garment"], ["wrong.garment", "sound.garment"]])
def test_programs_are_told_on_the_output(files: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["check", "--format", "json", *files])
    printed = capsys.readouterr()
    told = json.loads(printed.out)

    assert printed.err == ""
    assert told["version"] == 1
    assert [each["code"] for each in told["diagnostics"]] == (["SPC306"] if "wrong.garment" in files else [])


@pytest.mark.usefixtures("here")
def test_review_sites_are_told_in_their_form(capsys: pytest.CaptureFixture[str]) -> None:
    """The schema itself is tried with the renderer; here it is the whole catalogue that goes with it."""
    cli.main(["check", "--format", "sarif", "wrong.garment"])
    (run,) = json.loads(capsys.readouterr().out)["runs"]
    rules = [rule["id"] for rule in run["tool"]["driver"]["rules"]]

    jsonschema.validate(rules, {"type": "array", "uniqueItems": True, "items": {"pattern": "^SPC[0-9]{3}$"}})
    assert rules == sorted(rules)
    assert [rules[result["ruleIndex"]] for result in run["results"]] == ["SPC306"]


@pytest.mark.usefixtures("here")
def test_a_page_is_printed_as_it_stands(capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["explain", " spc201 "])

    assert capsys.readouterr().out == ROOT.joinpath("specc/diagnostics/explain/SPC201.md").read_text(
        encoding="utf-8"
    )


def test_an_unknown_code_is_answered_with_those_that_are_near(capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["explain", "SPC2O1"])

    assert (
        capsys.readouterr().err
        == "specc: there is no code SPC2O1; did you mean `SPC201`, `SPC211` or `SPC221`?\n"
    )


@pytest.mark.usefixtures("here")
def test_every_border_can_be_shown(capsys: pytest.CaptureFixture[str]) -> None:
    for border in ("tree", "garment", "pieces", "assembly", "quantities", "document"):
        assert cli.main(["build", "--show", border, "sound.garment"]) == 0
        assert "panel" in capsys.readouterr().out
    assert not Path("build").exists()


@pytest.mark.usefixtures("here")
def test_what_was_not_reached_is_not_shown(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["build", "--show", "pieces", "wrong.garment"]) == 1
    printed = capsys.readouterr()

    assert printed.out == ""
    assert "error[SPC306]" in printed.err


class Terminal(io.StringIO):
    """A terminal, as far as anybody asks."""

    def isatty(self) -> bool:
        return True


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize(
    ("variable", "value", "coloured"),
    [("NO_COLOR", "", True), ("NO_COLOR", "1", False), ("TERM", "dumb", False)],
)
def test_a_terminal_has_colour_and_progress_unless_it_is_not_wanted(
    monkeypatch: pytest.MonkeyPatch,
    variable: str,
    value: str,
    coloured: bool,  # noqa: FBT001 a row of the table
) -> None:
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv(variable, value)
    terminal = Terminal()
    monkeypatch.setattr(sys, "stderr", terminal)

    cli.main(["check", "wrong.garment", "sound.garment"])
    said = terminal.getvalue()

    assert ("\033[1;31m" in said) is coloured
    assert ("1 of 2: wrong.garment" in said) is (value != "dumb")


@pytest.mark.usefixtures("here")
def test_there_is_no_progress_where_no_terminal_is(capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["check", "sound.garment", "sound.garment"])

    assert capsys.readouterr() == ("", "")


def test_no_name_of_a_file_steers_the_terminal(capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["check", "\033]0;mine\a.garment"])

    assert capsys.readouterr().err == (
        "specc: cannot read \\x1b]0;mine\\x07.garment: No such file or directory\n"
    )


def test_a_text_too_large_is_not_read(
    here: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    from specc import world

    monkeypatch.setattr(world, "LARGEST_FILE", 10)

    assert cli.main(["check", str(here / "sound.garment")]) == 2
    assert "more than 10 bytes" in capsys.readouterr().err


# --- what it writes ---


@pytest.mark.usefixtures("here")
def test_the_sheet_is_written_into_a_folder_of_the_style(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["build", "sound.garment", "--out", "sheets"]) == 0

    assert capsys.readouterr().out == "sheets/CV-1/sheet.pdf\n"
    assert Path("sheets/CV-1/sheet.pdf").is_file()
    assert [path.name for path in Path("sheets").iterdir()] == ["CV-1"]


@pytest.mark.usefixtures("here")
def test_a_garment_with_errors_leaves_the_old_sheet_as_it_was() -> None:
    cli.main(["build", "sound.garment"])
    before = Path("build/CV-1/result.json").read_bytes()
    shutil.copy("wrong.garment", "sound.garment")

    assert cli.main(["build", "sound.garment"]) == 1
    assert Path("build/CV-1/result.json").read_bytes() == before


def test_two_garments_of_one_style_are_not_written_over_each_other(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    here.joinpath("other.garment").write_text(SOUND.replace("CV-1", "cv-1"), encoding="utf-8")

    assert cli.main(["build", "sound.garment", "other.garment"]) == 2
    said = capsys.readouterr().err
    assert (
        "specc: other.garment and sound.garment have one style, cv-1: build them into two folders\n" in said
    )


@pytest.mark.usefixtures("here")
def test_what_cannot_be_written_is_told_and_the_others_are_still_written(
    capsys: pytest.CaptureFixture[str],
) -> None:
    Path("build").mkdir()
    Path("build/CV-1").write_bytes(b"a file")
    Path("other.garment").write_text(SOUND.replace("CV-1", "CV-2"), encoding="utf-8")

    assert cli.main(["build", "sound.garment", "other.garment"]) == 2
    printed = capsys.readouterr()
    assert printed.err == "specc: cannot write build/CV-1: it is a file, not a folder\n"
    assert printed.out == "build/CV-2/sheet.pdf\n"


@pytest.mark.usefixtures("here")
def test_a_full_disk_is_told_and_nothing_is_left_half_done(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    write_bytes = Path.write_bytes

    def full(self: Path, data: bytes) -> int:
        if self.name == "sheet.pdf":
            raise OSError(errno.ENOSPC, "No space left on device")
        return write_bytes(self, data)

    monkeypatch.setattr(Path, "write_bytes", full)

    assert cli.main(["build", "sound.garment"]) == 2
    assert capsys.readouterr().err == "specc: cannot write build/CV-1: No space left on device\n"
    assert list(Path("build").iterdir()) == []


# --- who listens ---


class Full(io.StringIO):
    """An output that can take nothing more."""

    def write(self, _text: str, /) -> int:
        raise OSError(errno.ENOSPC, "No space left on device")


@pytest.mark.usefixtures("here")
def test_an_output_that_is_full_is_told(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, "stdout", Full())

    assert cli.main(["check", "--format", "json", "wrong.garment"]) == 2
    assert capsys.readouterr().err == "specc: cannot write what there is to say: No space left on device\n"


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize("stream", ["stdout", "stderr"])
@pytest.mark.parametrize("form", ["text", "json"])
def test_an_output_that_was_closed_is_passed_over(
    stream: str, form: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(sys, stream, None)

    assert cli.main(["check", "--format", form, "wrong.garment", "sound.garment"]) == 1


@pytest.mark.skipif(sys.platform == "win32", reason="pipes end otherwise there")
def test_a_reader_who_goes_is_no_fault(here: Path) -> None:
    """As `specc check --format sarif … | head -1` in a shell that asks for the status of every part."""
    reading, writing_end = os.pipe()
    os.close(reading)
    with os.fdopen(writing_end, "wb") as gone:
        done = subprocess.run(
            [sys.executable, "-m", "specc", "check", "--format", "sarif", "wrong.garment"],
            cwd=here,
            env=os.environ | {"PYTHONPATH": str(ROOT)},
            stdout=gone,
            stderr=subprocess.PIPE,
            check=False,
        )

    assert done.returncode == 141
    assert done.stderr == b""


def test_letters_that_the_output_has_not_are_shown_by_their_numbers(here: Path) -> None:
    here.joinpath("odd.garment").write_text(
        SOUND.replace("calico {", "漢字 {").replace("100%", "90%"), encoding="utf-8"
    )
    done = started("check", "odd.garment", folder=here, PYTHONIOENCODING="ascii")

    assert done.returncode == 1
    assert "the fibres of `\\u6f22\\u5b57` come to 90%" in done.stderr


def test_programs_are_told_in_utf_8_wherever_they_run(here: Path) -> None:
    here.joinpath("odd.garment").write_text(
        SOUND.replace("calico {", "漢字 {").replace("100%", "90%"), encoding="utf-8"
    )
    done = started("check", "--format", "json", "odd.garment", folder=here, PYTHONIOENCODING="latin-1")

    assert "漢字" in json.loads(done.stdout)["diagnostics"][0]["message"]


# --- what it loads ---

PAPER = {"jinja2", "weasyprint", "fontTools", "PIL", "cssselect2", "tinycss2"}


def loaded(*arguments: str, folder: Path) -> set[str]:
    """The packages that are loaded in the end."""
    code = (
        "import sys; from specc.cli import main\n"
        f"try: main({list(arguments)!r})\n"
        "except SystemExit: pass\n"
        "print(*{name.partition('.')[0] for name in sys.modules}, *sys.modules, file=sys.stderr)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=folder,
        env=os.environ | {"PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=True,
    )
    return set(done.stderr.splitlines()[-1].split())


def test_the_command_line_alone_loads_nothing_heavy(here: Path) -> None:
    assert loaded("--version", folder=here).isdisjoint(
        PAPER | {"lark", "shapely", "numpy", "rich", "specc.pipeline"}
    )


def test_a_page_costs_no_stage(here: Path) -> None:
    assert loaded("explain", "SPC201", folder=here).isdisjoint(
        PAPER | {"lark", "shapely", "rich", "specc.pipeline"}
    )


def test_a_check_loads_no_paper_and_no_catalogue(here: Path) -> None:
    assert loaded("check", "sound.garment", folder=here).isdisjoint(PAPER | {"rich", "specc.catalog"})


def test_a_spec_with_errors_loads_no_geometry_library(here: Path) -> None:
    found = loaded("check", "wrong.garment", folder=here)

    assert found.isdisjoint(PAPER | {"shapely", "numpy", "specc.catalog", "rich.console"})


def test_the_catalogue_is_loaded_for_those_who_want_all_codes(here: Path) -> None:
    assert "specc.catalog" in loaded("check", "--format", "sarif", "wrong.garment", folder=here)


# --- lays ---


def test_lays_are_searched_and_kept_beside_the_garment_and_used(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["lay", "sound.garment", "--minutes", "0.02", "--jobs", "1"]) == 0
    told = capsys.readouterr()
    assert told.out == "sound.lay\n"
    assert "lay 1 of 3: `calico`, 1 of size S: " in told.err
    kept = json.loads(here.joinpath("sound.lay").read_text(encoding="utf-8"))
    assert [lay["of"] for lay in kept["lays"]] == [
        "`calico`, 1 of size S",
        "`calico`, 1 of size L",
        "`calico`, 1 of size S, 1 of size L",
    ]

    assert cli.main(["build", "sound.garment"]) == 0
    result = json.loads(here.joinpath("build/CV-1/result.json").read_text(encoding="utf-8"))
    assert [lay["searched"] for lay in result["lays"]["calico"]["lays"]] == [True, True]


def test_a_search_never_makes_a_kept_lay_longer(here: Path) -> None:
    kept = here / "sound.lay"
    cli.main(["lay", "sound.garment", "--minutes", "0.01", "--jobs", "1"])
    first = kept.read_bytes()
    cli.main(["lay", "sound.garment", "--minutes", "0.01", "--jobs", "2"])
    before, after = (
        {lay["key"]: lay["length"] for lay in json.loads(text)["lays"]} for text in (first, kept.read_bytes())
    )
    assert all(after[key] <= length for key, length in before.items())


def test_a_search_that_is_interrupted_keeps_what_it_has(
    here: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def interrupted(*_: object, **__: object) -> Iterator[object]:
        yield from improve(*_, **__)  # type: ignore[arg-type]
        raise KeyboardInterrupt

    monkeypatch.setattr(searching, "improve", interrupted)
    assert cli.main(["lay", "sound.garment", "--minutes", "0.01", "--jobs", "1"]) == 0
    assert "the best so far is kept" in capsys.readouterr().err
    assert len(json.loads(here.joinpath("sound.lay").read_text(encoding="utf-8"))["lays"]) == 3


@pytest.mark.parametrize(
    ("arguments", "status"),
    [
        (["wrong.garment"], 1),
        (["nowhere.garment"], 2),
        (["sound.garment", "--minutes", "0"], 2),
        (["sound.garment", "--jobs", "none"], 2),
    ],
)
def test_a_search_that_cannot_be_leaves_no_file(arguments: list[str], status: int, here: Path) -> None:
    try:
        ended = cli.main(["lay", *arguments])
    except SystemExit as end:
        ended = int(str(end.code))
    assert ended == status
    assert not list(here.glob("*.lay"))


# --- another order ---


def test_another_order_is_answered_and_nothing_is_written(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    before = sorted(here.iterdir())
    assert cli.main(["order", "sound.garment", "--sizes", "S: 2, L: 3"]) == 0
    told = capsys.readouterr().out
    assert "Order of 5" in told
    assert "3 times" in told
    assert sorted(here.iterdir()) == before


@pytest.mark.usefixtures("here")
def test_a_wider_cloth_takes_no_more_of_it(capsys: pytest.CaptureFixture[str]) -> None:
    def length(width: str) -> float:
        assert cli.main(["order", "sound.garment", "--sizes", "S: 4", "--cloth-width", width]) == 0
        (line,) = (line for line in capsys.readouterr().out.splitlines() if line.startswith("Cloth for the"))
        return float(line.split()[4])

    assert length("60 cm") >= length("calico: 110cm")
    assert length("45 in") == length("114.3 cm")


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--sizes", "M: 2"], "there is no size M; the garment has S, L"),
        (["--sizes", "S: -2"], 'cannot read "S: -2"'),
        (["--sizes", "S: 1, S: 2"], "size S is there twice"),
        (["--sizes", "S: 0"], "nothing is ordered"),
        (["--cloth-width", "wide"], 'cannot read "wide"'),
        (["--cloth-width", "0 cm"], 'cannot read "0 cm"'),
        (["--cloth-width", "90 deg"], 'cannot read "90 deg"'),
        (["--cloth-width", "1/0 in"], 'cannot read "1/0 in"'),
        (["--cloth-width", "silk: 90 cm"], "there is no cloth silk; the garment has calico"),
    ],
)
@pytest.mark.usefixtures("here")
def test_a_question_that_cannot_be_read_is_told(
    arguments: list[str], said: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert cli.main(["order", "sound.garment", *arguments]) == 2
    assert said in capsys.readouterr().err


@pytest.mark.usefixtures("here")
def test_a_width_that_does_not_do_is_an_error(capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["order", "sound.garment", "--cloth-width", "20 cm"]) == 1
    assert "SPC601" in capsys.readouterr().err


def test_a_lay_file_is_not_blamed_for_an_order_that_is_only_asked_about(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    here.joinpath("sound.lay").write_text('{"form": "lays 1", "lays": []}', encoding="utf-8")
    assert cli.main(["order", "sound.garment", "--cloth-width", "120 cm"]) == 0
    assert "SPC604" not in capsys.readouterr().err
    assert cli.main(["order", "sound.garment"]) == 0
    assert "SPC604" in capsys.readouterr().err


# --- sheets that are verified ---


def test_a_sheet_is_verified_from_nothing_but_itself_and_nothing_is_written(
    here: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    cli.main(["build", "sound.garment", "--out", "out"])
    here.joinpath("out/CV-1/sheet.pdf").rename(here / "a sheet.pdf")
    for spec in here.glob("*.garment"):
        spec.unlink()
    before = sorted(here.rglob("*"))
    capsys.readouterr()

    assert cli.main(["verify", "a sheet.pdf"]) == 0
    printed = capsys.readouterr()
    assert printed.out.startswith("a sheet.pdf is what it says: its source gives it again, byte for byte.\n")
    assert printed.err == ""
    assert sorted(here.rglob("*")) == before


@pytest.mark.usefixtures("here")
def test_a_copy_for_the_sample_room_says_why_it_cannot_be_verified(
    capsys: pytest.CaptureFixture[str],
) -> None:
    cli.main(["build", "sound.garment", "--without-prices"])

    assert cli.main(["verify", "build/CV-1/sheet.pdf"]) == 1
    assert "its source was left out on purpose" in capsys.readouterr().err
