"""What is installed works like the checkout, and the same text gives the same bytes anywhere, at any time."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
import zipfile
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from pathlib import Path

EXAMPLE = "estuary-shell.garment"


def run(*arguments: str | Path, folder: Path, **environment: str) -> str:
    """What `python ...` prints when it is run in `folder`; a failure shows what it said."""
    inherited = {name: value for name, value in os.environ.items() if name != "SOURCE_DATE_EPOCH"}
    done = subprocess.run(
        [sys.executable, *map(str, arguments)],
        cwd=folder,
        env=inherited | environment,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


def contents(folder: Path) -> dict[str, bytes]:
    """Every file under `folder` by its path there."""
    return {
        str(path.relative_to(folder)): path.read_bytes()
        for path in sorted(folder.rglob("*"))
        if path.is_file()
    }


def copied(root: Path, folder: Path) -> Path:
    """`folder`, made, with the example in it."""
    folder.mkdir(parents=True)
    shutil.copy(root / "examples/estuary-shell" / EXAMPLE, folder)
    return folder


@pytest.fixture(scope="module")
def built(root: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, bytes]:
    """What the checkout makes of the example."""
    folder = copied(root, tmp_path_factory.mktemp("checkout") / "work")
    run("-m", "specc", "build", EXAMPLE, "--out", "out", folder=folder, PYTHONPATH=str(root))
    return contents(folder / "out")


@pytest.fixture(scope="module")
def wheel(root: Path, tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("wheel")
    run("-m", "build", "--wheel", "--no-isolation", "--outdir", folder, root, folder=folder, PIP_NO_INDEX="1")
    (made,) = folder.glob("specc-*.whl")
    return made


def test_the_wheel_carries_grammar_templates_pages_and_library(wheel: Path, root: Path) -> None:
    with zipfile.ZipFile(wheel) as archive:
        carried = set(archive.namelist())
    wanted = {
        f"specc/{place}/{path.relative_to(root / name)}"
        for name, place in (("grammar", "_grammar"), ("templates", "_templates"))
        for path in root.joinpath(name).rglob("*")
        if path.is_file()
    } | {
        str(path.relative_to(root))
        for ending in ("*.py", "*.md", "*.garment", "*.json", "*.toml", "py.typed")
        for path in root.joinpath("specc").rglob(ending)
    }

    assert wanted <= carried
    assert not any(name.startswith(("tests/", "examples/")) for name in carried)


def test_the_wheel_installed_elsewhere_makes_the_same_files(
    wheel: Path, root: Path, built: dict[str, bytes], tmp_path: Path
) -> None:
    """Its dependencies are those of the running Python; specc itself comes from the wheel alone."""
    site = tmp_path / "site"
    run("-m", "pip", "install", "--no-index", "--no-deps", "--target", site, wheel, folder=tmp_path)
    folder = copied(root, tmp_path / "elsewhere")
    found = run("-c", "import specc; print(specc.__file__)", folder=folder, PYTHONPATH=str(site))
    run("-m", "specc", "build", EXAMPLE, "--out", "out", folder=folder, PYTHONPATH=str(site))

    assert found.strip() == str(site / "specc/__init__.py")
    assert contents(folder / "out") == built


@pytest.mark.parametrize(
    ("seed", "zone", "locale"), [("1", "Pacific/Auckland", "C"), ("4242", "America/St_Johns", "tr_TR.UTF-8")]
)
def test_neither_hash_seed_nor_clock_zone_nor_locale_nor_folder_changes_a_byte(
    root: Path, built: dict[str, bytes], tmp_path: Path, seed: str, zone: str, locale: str
) -> None:
    folder = copied(root, tmp_path / "a folder" / f"seed {seed}")
    run(
        *("-m", "specc", "build", folder / EXAMPLE, "--out", tmp_path / "out"),
        folder=tmp_path,
        PYTHONPATH=str(root),
        PYTHONHASHSEED=seed,
        TZ=zone,
        LC_ALL=locale,
        LANG=locale,
    )

    assert contents(tmp_path / "out") == built


def test_no_output_holds_a_path_of_this_machine(
    built: dict[str, bytes], root: Path, tmp_path_factory: pytest.TempPathFactory
) -> None:
    places = (str(root).encode(), str(tmp_path_factory.getbasetemp()).encode())

    assert built
    assert [name for name, data in built.items() if any(place in data for place in places)] == []
