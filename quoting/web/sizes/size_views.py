"""A comparison as the Sizes page shows it: rows, rules of thumb, charts."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from markupsafe import Markup

from exports.charts import Bar, Level, bars, price_bar, stacked_bars
from quoting.core.weighing.comparison import Compared, Comparison, Refusal, Rule, RuleOfThumb
from quoting.web.sizes.size_travel import size_key
from quoting.wording import Speech, count_figures, verdict


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One size of the table; `per_area` is for 100 cm², or 100 in² where inches are shown.

    `counts` are those of its body, by their headings.
    """

    compared: Compared
    left_m: float
    per_area: Decimal
    rules: Mapping[Rule, RuleOfThumb]
    counts: Mapping[str, str]
    best: bool

    @property
    def key(self) -> str:
        """The size as a button sends it, exactly."""
        return size_key(self.compared.size)


@dataclass(frozen=True, slots=True, kw_only=True)
class SizesView:
    """A comparison ready to be shown."""

    comparison: Comparison
    rows: tuple[Row, ...]
    rules: tuple[Rule, ...]
    verdict: str
    area: str
    prices: Markup
    earnings: Markup

    @property
    def unpriced(self) -> tuple[str, ...]:
        """The sizes that only want a price."""
        return tuple(str(r.size) for r in self.comparison.refused if _wants_a_price(r))

    @property
    def waits_for_prices(self) -> bool:
        """Whether sizes are there and none of them has a price yet."""
        return not self.rows and not self.refused and bool(self.unpriced)

    @property
    def refused(self) -> tuple[Refusal, ...]:
        """The sizes that are refused for anything else."""
        return tuple(r for r in self.comparison.refused if not _wants_a_price(r))


def _wants_a_price(refusal: Refusal) -> bool:
    return [mistake.code for mistake in refusal.mistakes] == ["size-without-price"]


def view_sizes(comparison: Comparison, say: Speech) -> SizesView:
    """Return a comparison ready to be shown."""
    rows = tuple(
        _row(compared, say, best=number == comparison.best)
        for number, compared in enumerate(comparison.sizes)
    )
    return SizesView(
        comparison=comparison,
        rows=rows,
        rules=tuple(rule for rule in Rule if any(rule in row.rules for row in rows)),
        verdict=verdict(comparison, say),
        area="100\u00a0in²" if say.inches else "100\u00a0cm²",
        prices=_prices(comparison, say),
        earnings=_earnings(comparison, say),
    )


def _row(compared: Compared, say: Speech, *, best: bool) -> Row:
    return Row(
        compared=compared,
        left_m=compared.quote.estimate.metres_left,
        per_area=compared.price_per_100_in2 if say.inches else compared.price_per_100_cm2,
        rules={rule.rule: rule for rule in compared.rules},
        counts=count_figures(compared.quote, say),
        best=best,
    )


# The charts escape every word that they write.


def _prices(comparison: Comparison, say: Speech) -> Markup:
    drawn = stacked_bars(
        [price_bar(str(each.size), each.quote.price, say) for each in comparison.sizes],
        title="What each price pays for",
        description="A bar for each size, as long as all that the buyer pays.",
    )
    return Markup(drawn)  # noqa: S704


def _earnings(comparison: Comparison, say: Speech) -> Markup:
    prices = [(str(each.size), each.quote.price) for each in comparison.sizes]
    drawn = bars(
        [
            Bar(
                name=name,
                amount=price.earned_per_hour,
                label=say.money(price.earned_per_hour),
                level=price.pay_per_hour,
            )
            for name, price in prices
        ],
        title="What an hour earns",
        description="A bar for each size, and a line at the hourly pay.",
        level=_pay_level([price.pay_per_hour for _, price in prices], say),
        prefix="earned",
    )
    return Markup(drawn)  # noqa: S704


def _pay_level(pays: Sequence[Decimal], say: Speech) -> Level:
    """Return where an hour is just paid: alike for all, unless kinds of hours differ in pay."""
    least, most = min(pays, default=Decimal(0)), max(pays, default=Decimal(0))
    paid = say.money(least) if least == most else f"{say.money(least)} to {say.money(most)}"
    return Level(amount=least, label=f"your pay, {paid}")
