"""What a quote stated of hours, yarn and money: as much as is held against what they came to."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal

from quoting.core.estimate.chores import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class YarnStated:
    """The yarn of a colour: its grams and the high end of their range, and what it was to cost.

    After `last_row`, counted over all blankets, there is none of it. An older quote has no
    `high_g`. `is_bought` says that new balls of it are bought, whole.
    """

    colour: str
    grams: float
    high_g: float | None
    widened_by: float
    cost: Decimal
    last_row: int
    is_bought: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """The figures of one quote. `rows` are those of all blankets, `earned` is by the hour.

    `by_the_gram` says whether the price carries only the yarn that is used; None where the lines
    of the costing do not tell it.
    """

    width_cm: float
    height_cm: float
    stitch: str
    rows: int
    hours: Mapping[Part, Decimal]
    low_hours: Decimal
    high_hours: Decimal
    hours_widened_by: float
    yarn: tuple[YarnStated, ...]
    by_the_gram: bool | None
    currency: str
    total: Decimal
    tax: Decimal
    fees: Decimal
    other_costs: Decimal
    overhead_per_hour: Decimal
    earned: Decimal

    @property
    def all_hours(self) -> Decimal:
        """All hours."""
        return sum(self.hours.values(), Decimal(0))

    @property
    def grams(self) -> float:
        """The weight of all yarn."""
        return math.fsum(yarn.grams for yarn in self.yarn)

    @property
    def grams_half_width(self) -> float | None:
        """The half-width of the range of all yarn: its colours are off together.

        Tension is one for the whole blanket, and colours of one yarn rest on the same swatches.
        """
        off = [yarn.high_g - yarn.grams for yarn in self.yarn if yarn.high_g is not None]
        return math.fsum(off) if len(off) == len(self.yarn) else None
