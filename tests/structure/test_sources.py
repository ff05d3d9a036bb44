"""The table of what is checked against what, in tests/outside/README.md, is that of the tests themselves."""

from __future__ import annotations

from importlib import import_module
from pathlib import Path
from typing import TYPE_CHECKING

from tests.sources import Known

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from types import ModuleType

    from tests.goldens import Golden

FOLDER = Path(__file__).resolve().parent.parent / "outside"
MODULES = tuple(import_module(f"tests.outside.{path.stem}") for path in sorted(FOLDER.glob("test_*.py")))
HEAD = """# What is checked against what

Written from the tests of this folder by `pytest --update -k table_of_sources`; each says above itself what it
is held against (`tests/sources.py`). Where sources disagree there is a row for each.

| how it is known | rows |
| --- | --- |
"""


def checks_of(module: ModuleType) -> Iterator[Callable[..., object]]:
    """The tests of a module in the order in which they stand there."""
    for name, thing in vars(module).items():
        if name.startswith("test_") and getattr(thing, "__module__", "") == module.__name__:
            yield thing


def held_against(test: Callable[..., object]) -> tuple[tuple[Known, str, str], ...]:
    """What a test is held against, as it reads from the top."""
    marks = [mark.args for mark in getattr(test, "pytestmark", ()) if mark.name == "against"]
    return tuple(reversed(marks))


def rows(module: ModuleType) -> Iterator[str]:
    for test in checks_of(module):
        words = test.__name__.removeprefix("test_").replace("_", " ")
        for known, source, figures in held_against(test):
            yield f"| {words} | {': '.join(filter(None, (source, figures)))} | {known} |"


def table() -> str:
    found = [known for module in MODULES for test in checks_of(module) for known, _, _ in held_against(test)]
    lines = [HEAD + "\n".join(f"| {known} | {found.count(known)} |" for known in Known)]
    for module in MODULES:
        title = (module.__doc__ or "").split("\n")[0].rstrip(".")
        lines += [
            "",
            f"## {title}",
            "",
            "| what holds | held against | known |",
            "| --- | --- | --- |",
            *rows(module),
        ]
    return "\n".join(lines) + "\n"


def test_every_outside_check_says_what_it_is_held_against() -> None:
    """Write `@against(Known.READ, "the source, its edition", "its figures")` above it."""
    silent = [
        f"{module.__name__}.{test.__name__}"
        for module in MODULES
        for test in checks_of(module)
        if not held_against(test)
    ]

    assert silent == []


def test_only_common_practice_has_no_source_to_name() -> None:
    nameless = [
        test.__name__
        for module in MODULES
        for test in checks_of(module)
        for known, source, _ in held_against(test)
        if not source and known is not Known.PRACTICE
    ]

    assert nameless == []


def test_the_table_of_sources_is_that_of_the_tests(golden: Golden) -> None:
    golden(FOLDER / "README.md", table())
