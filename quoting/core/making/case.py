"""A finished order: what was quoted for it, and what came of it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.ground.money import product, round_money
from quoting.core.making.outcome import Outcome
from quoting.core.making.outturn import Outturn
from quoting.core.making.stated import Stated


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """One finished order that was agreed by a quote, `number`: `stated` is what that said.

    `finished` is the day on which it was. What its log does not tell is not known of the outcome.
    """

    order_id: int
    number: str
    agreed: date
    finished: date
    handed_over: date | None
    title: str
    buyer: str
    stated: Stated
    outcome: Outcome

    @property
    def hours(self) -> Outturn | None:
        """Its hours as quoted and as they were; None where they are not known."""
        hours, stated = self.outcome.hours, self.stated.all_hours
        if hours is None or not stated:
            return None
        return Outturn(
            stated=float(stated),
            real=float(hours),
            half_width=float(self.stated.high_hours - stated),
            widened_by=self.stated.hours_widened_by,
        )

    @property
    def grams(self) -> Outturn | None:
        """Its yarn as quoted and as it was, in grams; None where it is not known."""
        took_g, stated = self.outcome.took_g, self.stated.grams
        if took_g is None or not stated:
            return None
        return Outturn(
            stated=stated,
            real=took_g,
            half_width=self.stated.grams_half_width,
            widened_by=self.stated.yarn[0].widened_by,
        )

    @property
    def was_to_earn(self) -> Decimal:
        """What an hour was to earn."""
        return self.stated.earned

    @property
    def earned(self) -> Decimal | None:
        """What an hour really earned."""
        return self.outcome.earned

    @property
    def other_costs(self) -> Decimal:
        """All costs but yarn and the maker's own hours: overhead by the hours that it took."""
        hours = self.outcome.hours or self.stated.all_hours
        overhead = product(hours, self.outcome.overhead_per_hour)
        return self.outcome.other_costs + round_money(overhead, self.currency)

    @property
    def currency(self) -> str:
        """The currency that it was quoted in."""
        return self.stated.currency
