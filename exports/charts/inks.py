"""Greys and hatchings that tell parts apart without colour, on light paper and on dark."""

from __future__ import annotations

from collections.abc import Iterator

from exports.svg import INK, element, path

CELL = 6.0

_TINT = (0.8, 0.12, 0.5, 0.0, 0.3, 0.12, 0.0, 0.0, 0.65)
_LINES: tuple[tuple[str | float, ...], ...] = (
    (),
    ("M", -1, 1, "L", 1, -1, "M", 0, 6, "L", 6, 0, "M", 5, 7, "L", 7, 5),
    (),
    ("M", 3, 0, "V", 6),
    (),
    ("M", 0, 3, "H", 6),
    ("M", -1, 5, "L", 1, 7, "M", 0, 0, "L", 6, 6, "M", 5, -1, "L", 7, 1),
    (),
    ("M", 0, 0, "L", 6, 6, "M", 0, 6, "L", 6, 0),
)
INKS = len(_LINES)
"""How many parts are told apart; more of them begin again."""


def draw_inks(prefix: str, wanted: int) -> str:
    """Return the first so many inks as patterns with ids under `prefix`."""
    return element("defs", *_patterns(prefix, min(wanted, INKS))) if wanted else ""


def ink(prefix: str, number: int) -> str:
    """Return the fill of the part of that number, from 0."""
    return f"url(#{prefix}-ink-{number % INKS})"


def _patterns(prefix: str, wanted: int) -> Iterator[str]:
    for number in range(wanted):
        ground = element("rect", width=CELL, height=CELL, fill=INK, fill_opacity=_TINT[number])
        lines = path(*_LINES[number], stroke=INK, stroke_width=1) if _LINES[number] else ""
        yield element(
            "pattern",
            ground,
            lines,
            id=f"{prefix}-ink-{number}",
            width=CELL,
            height=CELL,
            patternUnits="userSpaceOnUse",
        )
