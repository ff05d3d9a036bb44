"""What two small garments become at every border; the first line of each says what to look for."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from specc.borders import BORDERS
from specc.gather import read
from specc.pipeline import check
from tests.compiling import Here

if TYPE_CHECKING:
    from tests.goldens import Golden

FOLDER = Path(__file__).resolve().parent.parent / "golden" / "borders"
CASES = sorted(FOLDER.glob("*.garment"))


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.stem)
@pytest.mark.parametrize("border", BORDERS)
def test_the_value_at_a_border(case: Path, border: str, golden: Golden) -> None:
    source, faults = read(case.name, case.read_bytes())
    assert not faults

    shown = BORDERS[border](check(source, Here(FOLDER)))

    golden(FOLDER / f"{case.stem}.{border}.txt", shown)
