"""Text to a size: a width and a height, such as `70x90cm` or `28 × 36 in`."""

from __future__ import annotations

import re

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Mistake, Refused, refuse
from quoting.core.ground.place import NOWHERE
from quoting.notation.marks import EITHER_WAY, Marks, plain_text, shown
from quoting.notation.measures import LENGTH, read_measure

_BETWEEN = re.compile(r"\s*[x×*]\s*", re.IGNORECASE)
_UNDER_ONE = re.compile(r"(?<!\d)0([.,])\d")
_LETTERS = re.compile(r"[a-z'\"′″]+\s*$", re.IGNORECASE)
EXAMPLE = "70x90cm"


def read_size(
    text: str, marks: Marks, default_unit: str | None = None, *, by_width: bool = False
) -> tuple[float, float]:
    """Return a width and a height in cm.

    A unit after the height serves the width too, and so does a decimal mark that one side is
    beyond doubt typed with: 0.9 x 1.2 m. Of what goes `by_width` one measure alone is both.
    Errors: `not-a-size`, and those of `read_measure`.
    """
    sides = _BETWEEN.split(plain_text(text))
    if by_width and len(sides) == 1:
        width_cm = read_measure(text, marks, LENGTH, default_unit)
        return width_cm, width_cm
    if len(sides) != 2 or not all(sides):
        raise refuse("", MistakeCode.NOT_A_SIZE, read=shown(text), wanted=EXAMPLE)
    width, height = sides
    sure = _UNDER_ONE.search(text)
    if sure is not None and sure[1] not in marks.decimals:
        marks = next(other for other in EITHER_WAY if other.decimal == sure[1])
    unit = _LETTERS.search(height)
    shared = unit.group().strip() if unit and not _LETTERS.search(width) else ""
    try:
        return (
            read_measure(width + shared, marks, LENGTH, default_unit),
            read_measure(height, marks, LENGTH, default_unit),
        )
    except Refused as refused:
        if any(mistake.code == MistakeCode.NOT_A_MEASURE for mistake in refused.mistakes):
            facts = {"read": shown(text), "wanted": EXAMPLE}
            raise Refused(Mistake(NOWHERE, MistakeCode.NOT_A_SIZE, facts)) from None
        raise
