"""Every code is declared once, gathered, explained, and provoked by a file."""

from __future__ import annotations

import ast
import re
from collections import Counter
from typing import TYPE_CHECKING

import pytest

from specc import catalog
from specc.diagnostics import explained, explanation

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path

    from specc.diagnostics import Code

IDS = [code.id for code in catalog.CODES]


def declared(root: Path) -> Iterator[str]:
    """The ids in every call of `declare` in the tree, gathered or not."""
    for path in sorted(root.joinpath("specc").rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "declare":
                assert isinstance(node.args[0], ast.Constant), f"{path}: an id is written out"
                yield str(node.args[0].value)


def test_every_declared_code_is_gathered_and_no_id_is_declared_twice(root: Path) -> None:
    ids = Counter(declared(root))

    assert [code for code, count in ids.items() if count > 1] == []
    assert sorted(ids) == IDS


def test_no_two_codes_share_a_name() -> None:
    names = Counter(code.name for code in catalog.CODES)

    assert [name for name, count in names.items() if count > 1] == []


def test_every_code_has_a_page_and_every_page_a_code() -> None:
    assert list(explained()) == IDS


@pytest.mark.parametrize("code", catalog.CODES, ids=IDS)
def test_a_page_is_headed_by_the_id_and_the_name_of_its_code(code: Code) -> None:
    page = explanation(code.id)

    assert page is not None
    assert page.splitlines()[0] == f"# {code.id}: {code.name}"


def test_every_code_that_a_text_can_provoke_has_a_file_that_does(root: Path) -> None:
    cases = {path.stem[:6] for path in root.joinpath("tests/errors").glob("*.garment")}
    # Our own faults have no text, and what is wrong with a PDF is provoked in tests/unit/verifying.
    wanted = {code for code in IDS if not code.startswith(("SPC9", "SPC63"))}

    assert cases == wanted


@pytest.mark.parametrize("code", catalog.CODES, ids=IDS)
def test_messages_are_worded_as_agreed(code: Code) -> None:
    """DEVELOPERS.md, wording card: lower case, no full stop, none of the words that blame or say nothing."""
    words = re.sub(r"`[^`]*`|\{[^}]*\}", "", code.message)

    assert not code.message.endswith(".")
    assert not words[:1].isupper()
    assert not re.search(r"\b(illegal|invalid|unexpected error|please)\b", words, re.IGNORECASE)
