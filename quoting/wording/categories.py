"""What the trade calls yarns by thickness.

Source of the first names: Craft Yarn Council, Standard Yarn Weight System. Those in brackets are
common practice, British and American.
"""

from __future__ import annotations

_NAMES = {
    0: "lace (2 ply and thinner)",
    1: "super fine (sock, fingering, 4 ply)",
    2: "fine (sport, 5 ply)",
    3: "light (DK, light worsted)",
    4: "medium (aran, worsted)",
    5: "bulky (chunky)",
    6: "super bulky (super chunky)",
    7: "jumbo",
}


def category_words(number: int) -> str:
    """Return the trade's names of a yarn category."""
    return _NAMES[number]
