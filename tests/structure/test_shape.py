"""The shape of the repository: what stands where, how large a module may be, who may print."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parent.parent.parent
MODULES = sorted(ROOT.joinpath("specc").rglob("*.py"))
NAMES = [str(path.relative_to(ROOT)) for path in MODULES]

TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "specc", "grammar", "templates", "tests", "examples"}
MADE = {"build", "dist"}  # by the program and by packaging; .gitignore names them
LONGEST = 400


def test_the_top_level_holds_what_was_agreed_and_nothing_else() -> None:
    found = {path.name for path in ROOT.iterdir() if not path.name.startswith(".")}

    assert found - MADE == TOP


@pytest.mark.parametrize("path", MODULES, ids=NAMES)
def test_a_module_is_short_and_says_what_it_owns(path: Path) -> None:
    text = path.read_text(encoding="utf-8")

    assert len(text.splitlines()) <= LONGEST
    assert ast.get_docstring(ast.parse(text))


@pytest.mark.parametrize("path", MODULES, ids=NAMES)
def test_only_the_command_line_prints(path: Path) -> None:
    calls = [
        node.func
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call)
    ]
    prints = [func for func in calls if isinstance(func, ast.Name) and func.id == "print"]

    assert not prints or path == ROOT / "specc/cli/console.py"


@pytest.mark.parametrize("path", MODULES, ids=NAMES)
def test_no_module_is_a_box_for_odds_and_ends(path: Path) -> None:
    assert path.stem.strip("_") not in {
        "utils",
        "util",
        "helpers",
        "helper",
        "common",
        "misc",
        "manager",
        "base",
    }


def test_golden_files_are_small_enough_to_be_read() -> None:
    golden = ROOT / "tests/golden"
    too_large = [str(path) for path in golden.rglob("*") if path.is_file() and path.stat().st_size > 20_000]

    assert too_large == []
