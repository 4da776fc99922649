"""The key under the drawing: the yarns by name, and what tails, arcs and dots mean."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from exports.drawing.layout import FONT_SIZE, VIEW_WIDTH
from exports.svg import INK, element, path, text
from quoting.core.estimate.strands import Strand
from quoting.core.plan.passes import Edge
from quoting.wording import Speech

LINE = 17.0
SIDE = 10.0
SAMPLE = 20.0
AFTER = 14.0
LONGEST = 30
CHARACTER = 0.55 * FONT_SIZE
"""A character's usual width: the words are not measured, only given room."""

SAMPLES: Mapping[str, tuple[str | float, ...]] = {
    "starts": ("M", 0, -6, "C", 8, -6, 8, -6, 14, -2),
    "ends": ("M", 0, -2, "C", 8, -2, 8, -2, 14, -6),
    "carried up": ("M", 4, 1, "C", 14, 1, 14, -9, 4, -9),
}


@dataclass(frozen=True, slots=True)
class Entry:
    """A sample and its words."""

    sample: str
    words: str

    @property
    def width(self) -> float:
        """The room that it takes."""
        return SAMPLE + len(self.words) * CHARACTER + AFTER


def draw_key(
    codes: Mapping[str, str],
    strands: Sequence[Strand],
    top: float,
    speech: Speech,
    *,
    unmarked: int = 0,
) -> tuple[str, float]:
    """Return the key below `top` to the yarns and what is drawn of strands, and where it ends.

    Of so many `unmarked` strands it says that none of their ends is drawn.
    """
    yarns = [Entry(_swatch(code), _shortened(colour)) for colour, code in codes.items()]
    placed, y = [], top
    for entries in (yarns, list(_strand_entries(strands, unmarked, speech))):
        for line in _lines(entries):
            y += LINE
            placed += list(_place(line, y))
    key = element("g", *placed, class_="key", fill=INK, font_size=FONT_SIZE, stroke_linecap="round")
    return key, y + 0.5 * LINE


def _strand_entries(strands: Sequence[Strand], unmarked: int, speech: Speech) -> Iterator[Entry]:
    """Yield what tails, arcs and dots mean, or that there are none; nothing for a buyer."""
    if unmarked:
        yield Entry("", f"{speech.count(2 * unmarked, 'end')}, not drawn")
    if strands:
        for words, steps in SAMPLES.items():
            yield Entry(path(*steps, fill="none", stroke=INK, stroke_width=1.6), words)
    if any(strand.ends.edge is Edge.WITHIN for strand in strands):
        yield Entry(_dot(), speech.worded("new ball joined"))


def _shortened(words: str) -> str:
    return words if len(words) <= LONGEST else f"{words[: LONGEST - 1].rstrip()}…"


def _swatch(code: str) -> str:
    return element(
        "rect",
        x=1,
        y=-9,
        width=13,
        height=10,
        fill=code,
        stroke=INK,
        stroke_opacity=0.55,
        stroke_width=0.8,
    )


def _dot() -> str:
    return element("circle", cx=8, cy=-4, r=2.4, fill="none", stroke=INK, stroke_width=1.2)


def _lines(entries: Sequence[Entry]) -> Iterator[list[Entry]]:
    """Yield the entries by lines, each as full as the picture is wide."""
    line: list[Entry] = []
    for entry in entries:
        if line and sum(e.width for e in [*line, entry]) > VIEW_WIDTH - 2 * SIDE:
            yield line
            line = []
        line.append(entry)
    if line:
        yield line


def _place(line: Sequence[Entry], y: float) -> Iterator[str]:
    x = SIDE
    for entry in line:
        yield element("g", entry.sample, text(entry.words, SAMPLE, 0), transform=_moved(x, y))
        x += entry.width


def _moved(x: float, y: float) -> str:
    return f"translate({x:.1f} {y:.1f})"
