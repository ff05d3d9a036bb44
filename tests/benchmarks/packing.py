"""The packing against public instances, in the JSON form that strip packing solvers exchange.

    python -m tests.benchmarks.packing FOLDER [SECONDS]

FOLDER holds `shirts.json` and `trousers.json` of the benchmark set that the EURO working group on cutting and
packing keeps. Printed are shares of the strip that is used: rows of bounding boxes, our plain placement, the
quick plan, a search of so many seconds (60 unless told) on two processors, the best published.
"""

from __future__ import annotations

import json
import sys
from pathlib import Path
from time import perf_counter

from specc.geometry.point import Point
from specc.geometry.region import bounds
from specc.packing import Shape, Strip, bottom_left, faults, quick, search

PUBLISHED = {"shirts": 0.909, "trousers": 0.926}
SCALE = 10.0  # an instance has no unit; a tenth of it is a fair millimetre


def instance(file: Path) -> Strip:
    told = json.loads(file.read_text(encoding="utf-8"))
    shapes = tuple(
        Shape(
            str(item["id"]),
            tuple(Point(x * SCALE, y * SCALE) for x, y in item["shape"]["data"][:-1]),
            item["demand"],
            tuple(item["allowed_orientations"]),
        )
        for item in told["items"]
    )
    return Strip(told["strip_height"] * SCALE, 0.0, shapes)


def rows(strip: Strip) -> float:
    """The share used when the bounding boxes are laid in rows, the widest first."""
    sizes = [bounds(shape.outline) for shape in strip.shapes for _ in range(shape.count)]
    boxes = sorted(((high.x - low.x, high.y - low.y) for low, high in sizes), reverse=True)
    length = deep = filled = 0.0
    for long, wide in boxes:
        if filled + wide > strip.width:
            length, deep, filled = length + deep, 0.0, 0.0
        deep, filled = max(deep, long), filled + wide
    return strip.area / (strip.width * (length + deep))


def searched(strip: Strip, seed: int, seconds: float) -> float:
    start, best = perf_counter(), 0.0
    for report in search(strip, seed=seed):
        if report.layout is not None and not faults(strip, report.layout):
            best = max(best, report.layout.share(strip))
        if perf_counter() - start > seconds:
            break
    return best


def main() -> None:
    folder = Path(sys.argv[1]) if len(sys.argv) > 1 else Path()
    seconds = float(sys.argv[2]) if len(sys.argv) > 2 else 60.0
    for name, published in PUBLISHED.items():
        file = folder / f"{name}.json"
        if not file.exists():
            sys.stdout.write(f"{name}: {file} is not there, nothing was measured\n")
            continue
        strip = instance(file)
        start = perf_counter()
        plan = quick(strip)
        took = perf_counter() - start
        best = searched(strip, 1, seconds)
        sys.stdout.write(
            f"{name}: rows of boxes {rows(strip):.1%}, plain {bottom_left(strip).share(strip):.1%}, "
            f"quick {plan.share(strip):.1%} in {took:.1f} s, {seconds:g} s {best:.1%}, "
            f"published {published:.1%}\n"
        )


if __name__ == "__main__":
    main()
