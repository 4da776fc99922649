"""Yarn by colour, how sure it is, and what is bought for it."""

from __future__ import annotations

import math
from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from uncertainties import ufloat, umath  # type: ignore[import-untyped]

from quoting.core.estimate.estimate import ColourEstimate, Estimate, estimate_plan
from quoting.core.estimate.yarn_needed import StitchIn, relative_error, reserve
from quoting.core.order.order import Extra, Order
from quoting.core.plan.gauge import Sureness
from quoting.core.plan.plan import plan_order
from quoting.core.workshop.habits import Habits, Join
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import PutUp, Stock
from tests.examples import (
    band,
    plain_gauge,
    sample_design,
    sample_order,
    sample_workshop,
    sample_yarn,
    section,
)

HDC = plain_gauge(Stitch.HDC, 0.8, 0.95, basis_error=0.03)
SAME = plain_gauge(Stitch.DC, 0.8, 1.9, basis="moor aran/hdc", basis_error=0.03)
OTHER = plain_gauge(Stitch.SC, 0.7, 0.7, basis_error=0.01)


def estimated(order: Order | None = None, workshop: Workshop | None = None) -> Estimate:
    order, workshop = order or sample_order(), workshop or sample_workshop()
    return estimate_plan(plan_order(order, workshop), order, workshop)


def colour(name: str, found: Estimate) -> ColourEstimate:
    return next(one for one in found.colours if one.colour == name)


def test_kinds_on_one_swatch_err_together() -> None:
    """Reference: the uncertainties package, one factor that both kinds share."""
    shared = ufloat(1, 0.03) * ufloat(1, 0.05) * ufloat(1, 0.02)
    total = 10 * shared + 30 * shared
    error = relative_error({"hdc": 10, "dc": 30}, {"hdc": HDC, "dc": SAME}, 0.05)
    assert error == pytest.approx(total.s / total.n)


def test_kinds_on_their_own_swatches_err_apart() -> None:
    """Reference: the uncertainties package, each kind with a swatch of its own.

    Tension and label are one for both.
    """
    shared = ufloat(1, math.hypot(0.05, 0.02))
    total = 10 * ufloat(1, 0.03) * shared + 30 * ufloat(1, 0.01) * shared
    error = relative_error({"hdc": 10, "sc": 30}, {"hdc": HDC, "sc": OTHER}, 0.05)
    assert error == pytest.approx(total.s / total.n)


def test_a_guess_adds_its_own_error_in_squares() -> None:
    """Reference: the uncertainties package; 15 % at 95 % is a standard error of 15 / 1.96 %."""
    shared = umath.hypot(0, 1) * ufloat(1, math.hypot(0.03, 0.05, 0.02))
    guessed = replace(SAME, sureness=Sureness.ESTIMATED, guess_limits=0.15)
    total = 10 * shared + 30 * shared * ufloat(1, 0.15 / 1.96)
    error = relative_error({"hdc": 10, "dc": 30}, {"hdc": HDC, "dc": guessed}, 0.05)
    assert error == pytest.approx(total.s / total.n)


def test_a_borrowed_swatch_is_one_guess_for_all_the_stitches_of_a_yarn() -> None:
    """Reference: the uncertainties package: readings apart, the borrowing together."""
    shared = ufloat(1, math.hypot(0.05, 0.02, 0.15 / 1.96))
    total = 10 * ufloat(1, 0.03) * shared + 30 * ufloat(1, 0.01) * shared
    lent = {"hdc": replace(HDC, borrowed_limits=0.15), "sc": replace(OTHER, borrowed_limits=0.15)}
    error = relative_error({"hdc": 10, "sc": 30}, lent, 0.05)
    assert error == pytest.approx(total.s / total.n)


def test_a_second_swatch_does_not_make_tension_or_label_surer() -> None:
    """By hand: two exact swatches leave root(5^2 + 2^2) % = 5.39 %, at 1.645 a reserve of 8.9 %."""
    one = replace(HDC, basis_error=0.0)
    error = relative_error(
        {"hdc": 20, "sc": 20}, {"hdc": one, "sc": replace(OTHER, basis_error=0.0)}, 0.05
    )
    assert error == pytest.approx(math.hypot(0.05, 0.02))
    assert reserve(error, Habits()) == pytest.approx(0.0886, abs=5e-5)


def test_no_yarn_has_no_error() -> None:
    assert relative_error({}, {}, 0.05) == 0


def test_the_reserve_is_one_sided_and_an_allowance_replaces_it() -> None:
    """The one-sided 95 % and 99 % points of the normal distribution: 1.645, 2.326 (any table)."""
    assert reserve(0.1, Habits()) == pytest.approx(0.1645, abs=5e-5)
    assert reserve(0.1, Habits(confidence=0.99)) == pytest.approx(0.2326, abs=5e-5)
    assert reserve(0.1, Habits(confidence=0.5)) == pytest.approx(0)
    assert reserve(0.1, Habits(allowance=0.25)) == 0.25


