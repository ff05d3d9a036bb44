"""Owns the kinds of line that drawings use: width, dashes and ground.

Knows nothing of where they are drawn.

Widths are steps of ISO 128-2 (0.13, 0.18, 0.25, 0.35, 0.5 mm), a wide line twice a narrow one, and dashes
follow its line types where it has one for the purpose: continuous (01), dashed (02), dashed spaced (03),
long-dashed dotted (04), long-dashed double-dotted (05), dotted (07). Given from memory of that standard. Dots
are drawn longer than its half width, so that they survive a photocopier. No line differs from another by
colour alone: all are black or grey.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType


class LineKind(StrEnum):
    """What a line stands for."""

    CUT = "cut"
    STITCH = "stitch"
    OUTLINE = "outline"
    FOLD = "fold"
    GRAIN = "grain"
    ARROW = "arrow"
    DART = "dart"
    DART_MIDDLE = "dart-middle"
    REFERENCE = "reference"
    NOTCH = "notch"
    PLACED = "placed"
    MARK = "mark"
    BEFORE = "before"
    AFTER = "after"
    SIZE = "size"
    SAMPLE_SIZE = "sample-size"
    THIN = "thin"
    SCALE_DARK = "scale-dark"
    SCALE_LIGHT = "scale-light"
    SHADE = "shade"
    CLOTH = "cloth"
    GARMENT = "garment"
    SEAM = "seam"
    ROW = "row"
    FASTENING = "fastening"
    WORKED = "worked"
    HELD = "held"
    PLY = "ply"
    PLY_WITHIN = "ply-within"
    TRIM_WITHIN = "trim-within"
    NEEDLE = "needle"
    THREAD = "thread"


@dataclass(frozen=True, slots=True)
class LineStyle:
    """How a line is drawn.

    Width in millimetres (0: only filled), dashes in millimetres, grey 0 (black) to 1 (white).
    """

    width: float
    dashes: tuple[float, ...] = ()
    grey: float = 0.0
    fill: float | None = None


LINES = MappingProxyType(
    {
        LineKind.CUT: LineStyle(0.5),
        LineKind.STITCH: LineStyle(0.25, (2.4, 0.8)),
        LineKind.OUTLINE: LineStyle(0.35, fill=1.0),
        LineKind.FOLD: LineStyle(0.25, (6.0, 0.75, 0.5, 0.75)),
        LineKind.GRAIN: LineStyle(0.25),
        LineKind.ARROW: LineStyle(0.0, fill=0.0),
        LineKind.DART: LineStyle(0.25),
        LineKind.DART_MIDDLE: LineStyle(0.25, (0.4, 0.9)),
        LineKind.REFERENCE: LineStyle(0.18, (6.0, 0.75, 0.4, 0.75, 0.4, 0.75), grey=0.25),
        LineKind.NOTCH: LineStyle(0.35),
        LineKind.PLACED: LineStyle(0.25, (3.0, 1.5)),
        LineKind.MARK: LineStyle(0.25),
        LineKind.BEFORE: LineStyle(0.18, (1.2, 1.2), grey=0.25),
        LineKind.AFTER: LineStyle(0.5),
        LineKind.SIZE: LineStyle(0.18),
        LineKind.SAMPLE_SIZE: LineStyle(0.35),
        LineKind.THIN: LineStyle(0.13),
        LineKind.SCALE_DARK: LineStyle(0.13, fill=0.0),
        LineKind.SCALE_LIGHT: LineStyle(0.13, fill=1.0),
        LineKind.SHADE: LineStyle(0.0, fill=0.9),
        LineKind.CLOTH: LineStyle(0.0, fill=1.0),
        LineKind.GARMENT: LineStyle(0.5),
        LineKind.SEAM: LineStyle(0.25),
        LineKind.ROW: LineStyle(0.18, (0.9, 0.6)),
        LineKind.WORKED: LineStyle(0.7),
        LineKind.HELD: LineStyle(1.0, (1.2, 0.5)),
        LineKind.FASTENING: LineStyle(0.25, fill=1.0),
        LineKind.PLY: LineStyle(1.0),
        LineKind.PLY_WITHIN: LineStyle(0.7, grey=0.8),
        LineKind.TRIM_WITHIN: LineStyle(0.7, grey=1.0),
        LineKind.NEEDLE: LineStyle(0.35, (0.8, 0.35)),
        LineKind.THREAD: LineStyle(0.25),
    }
)
