"""What the trade calls yarns by thickness.

Source of the last name of each: Craft Yarn Council, Standard Yarn Weight System. Those before a
stroke are common practice, British and American.
"""

from __future__ import annotations

_NAMES = {
    0: "2 ply / lace",
    1: "sock, 4 ply / super fine",
    2: "sport, 5 ply / fine",
    3: "DK / light",
    4: "aran, worsted / medium",
    5: "chunky / bulky",
    6: "super chunky / super bulky",
    7: "jumbo",
}


def category_words(number: int) -> str:
    """Return the trade's names of a yarn category, and its number: `DK / light (3)`."""
    return f"{_NAMES[number]} ({number})"
