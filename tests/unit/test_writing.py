"""Output is written whole or not at all, and what is not ours is left alone."""

from __future__ import annotations

import errno
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specc.backends.output import OutputFile
from specc.writing import LIST, OutputError, folder_name, write_all

OLD = (OutputFile("sheet.pdf", b"old"), OutputFile("drawings/back.svg", b"old back"))
NEW = (OutputFile("sheet.pdf", b"new"), OutputFile("drawings/front.svg", b"new front"))


def contents(folder: Path) -> dict[str, bytes]:
    """Every file under a folder but the list of ours."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file() and path.name != LIST
    }


def as_dict(files: tuple[OutputFile, ...]) -> dict[str, bytes]:
    return {file.path: file.data for file in files}


def test_the_folder_holds_the_files(tmp_path: Path) -> None:
    write_all(tmp_path / "deep" / "ES-07", OLD)

    assert contents(tmp_path / "deep" / "ES-07") == as_dict(OLD)
    assert [path.name for path in tmp_path.joinpath("deep").iterdir()] == ["ES-07"]


def test_what_is_no_longer_written_goes(tmp_path: Path) -> None:
    write_all(tmp_path / "ES-07", OLD)
    write_all(tmp_path / "ES-07", NEW)

    assert contents(tmp_path / "ES-07") == as_dict(NEW)
    assert tmp_path.joinpath("ES-07", LIST).read_text(encoding="utf-8") == "drawings/front.svg\nsheet.pdf\n"


def test_what_somebody_else_put_there_stays(tmp_path: Path) -> None:
    folder = tmp_path / "ES-07"
    write_all(folder, OLD)
    folder.joinpath("remarks.txt").write_bytes(b"mine")
    folder.joinpath("drawings", "sketch.svg").write_bytes(b"mine too")
    folder.joinpath("photographs", "first").mkdir(parents=True)
    folder.joinpath("link").symlink_to("remarks.txt")
    folder.joinpath("away").symlink_to(tmp_path)

    write_all(folder, NEW)

    mine = {"remarks.txt": b"mine", "drawings/sketch.svg": b"mine too", "link": b"mine"}
    assert contents(folder) == as_dict(NEW) | mine
    assert folder.joinpath("photographs", "first").is_dir()
    assert folder.joinpath("link").is_symlink()
    assert folder.joinpath("away").is_symlink()


def test_a_file_that_is_not_ours_is_never_written_over(tmp_path: Path) -> None:
    folder = tmp_path / "specc"
    folder.mkdir()
    folder.joinpath("sheet.pdf").write_bytes(b"a thesis")

    with pytest.raises(OutputError, match=r"its sheet\.pdf is not of our making; move it away"):
        write_all(folder, NEW)

    assert contents(folder) == {"sheet.pdf": b"a thesis"}


def test_a_file_where_a_folder_of_ours_must_stand_is_never_written_over(tmp_path: Path) -> None:
    folder = tmp_path / "specc"
    folder.mkdir()
    folder.joinpath("drawings").write_bytes(b"a file")

    with pytest.raises(OutputError, match="its drawings is not of our making"):
        write_all(folder, NEW)

    assert contents(folder) == {"drawings": b"a file"}


def test_a_file_in_the_place_of_the_folder_is_never_written_over(tmp_path: Path) -> None:
    tmp_path.joinpath("ES-07").write_bytes(b"a file")

    with pytest.raises(OutputError, match="it is a file, not a folder"):
        write_all(tmp_path / "ES-07", NEW)

    assert tmp_path.joinpath("ES-07").read_bytes() == b"a file"


def test_a_folder_below_a_file_cannot_be_written(tmp_path: Path) -> None:
    tmp_path.joinpath("build").write_bytes(b"a file")

    with pytest.raises(OutputError, match="cannot write"):
        write_all(tmp_path / "build" / "ES-07", NEW)


@pytest.mark.parametrize("fault", [errno.ENOSPC, errno.EDQUOT, errno.EACCES, errno.EROFS])
def test_a_disk_that_refuses_leaves_the_old_folder_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: int
) -> None:
    write_all(tmp_path / "ES-07", OLD)
    write_bytes = Path.write_bytes

    def refuse(self: Path, data: bytes) -> int:
        if "drawings" in self.parts:
            raise OSError(fault, "refused")
        return write_bytes(self, data)

    monkeypatch.setattr(Path, "write_bytes", refuse)

    with pytest.raises(OutputError, match="refused"):
        write_all(tmp_path / "ES-07", NEW)

    assert contents(tmp_path / "ES-07") == as_dict(OLD)
    assert [path.name for path in tmp_path.iterdir()] == ["ES-07"]


@pytest.mark.parametrize("fault", [OSError(errno.EACCES, "refused"), KeyboardInterrupt()])
def test_an_exchange_that_is_cut_short_puts_the_old_folder_back(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fault: BaseException
) -> None:
    write_all(tmp_path / "ES-07", OLD)
    rename = Path.rename

    def cut_short(self: Path, target: Path) -> Path:
        if self.name == "new":
            raise fault
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", cut_short)

    with pytest.raises((OutputError, KeyboardInterrupt)):
        write_all(tmp_path / "ES-07", NEW)

    assert contents(tmp_path / "ES-07") == as_dict(OLD)
    assert [path.name for path in tmp_path.iterdir()] == ["ES-07"]


def test_what_a_killed_run_had_put_aside_is_put_back_by_the_next(tmp_path: Path) -> None:
    """Between the two renames the folder is nowhere but beside: a kill there loses nothing."""
    folder = tmp_path / "ES-07"
    write_all(folder, OLD)
    folder.joinpath("remarks.txt").write_bytes(b"mine")
    aside = tmp_path / ".ES-07-k1ll3d"
    aside.mkdir()
    folder.rename(aside / "old")

    write_all(folder, NEW)

    assert contents(folder) == as_dict(NEW) | {"remarks.txt": b"mine"}
    assert [path.name for path in tmp_path.iterdir()] == ["ES-07"]


def test_files_that_cannot_be_made_change_nothing(tmp_path: Path) -> None:
    """The files are made one after the other, and the last may fail."""
    write_all(tmp_path / "ES-07", OLD)

    def failing() -> object:
        yield NEW[0]
        raise RuntimeError("a fault in a backend")

    with pytest.raises(RuntimeError):
        write_all(tmp_path / "ES-07", failing())  # type: ignore[arg-type]

    assert contents(tmp_path / "ES-07") == as_dict(OLD)
    assert [path.name for path in tmp_path.iterdir()] == ["ES-07"]


def test_a_folder_that_is_a_link_stays_one(tmp_path: Path) -> None:
    tmp_path.joinpath("elsewhere").mkdir()
    tmp_path.joinpath("ES-07").symlink_to("elsewhere")

    write_all(tmp_path / "ES-07", NEW)

    assert tmp_path.joinpath("ES-07").is_symlink()
    assert contents(tmp_path / "elsewhere") == as_dict(NEW)


def test_others_may_read_what_was_written(tmp_path: Path) -> None:
    """The scratch folder is private, what takes its place is not."""
    tmp_path.joinpath("plain").mkdir()
    write_all(tmp_path / "ES-07", NEW)

    assert tmp_path.joinpath("ES-07").stat().st_mode == tmp_path.joinpath("plain").stat().st_mode


# --- names of folders ---


@pytest.mark.parametrize(
    ("style", "name"),
    [
        ("ES-07", "ES-07"),
        ("Été 07", "Été-07"),
        ("..", "garment"),
        (".", "garment"),
        ("", "garment"),
        ("   ", "garment"),
        ("../../etc", "etc"),
        ("/", "garment"),
        ("/etc/passwd", "etc-passwd"),
        ("a/b\\c:d", "a-b-c-d"),
        (".hidden", "hidden"),
        ("<script>alert(1)</script>", "script-alert-1---script"),
        ("con", "con_"),
        ("NUL.txt", "NUL.txt_"),
        ("Com1", "Com1_"),
        ("console", "console"),
        ("x\0y\ny", "x-y-y"),
        ("E\u0301te\u0301", "Été"),
        ("漢字", "漢字"),
    ],
)
def test_a_style_becomes_the_name_of_a_folder(style: str, name: str) -> None:
    assert folder_name(style) == name


@given(st.text())
def test_no_style_leads_anywhere_else(style: str) -> None:
    name = folder_name(style)

    assert Path(name).name == name
    assert name not in {"", ".", ".."}
    assert not name.startswith((".", "-"))
    assert len(name.encode()) <= 104
    assert name.isprintable()
