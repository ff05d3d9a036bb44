"""Explicit lists are the tables of contents of their folders: what has a file has a row."""

from __future__ import annotations

import ast
from pathlib import Path

from specc.alteration import VERBS
from specc.document.build import PAGES
from specc.rules import RULES

SPECC = Path(__file__).resolve().parent.parent.parent / "specc"


def defining(folder: str, function: str) -> set[str]:
    """The modules of `folder` that define `function`."""
    return {
        f"specc.{folder.replace('/', '.')}.{path.stem}"
        for path in SPECC.joinpath(folder).glob("*.py")
        for node in ast.parse(path.read_text(encoding="utf-8")).body
        if isinstance(node, ast.FunctionDef) and node.name == function
    }


def test_every_rule_has_a_row() -> None:
    modules = [rule.__module__ for rule in RULES]

    assert sorted(modules) == sorted(defining("rules", "check"))


def test_every_verb_of_alteration_has_a_row() -> None:
    modules = [apply.__module__ for _, apply in VERBS]

    assert sorted(modules) == sorted(defining("alteration", "apply"))


def test_every_page_has_a_row() -> None:
    assert sorted(page.__name__ for page in PAGES) == sorted(defining("document/pages", "build"))
