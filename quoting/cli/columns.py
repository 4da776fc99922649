"""Plain text in columns, fit for eighty of them."""

from __future__ import annotations

import textwrap
import unicodedata
from collections.abc import Iterator, Sequence

PAGE_WIDTH = 79
GAP = "  "
SHORTEST_COLUMN = 12

Row = Sequence[str]


def columns(rows: Sequence[Row], *, left: int = 1) -> Iterator[str]:
    """Yield rows as lines: the first `left` cells flush left, the others flush right.

    The first cell is wrapped where a row would be wider than the page.
    """
    widths = [max(shown_width(cell) for cell in column) for column in zip(*rows, strict=True)]
    others = sum(widths[1:]) + len(GAP) * (len(widths) - 1)
    widths[0] = min(widths[0], max(SHORTEST_COLUMN, PAGE_WIDTH - others))
    for first, *rest in rows:
        *above, last = wrapped(first, widths[0]) or [""]
        yield from above
        cells = [
            _padded(cell, width, to_right=number >= left)
            for number, (cell, width) in enumerate(zip([last, *rest], widths, strict=True))
        ]
        yield GAP.join(cells).rstrip()


def facts(rows: Sequence[tuple[str, str]]) -> Iterator[str]:
    """Yield names and what is said of them, the latter wrapped beside them."""
    margin = max(shown_width(name) for name, _ in rows) + len(GAP)
    for name, said in rows:
        first, *more = wrapped(said, PAGE_WIDTH - margin) or [""]
        yield _padded(name, margin, to_right=False) + first
        yield from (" " * margin + line for line in more)


def wrapped(text: str, width: int) -> list[str]:
    """Return a text as lines of at most so many characters."""
    return textwrap.wrap(text, width, break_on_hyphens=False)


def shown_width(text: str) -> int:
    """Return how many columns a text takes: wide characters two, combining ones none."""
    return sum(_width(char) for char in text)


def _width(char: str) -> int:
    if unicodedata.combining(char) or unicodedata.category(char) == "Cf":
        return 0
    return 2 if unicodedata.east_asian_width(char) in "WF" else 1


def _padded(text: str, width: int, *, to_right: bool) -> str:
    blank = " " * (width - shown_width(text))
    return blank + text if to_right else text + blank
