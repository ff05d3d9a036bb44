"""Owns timing two commands in turns, as whole processes, and printing how their times compare."""

from __future__ import annotations

import subprocess
import sys
from statistics import median
from time import perf_counter


def seconds(command: list[str]) -> float:
    """Return how long the command took; raises CalledProcessError when it failed."""
    start = perf_counter()
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    return perf_counter() - start


def compare(name: str, command: list[str], other: list[str], *, runs: int = 15) -> None:
    """Print the times of both commands and their ratio, run by run in turns after one round of warming up."""
    seconds(command)
    seconds(other)
    pairs = [(seconds(command), seconds(other)) for _ in range(runs)]
    ratios = sorted(first / second for first, second in pairs)
    times = [median(time) for time in zip(*pairs, strict=True)]
    sys.stdout.write(
        f"{name}: {times[0] * 1000:.0f} ms against {times[1] * 1000:.0f} ms, median of {runs}; "
        f"ratio {median(ratios):.2f} ({ratios[0]:.2f} to {ratios[-1]:.2f})\n"
    )
