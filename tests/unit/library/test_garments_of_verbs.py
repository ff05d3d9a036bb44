"""Garments that use the verbs in earnest: seams still walk in every size, and nothing is to be said."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.compiling import said

GARMENTS = Path(__file__).parent.parent.parent / "garments"


# Its bound armhole has a corner where the yoke begins.
NOTED = {"corner-slashes": ["SPC568"]}


@pytest.mark.parametrize("name", ["corner-slashes", "moved-seams", "pleated-skirt"])
def test_a_garment_of_the_verbs_compiles_without_a_word(name: str) -> None:
    text = GARMENTS.joinpath(f"{name}.garment").read_text(encoding="utf-8")

    assert [each.code.id for each in said(text, folder=GARMENTS)] == NOTED.get(name, [])