def test_the_cot_blankets_teal_by_hand() -> None:
    """34 rows of 98 hdc and 2 chains; 50 m over 501.33 hdc; two tails; 20 m over at the join."""
    hdc_m = 50 / (480 + 64 / 3)
    chain_m = hdc_m / 3
    stitches_m = 34 * (98 * hdc_m + 2 * chain_m)
    carries_m = 33 * 2 * 0.95 * 1.1 / 100
    found = colour("teal", estimated())
    assert found.yarn.stitches_m == pytest.approx(stitches_m)
    assert found.bare_m == pytest.approx(stitches_m + carries_m + 0.3)
    assert found.metres == pytest.approx(stitches_m + carries_m + 0.6)
    assert found.grams == pytest.approx(found.metres / 2)
    assert found.metres_left == pytest.approx(400 - found.metres)


def test_a_colour_is_bought_with_its_reserve() -> None:
    """By hand: scale 1/root 12 of 25 g, tension 5 %, label 2 %, at 1.645; chains are a guess."""
    found = colour("teal", estimated())
    known = math.hypot(1 / math.sqrt(12) / 25, 0.05, 0.02)
    assert found.reserve == pytest.approx(1.6449 * known, rel=1e-4)
    assert found.metres_to_buy == pytest.approx(found.bare_m * (1 + found.reserve) + 0.3)
    assert found.choice.skeins == 2


def test_yarn_for_extras_is_bought_but_not_worked() -> None:
    fringe = Extra(what="Fringe", colour="teal", yarn_m=8)
    plain, fringed = estimated(sample_order(extras=())), estimated(sample_order(extras=(fringe,)))
    assert colour("teal", fringed).metres == pytest.approx(colour("teal", plain).metres + 8)
    assert fringed.ends == plain.ends


def test_a_colour_only_of_extras_is_bought_too() -> None:
    tassel = Extra(what="Tassels", colour="plum", yarn_m=8)
    found = colour("plum", estimated(sample_order(extras=(tassel,))))
    assert (found.metres, found.choice.skeins, found.walk.strands) == (8, 1, ())


def test_stock_that_is_enough_is_used_and_not_bought() -> None:
    held = sample_yarn(stock=(Stock(colour="teal", weight_g=200, lot="9"),))
    found = colour("teal", estimated(workshop=sample_workshop(yarns=(held,))))
    assert (found.choice.skeins, len(found.choice.stock)) == (0, 1)
    assert found.from_stock_g == pytest.approx(found.grams)


def test_stock_that_is_not_enough_stays_where_it_is_unless_lots_may_mix() -> None:
    assert colour("oat", estimated()).from_stock_g == 0
    mixed = estimated(sample_order(design=sample_design(mix_lots=True)))
    assert colour("oat", mixed).from_stock_g == pytest.approx(60, abs=0.2)
    assert colour("oat", mixed).balls_m[0] == 120


def test_at_an_edge_the_need_is_raised_until_the_work_gets_through() -> None:
    """By hand: a row of 30 takes 3.06 m and a ball has 4.7, so ten rows want ten balls.

    The chain takes 1.06 m and still leaves row 1 its 2.99. Joined anywhere, 31.6 m want seven.
    """
    short = PutUp(weight_g=2.5, length_m=5, price=Decimal("0.20"))
    habits = Habits(join=Join.AT_AN_EDGE, allowance=0)
    workshop = sample_workshop(yarns=(sample_yarn(put_ups=(short,), stock=()),), habits=habits)
    design = sample_design(
        stitches=30, border=(), first_rows=(), sections=(section("oat", repeats=10),)
    )
    found = estimated(sample_order(design=design, extras=()), workshop)
    one = colour("oat", found)
    assert one.walk.missing_m == 0
    assert one.choice.skeins == 10
    anywhere = replace(workshop, habits=Habits(allowance=0))
    assert estimated(sample_order(design=design, extras=()), anywhere).skeins == 7


def test_a_ball_ends_sooner_if_the_work_takes_more() -> None:
    (first, last) = colour("teal", estimated()).ball_ends
    assert first.soonest is not None
    assert first.expected is not None
    assert first.latest is not None
    assert first.soonest.pass_index < first.expected.pass_index < first.latest.pass_index
    assert last.expected is None


def test_two_blankets_take_twice_the_stitches() -> None:
    def teal(**changes: Any) -> ColourEstimate:
        return colour("teal", estimated(sample_order(**changes)))

    assert teal(quantity=2).yarn.stitches_m == pytest.approx(2 * teal().yarn.stitches_m)
    assert teal(quantity=2).bare_m == pytest.approx(2 * teal().bare_m)


def test_a_border_in_its_own_colour_is_yarn_of_its_own() -> None:
    found = estimated(sample_order(design=sample_design(border=(band(colour="plum"),))))
    assert [one.colour for one in found.colours] == ["oat", "teal", "rust", "plum"]
    assert colour("plum", found).yarn.counts == {StitchIn("sc"): 440, StitchIn("ch"): 8}


def test_every_blanket_takes_its_own_fringe() -> None:
    fringe = Extra(what="Fringe", colour="teal", yarn_m=8)
    found = colour("teal", estimated(sample_order(extras=(fringe,), quantity=2)))
    assert found.yarn.extras_m == 16


def test_a_fringe_comes_from_stock_where_nothing_is_bought() -> None:
    held = sample_yarn(stock=(Stock(colour="teal", weight_g=200),))
    fringe = Extra(what="Fringe", colour="teal", yarn_m=8)
    order = sample_order(extras=(fringe,))
    found = colour("teal", estimated(order, sample_workshop(yarns=(held,))))
    assert found.from_stock_g == pytest.approx(found.grams)
