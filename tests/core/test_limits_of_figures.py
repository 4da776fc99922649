"""How small and how large a figure may be: at its limit it is taken, past it refused.

The limits are the program's own: past them a figure is a slip of the hand.
"""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.workshop.calendar import WorkingCalendar
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.pay_rates import Year
from quoting.core.workshop.selling import (
    Delivery,
    DeliveryBand,
    Deposit,
    Fee,
    Pay,
    Pricing,
    Target,
    Tax,
)
from quoting.core.workshop.swatches import LEAST_COUNT, Piece, Reading, Run
from tests.examples import sample_swatch, sample_workshop

MARGIN = Target(margin=0.15)
MOST_MONEY = Decimal(1_000_000_000)

BASES: dict[type, dict[str, Any]] = {
    Pay: {"making_per_hour": Decimal(14), "office_per_hour": Decimal(14)},
    Pricing: {"target": MARGIN},
    Fee: {"name": "Card payment"},
    DeliveryBand: {"to": "GB", "up_to_g": 400, "charged": Decimal(4), "paid": Decimal(4)},
    Reading: {"stitches": 16, "width_cm": 12.8, "rows": 12, "height_cm": 11.4},
    Piece: {"stitches": 24, "rows": 20, "weight_g": 25},
    Run: {"stitches": 20, "length_cm": 176},
    Year: {"income": Decimal(9), "overhead": Decimal(9), "weeks": 40, "hours_a_week": 12},
    ExchangeRate: {"currency": "EUR", "rate": Decimal("1.17"), "day": date(2026, 11, 25)},
}
"""The other fields of a value, for those that cannot do without."""

BETWEEN: list[tuple[type, str, str, Any, Any]] = [
    (Pay, "making_per_hour", "making_per_hour", Decimal(0), MOST_MONEY),
    (Pay, "overhead_per_hour", "overhead_per_hour", Decimal(0), MOST_MONEY),
    (Pay, "rest_allowance", "rest_allowance", 0.0, 1.0),
    (Target, "margin", "margin", -10.0, 10.0),
    (Target, "markup", "markup", -1.0, 100.0),
    (Pricing, "minimum", "minimum", Decimal(0), MOST_MONEY),
    (Pricing, "valid_days", "valid_days", 1, 3650),
    (Pricing, "exchange_cushion", "exchange_cushion", 0.0, 1.0),
    (Fee, "rate", "rate", 0.0, 1.0),
    (Fee, "fixed", "fixed", Decimal(0), MOST_MONEY),
    (Tax, "rate", "rate", 0.0, 10.0),
    (DeliveryBand, "charged", "charged", Decimal(0), MOST_MONEY),
    (DeliveryBand, "paid", "paid", Decimal(0), MOST_MONEY),
    (Delivery, "charged", "charged", Decimal(0), MOST_MONEY),
    (Delivery, "paid", "paid", Decimal(0), MOST_MONEY),
    (Delivery, "packaging", "packaging", Decimal(0), MOST_MONEY),
    (Delivery, "packaging_g", "packaging_weight", 0.0, 100_000.0),
    (WorkingCalendar, "yarn_arrives_days", "yarn_arrives_days", 0, 3650),
    (WorkingCalendar, "drying_days", "drying_days", 0, 3650),
    (WorkingCalendar, "post_days", "post_days", 0, 3650),
    (WorkingCalendar, "hours_promised", "hours_promised", 0.0, 1_000_000.0),
    (Piece, "stitches", "stitches", 1, 10_000),
    (Piece, "rows", "rows", 1, 10_000),
    (Run, "stitches", "stitches", 1, 10_000),
    (Year, "income", "income", Decimal(0), MOST_MONEY),
    (Year, "overhead", "overhead", Decimal(0), MOST_MONEY),
    (Year, "weeks", "weeks", 1.0, 52.0),
    (Year, "hours_a_week", "hours_a_week", 0.1, 168.0),
    (ExchangeRate, "cushion", "cushion", 0.0, 1.0),
    (Habits, "carry_rows", "carry_rows", 0, 1000),
]
"""A field, its place in the file, and the least and the most that will do."""

