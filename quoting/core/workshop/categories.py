"""Yarn categories and the gauge to expect of each when nothing has been measured.

Source: Craft Yarn Council, Standard Yarn Weight System (as printed 2018), single crochet to
4 inches. Categories 6 and 7 differ between editions; category 0 is counted there in double
crochet and has no single crochet figure, so 0 takes category 1's upper end and beyond.
"""

from __future__ import annotations

from quoting.core.ground.measures import CM_PER_INCH

SC_IN_FOUR_INCHES = {
    0: (32, 42),
    1: (21, 32),
    2: (16, 20),
    3: (12, 17),
    4: (11, 14),
    5: (8, 11),
    6: (6, 9),
    7: (4, 5),
}

USUAL_CATEGORY = 4
"""What a yarn is reckoned by that nothing was measured in and that was given no category."""

HOOK_MM = {1: (2.25, 3.5), 2: (3.5, 4.5), 3: (4.5, 5.5), 4: (5.5, 6.5), 5: (6.5, 9.0)}


def rough_stitch_width_cm(category: int | None) -> float:
    """Return the width of one stitch at the middle of the category's range."""
    low, high = SC_IN_FOUR_INCHES[USUAL_CATEGORY if category is None else category]
    return 4 * CM_PER_INCH / ((low + high) / 2)
