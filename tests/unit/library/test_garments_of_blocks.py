"""A small garment of each block compiles: nothing to be said, and a sheet of every size can be made."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.compiling import said

GARMENTS = Path(__file__).parent.parent.parent / "garments"
BLOCKS = (
    "bodice", "circle-skirt", "gathered-skirt", "kimono-top", "knit-top", "pocket-bag", "pull-on-trousers",
    "raglan-top", "rectangle", "straight-skirt", "trousers",
)  # fmt: skip


@pytest.mark.parametrize("block", BLOCKS)
def test_a_garment_of_the_block_compiles_without_a_word(block: str) -> None:
    text = GARMENTS.joinpath(f"{block}.garment").read_text(encoding="utf-8")

    assert f"use block {block}" in text
    assert said(text, folder=GARMENTS) == ()


def test_a_pyjama_top_stays_within_the_limits_of_tight_sleepwear() -> None:
    """The same top with more ease fails in named sizes: tests/errors/SPC516-within.garment."""
    text = GARMENTS.joinpath("sleepwear-top.garment").read_text(encoding="utf-8")

    assert "expect within sleepwear-girls" in text
    assert said(text, folder=GARMENTS) == ()


def test_a_childs_neck_is_held_against_the_childs_head() -> None:
    """Jersey that stretches by half passes the head; the same neck in a cloth that does not is refused."""
    text = GARMENTS.joinpath("raglan-top.garment").read_text(encoding="utf-8")
    stiff = text.replace("  stretch   50%\n", "")
    assert stiff != text
    (fault,) = (one for one in said(stiff, folder=GARMENTS) if one.code.id == "SPC505")

    assert "in every size" in fault.message
    assert len(fault.notes) == 4
    assert "the head is 49.6 cm" in fault.notes[0]
