"""The parser's tables are kept beside the compiled modules, and never needed there."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

from specc.syntax import tables, wording
from specc.syntax.stack import Stack

if TYPE_CHECKING:
    from pathlib import Path

READ = """
import sys
from specc.source import SourceFile
from specc.syntax import parse
assert "lark" not in sys.modules
tree, said = parse(SourceFile("test.garment", "measure m = 2 * (a - 3 cm)"))
print(len(tree.declarations), len(said), "lark.load_grammar" in sys.modules)
"""


@pytest.fixture
def installed(root: Path, tmp_path: Path) -> Path:
    """A copy of the program without anything that an earlier run has kept."""
    unkept = shutil.ignore_patterns("__pycache__")
    for name in ("specc", "grammar"):
        shutil.copytree(root / name, tmp_path / name, ignore=unkept)
    return tmp_path


def run(folder: Path, *options: str) -> str:
    command = [sys.executable, *options, "-c", READ]
    environment = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    done = subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, check=False)
    assert done.stderr == ""
    return done.stdout.strip()


def kept(folder: Path) -> list[Path]:
    return sorted(folder.glob("specc/syntax/__pycache__/*.pickle"))


def test_tables_are_kept_and_used_again(installed: Path) -> None:
    first = run(installed)
    (tables_kept,) = kept(installed)
    written = tables_kept.stat().st_mtime_ns

    assert run(installed) == first
    assert kept(installed) == [tables_kept]
    assert tables_kept.stat().st_mtime_ns == written


def test_a_changed_grammar_makes_new_tables_and_takes_the_old_ones_away(installed: Path) -> None:
    run(installed)
    before = kept(installed)
    grammar = installed / "grammar/specc.lark"
    grammar.write_text(grammar.read_text(encoding="utf-8").replace('"measure"', '"gauge"'), encoding="utf-8")

    assert run(installed).startswith("1 1")
    assert len(kept(installed)) == 1
    assert kept(installed) != before


def test_tables_that_cannot_be_read_are_made_anew(installed: Path) -> None:
    run(installed)
    kept(installed)[0].write_bytes(b"no pickle")

    assert run(installed).startswith("1 0")


def test_where_nothing_can_be_kept_reading_works_all_the_same(installed: Path) -> None:
    folder = installed / "specc/syntax/__pycache__"
    folder.write_text("a file where the folder would be", encoding="utf-8")

    assert run(installed).startswith("1 0")


def test_nothing_is_kept_when_python_is_told_so(installed: Path) -> None:
    assert run(installed, "-B").startswith("1 0")
    assert kept(installed) == []


def after(*kinds: str) -> frozenset[str]:
    """What could follow tokens of these kinds."""
    stack = Stack()
    return frozenset(
        terminal.name for terminal in tables.parser().terminals if stack.fits(*kinds, terminal.name)
    )


def test_what_a_value_begins_with_is_what_the_grammar_says() -> None:
    assert wording.value_kinds() == after("EXPECT") - {"WITHIN"}


HEADS = {
    "the body of `alter`": ("ALTER", "LBRACE"),
    "the body of a `piece`": ("BLOCK", "NAME", "LBRACE", "PIECE", "NAME", "LBRACE"),
    "the body of an `edge`": (
        "BLOCK", "NAME", "LBRACE", "PIECE", "NAME", "LBRACE", "EDGE", "NAME", "FROM", "NAME", "LBRACE",
    ),
    "the body of a `block`": ("BLOCK", "NAME", "LBRACE"),
    "the body of a `method`": ("METHOD", "NAME", "MAKES", "SEAM", "LBRACE"),
    "the body of a `chart`": ("CHART", "NAME", "LBRACE"),
    "the braces behind a method's or a block's name": ("USE", "BLOCK", "NAME", "LBRACE"),
    "the outermost level of a file": (),
}  # fmt: skip


def test_where_words_stand_is_what_the_grammar_says() -> None:
    """`line`, `let` and others begin lines in several bodies and are wanted in each: nobody is told."""
    keywords = wording.keywords()
    told = {place: set(words) for place, words in wording.PLACES.items()}
    found: dict[str, set[str]] = {}
    for place, kinds in HEADS.items():
        fitting = after(*kinds)
        for word, kind in keywords.items():
            if kind in fitting:
                found.setdefault(word, set()).add(place)

    for place, words in told.items():
        for word in words:
            assert found[word] == set(split(place)), word
    assert found.keys() - set().union(*told.values()) == {"line", "let", "piece", "cut", "allowance"}


def split(place: str) -> list[str]:
    """`the body of a block or a piece` are two places."""
    if " or a `" not in place:
        return [place]
    first, second = place.removeprefix("the body of a ").split(" or a ")
    return [f"the body of a {first}", f"the body of a {second}"]
