"""Finding the texts of a garment: which files are read, which are refused, and why."""

from __future__ import annotations

import os
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc import world
from specc.gather import MOST_FILES, Refused, gather, read
from specc.source import SourceFile
from specc.world import Folder
from tests.worlds import Texts, garment_of, told

if TYPE_CHECKING:
    from specc.diagnostics import Diagnostic
    from specc.resolve import Gathered

CLOTH = "cloth {} {{ fibre 100% cotton }}\n"


def gathered(
    text: str, files: dict[str, str | bytes] | None = None, *, name: str = "spec.garment"
) -> tuple[Gathered, tuple[Diagnostic, ...]]:
    return gather(SourceFile(name, text), Texts(files or {}))


def names(found: Gathered) -> list[str]:
    return [file.file.name for file in found.used]


def answers(said: tuple[Diagnostic, ...]) -> list[tuple[str, str]]:
    return [(each.code.id, each.span.text if each.span else "") for each in said]


# --- files of the project ---


def test_files_stand_behind_those_that_they_use_each_once() -> None:
    files: dict[str, str | bytes] = {
        "a.garment": 'use "deep/b.garment"\nuse "c.garment"\n',
        "c.garment": "",
        "deep/b.garment": 'use "d.garment"\nuse "../c.garment"\n',
        "deep/d.garment": "",
    }
    found, said = gathered('use "a.garment"\nuse "./deep/../c.garment"\n', files)

    assert said == ()
    assert names(found) == ["deep/d.garment", "c.garment", "deep/b.garment", "a.garment"]
    assert found.complete


def test_a_circle_of_uses_does_no_harm() -> None:
    files: dict[str, str | bytes] = {
        "a.garment": 'use "b.garment"\n' + CLOTH.format("one"),
        "b.garment": 'use "a.garment"\nuse "spec.garment"\n' + CLOTH.format("two"),
        "spec.garment": "not read again",
    }
    found, said = gathered('use "a.garment"\nuse "spec.garment"\n', files)

    assert said == ()
    assert names(found) == ["b.garment", "a.garment"]
    assert len(found.own) == 7


@pytest.mark.parametrize(
    ("path", "code", "message"),
    [
        ("nope.garment", "SPC224", "there is no file `nope.garment`"),
        ("../x.garment", "SPC225", "`../x.garment` lies outside the project folder"),
        ("deep/../../x.garment", "SPC225", "`deep/../../x.garment` lies outside the project folder"),
        ("/etc/passwd", "SPC225", "`/etc/passwd` lies outside the project folder"),
        ("C:/x.garment", "SPC225", "`C:/x.garment` lies outside the project folder"),
        (
            "https://example.org/x.garment",
            "SPC225",
            "`https://example.org/x.garment` lies outside the project folder",
        ),
        ("deep", "SPC226", "`deep` cannot be read: it is a folder"),
        ("", "SPC207", '`use` takes the path of a file, not `""`'),
        (" ", "SPC207", '`use` takes the path of a file, not `" "`'),
    ],
)
def test_a_file_that_is_not_to_be_had_is_told_with_the_reason(path: str, code: str, message: str) -> None:
    found, said = gathered(f'use "{path}"\n', {"deep/b.garment": ""})

    (answer,) = said
    assert (answer.code.id, answer.message) == (code, message)
    assert answer.helps or code == "SPC207"
    assert not found.complete


@pytest.mark.parametrize(
    ("path", "cure"),
    [
        ("trms.garment", "did you mean `trims.garment`?"),
        ("trims", "did you mean `trims.garment`?"),
        ("shared/cloth.garment", "did you mean `shared/cloths.garment`?"),
        ("shared\\\\cloths.garment", 'folders end in `/`: `use "shared/cloths.garment"`'),
        ("x.garment", "write the path from the file that uses it, with its ending: `cloths.garment`"),
    ],
)
def test_a_file_that_is_not_there_is_told_with_a_cure(path: str, cure: str) -> None:
    _, said = gathered(f'use "{path}"\n', {"trims.garment": "", "shared/cloths.garment": ""})

    assert [each.helps for each in said] == [(cure,)]


