"""Every sum that is shown comes out on a calculator fed with the figures that are shown."""

from __future__ import annotations

import re
from dataclasses import replace
from decimal import Decimal
from itertools import product

import pytest

from quoting.core.ground.measures import Units
from quoting.core.ground.money import round_half_up, round_money
from quoting.core.price.cost_lines import Line, LineKind, Unit
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Pricing, Target, YarnCharged
from quoting.core.workshop.yarns import PutUp
from quoting.web.orders.reckonings import task_sum, yarn_sum
from quoting.web.orders.row_sums import rows_sum, stitches_sum
from quoting.wording import line_quantity, line_rate, speech_of
from tests.examples import (
    band,
    sample_design,
    sample_order,
    sample_quote,
    sample_swatch,
    sample_workshop,
    sample_yarn,
)

ROOM = re.compile(r"\(?([\d.]+)(?: − 2 × ([\d.]+)\))? / ([\d.]+) = room for ([\d.]+) \w+")
TASK = re.compile(r"([\d.,]+) × ([\d.]+) min = ([\d.,]+) min")
YARN = re.compile(
    r"([\d.,]+).(?:m|yd) in stitches, carries and tails, ([\d.]+)% in reserve"
    r"(?:, and (\d+) tails of ([\d.]+).(?:cm|in) for new skeins)?: ([\d.,]+).(?:m|yd) to have"
)


def quoted(width: float, height: float, units: Units) -> Quote:
    design = sample_design(width_cm=width, height_cm=height, border=(band(rounds=2),))
    swatch = sample_swatch()
    fine = replace(swatch, gauge=replace(swatch.gauge, stitches=17, rows=12.5))
    small = PutUp(weight_g=50, length_m=97, price=Decimal("3.15"))
    workshop = sample_workshop(
        units=units, swatches=(fine,), yarns=(sample_yarn(put_ups=(small,), stock=()),)
    )
    return sample_quote(sample_order(design=design), workshop)


QUOTES = [
    quoted(width, height, units)
    for (width, height), units in product([(80, 100), (91.44, 91.44), (33, 247)], Units)
]


def figures(pattern: re.Pattern[str], said: str) -> list[Decimal]:
    """Return the figures of a sum, nought where a part of it is left out."""
    found = pattern.fullmatch(said)
    assert found, said
    return [Decimal((figure or "0").replace(",", "")) for figure in found.groups()]


@pytest.mark.parametrize("quote", QUOTES, ids=lambda quote: str(quote.order.design.width_cm))
def test_stitches_and_rows_come_out_as_shown(quote: Quote) -> None:
    say = speech_of(quote.workshop)
    for said in (stitches_sum(quote, say), rows_sum(quote, say)):
        side, depth, each, room = figures(ROOM, said)
        assert round_half_up((side - 2 * depth) / each, 1) == room, said


@pytest.mark.parametrize("quote", QUOTES, ids=lambda quote: str(quote.order.design.width_cm))
def test_minutes_come_out_as_shown(quote: Quote) -> None:
    for task in quote.estimate.hours.tasks:
        said = task_sum(task, speech_of(quote.workshop))
        count, each, minutes = figures(TASK, said)
        assert round_half_up(count * each, 1) == minutes, said


@pytest.mark.parametrize("quote", QUOTES, ids=lambda quote: str(quote.order.design.width_cm))
def test_yarn_to_have_comes_out_as_shown(quote: Quote) -> None:
    say = speech_of(quote.workshop)
    a_length = Decimal(36) if say.inches else Decimal(100)
    for colour in quote.estimate.colours:
        said = yarn_sum(colour, say)
        bare, reserve, tails, tail, to_have = figures(YARN, said)
        length = bare * (1 + reserve / 100) + tails * tail / a_length
        assert abs(length - to_have) <= Decimal("0.51") * (1 if to_have >= 10 else Decimal("0.1"))


def test_a_gram_has_the_decimals_that_its_amount_needs() -> None:
    """150 g of 4.60 for 110 g: at 0.0418 they would be 6.27, and 352 g 14.71; by hand."""
    rate = Decimal("4.60") / 110
    for grams in (150, 352, 1999):
        amount = round_money(grams * rate, "GBP")
        line = Line(
            kind=LineKind.YARN,
            subject="oat",
            quantity=Decimal(grams),
            unit=Unit.GRAM,
            rate=rate,
            amount=amount,
        )
        shown = Decimal(line_rate(line, speech_of(sample_workshop())).removeprefix("£"))
        assert round_money(grams * shown, "GBP") == amount


def test_every_line_of_a_costing_comes_out_as_shown() -> None:
    pricing = Pricing(target=Target(margin=0.15), yarn_charged=YarnCharged.USED)
    odd = PutUp(weight_g=110, length_m=200, price=Decimal("4.60"))
    workshop = sample_workshop(pricing=pricing, yarns=(sample_yarn(put_ups=(odd,)),))
    say = speech_of(workshop)
    for line in sample_quote(workshop=workshop).lines:
        quantity = Decimal(line_quantity(line, say).replace(",", ""))
        rate = line_rate(line, say)
        share = Decimal(rate.removesuffix("%")) / 100 if rate.endswith("%") else None
        each = Decimal(rate.removeprefix("£")) if share is None else share
        assert round_money(quantity * each, "GBP") == line.amount, (line.kind, rate)