ABOVE_NOTHING: list[tuple[type, str, str, Any]] = [
    (Deposit, "share", "share", 1.0),
    (Target, "given", "given", MOST_MONEY),
    (Pricing, "round_up_to", "round_up_to", MOST_MONEY),
    (Pricing, "at_half", "at_half", 1.0),
    (DeliveryBand, "up_to_g", "up_to", 1_000_000.0),
    (Reading, "stitches", "stitches", 10_000.0),
    (Reading, "rows", "rows", 10_000.0),
    (Reading, "width_cm", "width", 1000.0),
    (Reading, "height_cm", "height", 1000.0),
    (Piece, "weight_g", "weight", 10_000.0),
    (Piece, "scale_step_g", "scale_step", 1000.0),
    (Run, "length_cm", "length", 100_000.0),
    (Run, "ruler_step_cm", "ruler_step", 100.0),
    (ExchangeRate, "rate", "rate", MOST_MONEY),
    (Habits, "tail_cm", "tail", 200.0),
]
"""A field that must be more than nothing, its place, and the most that will do."""


def named(case: object) -> str:
    return case.__name__ if isinstance(case, type) else str(case) if isinstance(case, str) else ""


def with_field(kind: type, field: str) -> Callable[[Any], object]:
    return lambda figure: kind(**(BASES.get(kind, {}) | {field: figure}))


def refused(make: Callable[[Any], object], figure: Any) -> tuple[str, str, Any]:
    with pytest.raises(Refused) as refusal:
        make(figure)
    (mistake,) = refusal.value.mistakes
    return mistake.path, mistake.code, mistake.facts["limit"]


@pytest.mark.parametrize(("kind", "field", "place", "least", "most"), BETWEEN, ids=named)
def test_a_figure_is_taken_from_its_least_to_its_most_and_refused_past_them(
    kind: type, field: str, place: str, least: Any, most: Any
) -> None:
    make = with_field(kind, field)
    assert getattr(make(least), field) == least
    assert getattr(make(most), field) == most
    step = type(least)(1) if isinstance(least, int) else type(least)("0.001")
    assert refused(make, least - step) == (place, "too-small", least)
    assert refused(make, most + step) == (place, "too-large", most)


@pytest.mark.parametrize(("kind", "field", "place", "most"), ABOVE_NOTHING, ids=named)
def test_a_figure_that_must_be_more_than_nothing_is_refused_at_nothing_and_past_its_most(
    kind: type, field: str, place: str, most: Any
) -> None:
    make = with_field(kind, field)
    assert getattr(make(most), field) == most
    assert refused(make, type(most)(0)) == (place, "not-above", 0)
    assert refused(make, most + type(most)("0.001")) == (place, "too-large", most)


def test_a_week_has_no_more_than_its_168_hours() -> None:
    """By hand: 7 days of 24 hours."""
    assert sample_workshop(hours_per_week=168).hours_per_week == 168
    with pytest.raises(Refused, match=r"workshop\.hours_per_week: too-large"):
        sample_workshop(hours_per_week=168.1)


def test_a_price_is_for_one_order_and_no_target_of_a_workshop() -> None:
    with pytest.raises(Refused, match="given: price-for-one-order"):
        Pricing(target=Target(given=Decimal(100)))


def test_of_three_targets_the_last_is_told_to_be_one_too_many() -> None:
    with pytest.raises(Refused, match="given: one-target"):
        Target(margin=0.1, markup=0.1, given=Decimal(5))


@pytest.mark.parametrize("field", ["stitches", "rows"])
def test_a_count_next_to_nothing_is_no_gauge(field: str) -> None:
    make = with_field(Reading, field)
    assert make(LEAST_COUNT)
    assert refused(make, LEAST_COUNT / 2) == (field, "too-small", LEAST_COUNT)


@pytest.mark.parametrize("field", ["yarn", "stitch"])
def test_a_swatch_says_of_which_yarn_and_stitch_it_is(field: str) -> None:
    with pytest.raises(Refused, match=f"{field}: missing"):
        sample_swatch(**{field: " "})


def test_a_tax_a_fee_and_a_delivery_that_say_no_figure_charge_nothing() -> None:
    assert Tax(registered=True).charged_rate == 0
    assert (Fee(name="Shop").rate, Fee(name="Shop").fixed) == (0, 0)
    assert (Delivery().charged, Delivery().paid, Delivery().packaging_g) == (0, 0, 0)