def test_a_path_is_that_from_the_file_which_uses_it() -> None:
    _, said = gathered('use "deep/a.garment"\n', {"deep/a.garment": 'use "b.garment"\n', "b.garment": ""})

    (answer,) = said
    assert answer.span is not None
    assert answer.span.file.name == "deep/a.garment"
    assert answer.notes == ("looked for as `deep/b.garment` in the project folder",)


def test_there_is_an_end_to_how_many_files_are_read() -> None:
    files: dict[str, str | bytes] = {f"f{number}.garment": "" for number in range(MOST_FILES + 10)}
    found, said = gathered("".join(f'use "{name}"\n' for name in files), files)

    assert len(found.used) == MOST_FILES
    assert answers(said) == [("SPC211", f'"f{MOST_FILES}.garment"')]
    assert not found.complete


def test_a_file_that_is_not_utf_8_is_told_once_and_not_read() -> None:
    text = b"cloth caf\xe9 { fibre 100% cotton }\ncloth lawn { fibre 100% cotton }\n"
    found, said = gathered('use "a.garment"\n', {"a.garment": text})

    assert [each.code.id for each in said] == ["SPC109"]
    assert names(found) == []
    assert not found.complete


def test_another_encoding_is_called_by_its_name() -> None:
    _, said = read("a.garment", "cloth".encode("utf-16"))

    assert said[0].helps == ("it looks like UTF-16; save the file as UTF-8",)


def test_what_is_wrong_in_a_file_that_is_used_is_told_in_its_place() -> None:
    found = told(
        'use "a.garment"\nuse chart misses\nuse block sheath\ngarment g { }\n',
        {"a.garment": "cloth lawn { fibre 90% cotton }\n"},
    )

    assert found == [("SPC306", "90% cotton")]


# --- the library ---


def library(text: str) -> list[str]:
    return [file.file.name for file in gathered(text)[0].library]


def test_only_what_is_spoken_of_is_read_from_the_library() -> None:
    text = "use chart misses\nuse block sheath\n"

    assert library(text) == ["library/misses.garment", "library/sheath.garment"]
    assert library(text + "hem h along a.b by raw\n") == [
        "library/hems.garment",
        "library/misses.garment",
        "library/sheath.garment",
    ]


def test_what_the_text_declares_itself_is_not_read() -> None:
    own = "block mine { }\nmethod m makes hem { allowance 0 }\n"
    text = f"use chart misses\nuse block mine\nhem h along a.b by m\n{own}"

    assert library(text) == ["library/misses.garment"]


def test_where_a_name_is_not_known_all_that_there_is_can_be_named() -> None:
    every = [f"library/{name}.garment" for name in Texts().library_names()]

    assert sorted(library("use chart mises\nuse block sheath\n")) == sorted(every)
    assert sorted(library("use block sheath\n")) == sorted(every)


# --- the folder on disk ---


def test_a_folder_gives_the_bytes_of_its_files(tmp_path: Path) -> None:
    tmp_path.joinpath("deep").mkdir()
    tmp_path.joinpath("deep", "a.garment").write_bytes(b"cloth")

    assert Folder(tmp_path).project("deep/a.garment") == b"cloth"
    assert Folder(tmp_path).project_names("deep", ".garment") == ("a.garment",)
    assert Folder(tmp_path).project_names("nowhere", ".garment") == ()


def test_a_folder_gives_nothing_from_outside(tmp_path: Path) -> None:
    inside = tmp_path / "inside"
    inside.mkdir()
    tmp_path.joinpath("secret").write_text("secret", encoding="utf-8")
    inside.joinpath("link.garment").symlink_to(tmp_path / "secret")
    inside.joinpath("up").symlink_to(tmp_path)

    for path in ("link.garment", "up/secret", "../secret", str(tmp_path / "secret")):
        assert Folder(inside).project(path) is Refused.OUTSIDE
    assert Folder(inside).project_names("..", ".garment") == ()
    assert Folder(inside).project_names("up", ".garment") == ()


def test_a_link_within_the_folder_is_followed(tmp_path: Path) -> None:
    tmp_path.joinpath("a.garment").write_bytes(b"cloth")
    tmp_path.joinpath("b.garment").symlink_to("a.garment")

    assert Folder(tmp_path).project("b.garment") == b"cloth"


