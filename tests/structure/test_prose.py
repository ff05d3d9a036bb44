"""Every block of the language that a reader is shown is compiled.

The first words behind the fence say what it is:

    garment                  a whole file, which checks without errors
    garment-fragment NAME    lines for the place `@@@` in within/NAME.garment; checks without errors
    garment-wrong CODE       a whole file that gives this code
    garment-wrong CODE NAME  such lines, which give this code

A frame may itself stand within another, named on its first line.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
from markdown_it import MarkdownIt

from specc.diagnostics import Severity
from tests.compiling import is_of_output, said

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

ROOT = Path(__file__).resolve().parent.parent.parent
WITHIN = Path(__file__).parent / "within"
PLACE = "@@@"
OF_BYTES = {"SPC109"}  # a page is text, and cannot show what is not
OF_LAY_FILES = {"SPC602", "SPC603", "SPC604"}  # a page shows no lay file
OF_SHEETS = {f"SPC63{digit}" for digit in range(9)}  # nor a PDF
PAGES = sorted(
    {
        *ROOT.glob("*.md"),
        *ROOT.joinpath("specc/diagnostics/explain").glob("*.md"),
        *(
            page
            for name in ("grammar", "templates", "tests", "examples")
            for page in ROOT.joinpath(name).rglob("*.md")
        ),
    }
)
EXAMPLES = sorted(ROOT.joinpath("examples").rglob("*.garment"))


@dataclass(frozen=True, slots=True)
class Block:
    """A fenced block of the language: what it is called, the words behind the fence, the text."""

    name: str
    words: tuple[str, ...]
    text: str

    @property
    def code(self) -> str | None:
        """The code that it promises to give."""
        return self.words[1] if self.words[0] == "garment-wrong" else None

    @property
    def frames(self) -> tuple[str, ...]:
        """The frames that it stands in, innermost first."""
        return tuple(surrounding(self.words[2 if self.code else 1 :]))

    @property
    def whole(self) -> str:
        """The text in all that surrounds it."""
        text = self.text
        for name in self.frames:
            text = frame(name).replace(PLACE, text, 1)
        return text


def frame(name: str) -> str:
    return WITHIN.joinpath(f"{name}.garment").read_text(encoding="utf-8")


def surrounding(names: Sequence[str]) -> Iterator[str]:
    """The frames in `names`, and those that each says on its first line that it stands in."""
    for name in names:
        yield name
        first, *_ = frame(name).splitlines()
        yield from surrounding(
            first.removeprefix("# within ").split() if first.startswith("# within ") else ()
        )


def blocks(pages: list[Path]) -> Iterator[Block]:
    for page in pages:
        for token in MarkdownIt().parse(page.read_text(encoding="utf-8")):
            if token.type == "fence" and token.info.startswith("garment") and token.map:
                words = tuple(token.info.split())
                yield Block(f"{page.relative_to(ROOT)}:{token.map[0] + 1}", words, token.content)


BLOCKS = tuple(blocks(PAGES))


@pytest.mark.parametrize("block", BLOCKS, ids=lambda block: block.name)
def test_a_block_does_what_its_fence_says(block: Block) -> None:
    assert block.words[0] in {"garment", "garment-fragment", "garment-wrong"}
    assert (
        len(block.words) in {"garment": {1}, "garment-fragment": {2}, "garment-wrong": {2, 3}}[block.words[0]]
    )
    diagnostics = said(block.whole, folder=ROOT, laid=is_of_output(block.code or ""))

    if block.code:
        assert block.code in {diagnostic.code.id for diagnostic in diagnostics}
    else:
        assert [fault.message for fault in diagnostics if fault.severity is Severity.ERROR] == []


def test_a_page_of_a_code_shows_what_gives_it_and_what_does_not() -> None:
    pages = {page.stem for page in ROOT.joinpath("specc/diagnostics/explain").glob("SPC[1-6]*.md")}
    wrong = {Path(block.name).stem for block in BLOCKS if block.code == Path(block.name).stem[:6]}

    assert pages - {name.split(".")[0] for name in wrong} == OF_BYTES | OF_LAY_FILES | OF_SHEETS


def test_every_frame_is_used_and_has_a_place_for_the_block() -> None:
    names = {path.stem for path in WITHIN.glob("*.garment")}

    assert {name for block in BLOCKS for name in block.frames} == names
    assert [name for name in names if frame(name).count(PLACE) != 1] == []


@pytest.mark.parametrize("name", ["spec", "dress"])
def test_an_outermost_frame_is_sound(name: str) -> None:
    """So that what a block gives is its own doing."""
    empty = Block(name, ("garment-fragment", name), "")

    assert [
        fault.message for fault in said(empty.whole, folder=ROOT) if fault.severity is Severity.ERROR
    ] == []


@pytest.mark.parametrize("example", EXAMPLES, ids=lambda example: example.stem)
def test_an_example_compiles_without_errors(example: Path) -> None:
    text = example.read_text(encoding="utf-8")
    diagnostics = said(text, folder=example.parent, name=example.name)

    assert [fault.message for fault in diagnostics if fault.severity is Severity.ERROR] == []
