"""What a maker has her buyers told beside the price: what goes into a blanket, what may change."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.ground.errors import Checks

MOST_WITHIN_CM = 50
MOST_CHANGE_DAYS = 365


@dataclass(frozen=True, slots=True, kw_only=True)
class Documents:
    """Which lines of what goes into a blanket its buyer reads; none unless the maker says so.

    `size_within_cm` is how far each side may be off, `change_days` for how many days after
    accepting colours, stripes, size and extras may change; nothing is promised where it is None.
    """

    stitches: bool = False
    rows: bool = False
    yarn: bool = False
    ends: bool = False
    hours: bool = False
    size_within_cm: float | None = None
    change_days: int | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("size_within", self.size_within_cm, above=0, most=MOST_WITHIN_CM)
        checks.number("change_days", self.change_days, least=1, most=MOST_CHANGE_DAYS)
        checks.done()
