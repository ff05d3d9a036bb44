"""The walk of one small file in DEVELOPERS.md shows real output at every border."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from specc.cli import main

PAGE = Path(__file__).resolve().parent.parent.parent / "DEVELOPERS.md"
BORDERS = ("tree", "garment", "pieces", "assembly", "quantities", "document")


def fenced(words: str) -> str:
    found = re.search(rf"^```{words}\n(.*?)^```$", PAGE.read_text(encoding="utf-8"), re.DOTALL | re.MULTILINE)
    assert found is not None, f"DEVELOPERS.md has no block `{words}`"
    return found[1]


@pytest.mark.parametrize("border", BORDERS)
def test_the_walk_shows_what_the_program_prints(
    border: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each run of lines between two `…` stands in the output, in order."""
    spec = tmp_path / "scarf.garment"
    spec.write_text(fenced("garment"), encoding="utf-8")

    assert main(["build", "--show", border, str(spec)]) == 0

    printed = capsys.readouterr().out
    runs = [run.strip("\n") for run in re.split(r"^ *…\n?", fenced(f"show {border}"), flags=re.MULTILINE)]
    shown = [run for run in runs if run]
    assert shown, f"the block `show {border}` is empty"
    for run in shown:
        _, found, printed = printed.partition(run)
        assert found, f"the output at `{border}` does not hold:\n{run}"