def test_a_project_folder_may_itself_be_a_link(tmp_path: Path) -> None:
    tmp_path.joinpath("real").mkdir()
    tmp_path.joinpath("real", "a.garment").write_bytes(b"cloth")
    tmp_path.joinpath("alias").symlink_to("real")

    assert Folder(tmp_path / "alias").project("a.garment") == b"cloth"


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="this system has no named pipes")
def test_what_is_no_plain_file_is_refused_and_never_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.garment")
    tmp_path.joinpath("folder.garment").mkdir()
    tmp_path.joinpath("nowhere.garment").symlink_to("gone")
    tmp_path.joinpath("circle.garment").symlink_to("circle.garment")

    assert Folder(tmp_path).project("pipe.garment") is Refused.NO_FILE
    assert Folder(tmp_path).project("folder.garment") is Refused.FOLDER
    assert Folder(tmp_path).project("nowhere.garment") is Refused.MISSING
    assert Folder(tmp_path).project("circle.garment") is Refused.MISSING
    assert Folder(tmp_path).project("a" * 5000) is Refused.MISSING
    assert Folder(tmp_path).project("a\0b") is Refused.MISSING


def test_a_file_too_large_for_a_text_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(world, "LARGEST_FILE", 4)
    tmp_path.joinpath("fits.garment").write_bytes(b"abcd")
    tmp_path.joinpath("large.garment").write_bytes(b"abcde")

    assert Folder(tmp_path).project("fits.garment") == b"abcd"
    assert Folder(tmp_path).project("large.garment") is Refused.TOO_LARGE


def test_a_file_that_may_not_be_read_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    tmp_path.joinpath("a.garment").write_bytes(b"cloth")

    def forbid(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr(Path, "open", forbid)

    assert Folder(tmp_path).project("a.garment") is Refused.FORBIDDEN


@pytest.mark.parametrize(("root", "called"), [(".", ""), ("deep", "deep/"), ("../up", "../up/"), ("/", "/")])
def test_paths_are_shown_as_the_user_called_the_folder(root: str, called: str) -> None:
    assert Folder(Path(root)).called == called


PAPER = """garment strap "Strap" { style "ST"; sizes S, M; units mm }
cloth web { fibre 100% cotton; width 150 cm }
use "paper/pieces.garment"
"""
PIECE = """piece strap "strap" {
  outline from "svg/strap.svg", 1 unit is 1 mm
  point a near 0 mm, 0 mm on "whole"
  edge all from a { along "whole" to a }
}
"""
STRAP = '<svg xmlns="http://www.w3.org/2000/svg"><path id="whole" d="M 0 0 H 90 V 30 H 0 Z"/></svg>'


def test_a_drawing_lies_beside_the_file_that_names_it_and_is_among_the_sources() -> None:
    files = {"paper/pieces.garment": PIECE, "paper/svg/strap.svg": STRAP}

    garment = garment_of(PAPER, files)

    assert [file.name for file in garment.sources] == [
        "spec.garment",
        "paper/pieces.garment",
        "paper/svg/strap.svg",
    ]


def test_a_drawing_is_read_once_however_many_pieces_are_taken_from_it() -> None:
    asked: list[str] = []

    class Counting(Texts):
        def project(self, path: str) -> bytes | Refused:
            asked.append(path)
            return super().project(path)

    text = (
        PAPER.replace('use "paper/pieces.garment"\n', "") + PIECE + PIECE.replace("piece strap", "piece more")
    )
    found, said = gather(SourceFile("spec.garment", text), Counting({"svg/strap.svg": STRAP}))

    assert said == ()
    assert asked == ["svg/strap.svg"]
    assert len(found.drawings) == 2


def test_what_a_drawing_lacks_is_told_once_and_nothing_that_follows_from_it() -> None:
    assert told(PAPER, {"paper/pieces.garment": PIECE}) == [("SPC224", '"svg/strap.svg"')]
    assert told(PAPER, {"paper/pieces.garment": PIECE, "paper/svg/strap.svg": "<html/>"}) == [
        ("SPC230", "<html/>")
    ]
