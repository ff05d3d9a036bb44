"""Owns which library file declares a way of making; knows nothing of what the files say."""

from __future__ import annotations

# A table, so that a method is found without reading every file; a test holds it against the files.
_FILES = (
    (
        "seams",
        (
            "pressed-open",
            "pressed-to-one-side",
            "overlocked",
            "topstitched",
            "lapped",
            "flat-knit",
            "gathered",
            "set-in",
            "stayed",
        ),
    ),
    (
        "enclosed-seams",
        ("bound-outside", "french", "flat-felled", "hong-kong", "turned", "faced", "bagged-out", "piped"),
    ),
    ("edges", ("elastic-bound", "bias-bound", "double-bias-bound", "bias-faced", "edge-overlocked")),
    (
        "hems",
        (
            "raw",
            "single-turned",
            "double-turned",
            "rolled",
            "overlock-rolled",
            "blind",
            "cover-stitched",
            "elastic-casing",
            "drawstring-casing",
        ),
    ),
    (
        "bands",
        (
            "waistband",
            "caught-down",
            "rib-band",
            "elastic-waistband",
            "closed-end",
            "turned-tube",
            "folded-strap",
        ),
    ),
    ("attachments", ("patch", "set-on", "flap", "boxed", "bar-tacked")),
    (
        "closures",
        (
            "zip-centred",
            "zip-lapped",
            "zip-concealed",
            "buttoned",
            "buttoned-grown-on",
            "buttoned-strip",
            "hook-and-eye",
            "snapped",
        ),
    ),
    ("slits", ("slit-turned", "continuous-bound", "vent-mitred")),
)


def method_files() -> tuple[tuple[str, tuple[str, ...]], ...]:
    """The library files that declare methods, without ending, each with its methods in their order."""
    return _FILES


def file_of(method: str) -> str | None:
    """The library file, without ending, that declares the method; None for one that the library lacks."""
    return next((file for file, methods in _FILES if method in methods), None)
