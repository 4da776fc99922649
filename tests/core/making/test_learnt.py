"""What an order that was made teaches the workshop, and what the next estimate makes of it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from quoting.core.making.learnt import Learnt, learnt_from, with_learnt
from quoting.core.making.log_lines import Doing, LogLine
from quoting.core.making.made_rows import made_rows
from quoting.core.order.order import Extra
from quoting.core.plan.gauge import Made, gauge_of
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Stitch
from quoting.core.workshop.swatches import Run
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Pattern, Workshop
from tests.core.making.logs import DAY, hook, log, spent, used, woven
from tests.examples import (
    WOOL,
    sample_design,
    sample_minutes,
    sample_order,
    sample_quote,
    sample_swatch,
    sample_workshop,
    sample_yarn,
)

QUOTE = sample_quote()
ROWS = made_rows(QUOTE).all
SHOP = QUOTE.workshop
GRAMS = {colour.colour: colour.grams for colour in QUOTE.estimate.colours}


def learnt(*lines: LogLine, shop: Workshop = SHOP, quote: Quote = QUOTE) -> Learnt:
    return learnt_from(quote, log(*lines), shop)


def all_used(times: float = 1.0) -> list[LogLine]:
    return [used(colour, times * grams, ROWS) for colour, grams in GRAMS.items()]


def test_nothing_told_teaches_nothing() -> None:
    assert learnt().is_nothing
    assert with_learnt(SHOP, learnt()) == SHOP


def test_each_session_is_a_timing_of_its_own_day() -> None:
    timings = learnt(hook(2, 11, 55), hook(12, 21, 60)).timings
    assert [timing.day for timing in timings] == [DAY, DAY]
    assert timings[0].stitches == timings[1].stitches
    assert timings[0].minutes < timings[1].minutes
    assert all(round(timing.minutes, 2) == timing.minutes for timing in timings)


def test_what_is_taken_in_stands_beside_what_was_there() -> None:
    new = learnt(hook(2, 11, 55), *all_used(1.1), spent(Doing.WEAVING_IN, 30), woven(10))
    shop = with_learnt(SHOP, new)
    assert shop.timings[: len(SHOP.timings)] == SHOP.timings
    assert shop.swatches[: len(SHOP.swatches)] == SHOP.swatches
    assert shop.minutes.weave_in_end == (2.5, 3)


def test_what_was_taken_in_is_not_offered_again() -> None:
    lines = (hook(2, 11, 55), *all_used(1.1), spent(Doing.WEAVING_IN, 30), woven(10))
    shop = with_learnt(SHOP, learnt(*lines))
    assert learnt(*lines, shop=shop).is_nothing


def test_what_was_not_chosen_is_offered_again() -> None:
    lines = (hook(2, 11, 55), hook(12, 21, 60))
    first, second = learnt(*lines).timings
    shop = with_learnt(SHOP, Learnt(timings=(second,)))
    assert learnt(*lines, shop=shop).timings == (first,)


def test_of_two_sessions_alike_each_is_offered_once() -> None:
    lines = (hook(2, 11, 55), hook(12, 21, 55))
    one, other = learnt(*lines).timings
    assert one == other
    shop = with_learnt(SHOP, Learnt(timings=(one,)))
    assert learnt(*lines, shop=shop).timings == (other,)
    assert learnt(*lines, shop=with_learnt(shop, Learnt(timings=(other,)))).is_nothing


def test_slow_sessions_make_the_next_estimate_of_the_same_order_longer() -> None:
    shop = with_learnt(SHOP, learnt(hook(1, ROWS, 900)))
    assert sample_quote(workshop=shop).estimate.hours.total > QUOTE.estimate.hours.total


def test_even_sessions_narrow_the_range_of_the_next_estimate() -> None:
    sessions = [hook(10 * n + 2, 10 * n + 11, 55 + n % 2) for n in range(8)]
    hours = sample_quote(workshop=with_learnt(SHOP, learnt(*sessions))).estimate.hours
    assert hours.span.half_width < QUOTE.estimate.hours.span.half_width


def test_more_yarn_than_planned_is_a_swatch_of_as_much_more_yarn_in_a_stitch() -> None:
    (swatch,) = learnt(*all_used(1.1)).swatches
    assert (swatch.yarn, swatch.stitch, swatch.day) == (WOOL, "hdc", DAY)
    assert swatch.run is not None
    planned_m = QUOTE.plan.gauges[Made(WOOL, "hdc")].yarn_m
    assert swatch.run.length_cm == pytest.approx(110 * planned_m * 100, abs=0.1)


def test_the_yarn_of_extras_is_in_no_stitch() -> None:
    """Used just as planned, the 30 m that tassels were given leave a stitch as it was."""
    tassels = Extra(what="Tassels", cost=Decimal(0), colour="rust", yarn_m=30)
    quote = sample_quote(sample_order(extras=(tassels,)))
    lines = [used(some.colour, some.grams, ROWS) for some in quote.estimate.colours]
    run = only_run(learnt(*lines, quote=quote))
    planned_m = quote.plan.gauges[Made(WOOL, "hdc")].yarn_m
    assert run.length_cm == pytest.approx(100 * planned_m * 100, abs=0.1)
    before_them = used("rust", 100, 60)
    assert only_run(learnt(before_them, quote=quote)) == only_run(learnt(before_them))


def only_run(taught: Learnt) -> Run:
    """Return the counted run of the only swatch."""
    (swatch,) = taught.swatches
    assert swatch.run is not None
    return swatch.run


def test_a_kitchen_scale_leaves_it_as_unsure_as_a_gram_of_what_was_used() -> None:
    (swatch,) = learnt(used("teal", 50, 31)).swatches
    assert swatch.run is not None
    assert swatch.run.ruler_step_cm / swatch.run.length_cm == pytest.approx(1 / 50, rel=0.01)


@pytest.mark.parametrize("grams", [0.05, 0.5])
def test_a_swatch_of_next_to_no_yarn_is_as_unsure_as_swatches_can_be(grams: float) -> None:
    (swatch,) = learnt(used("teal", grams, 3)).swatches
    assert swatch.run is not None
    assert 0.1 <= swatch.run.ruler_step_cm <= 100


def test_no_yarn_to_speak_of_is_no_swatch() -> None:
    assert learnt(used("teal", 0.0001, 90)).swatches == ()


def test_the_gauge_stays_that_of_the_swatches() -> None:
    other = sample_swatch(gauge=replace(sample_swatch().gauge, width_cm=13.2, height_cm=11.0))
    for swatches in ((sample_swatch(),), (sample_swatch(), other)):
        shop = sample_workshop(swatches=swatches)
        quote = sample_quote(workshop=shop)
        after = with_learnt(shop, learnt(*all_used(1.2), shop=shop, quote=quote))
        before = gauge_of(shop, WOOL, "hdc")
        now = gauge_of(after, WOOL, "hdc")
        assert (now.width_cm, now.height_cm) == pytest.approx((before.width_cm, before.height_cm))
        assert now.yarn_m > before.yarn_m


def test_a_stitch_without_a_swatch_gets_none() -> None:
    """The border's sc is reckoned from hdc, and nobody measured its gauge."""
    assert {swatch.stitch for swatch in learnt(*all_used()).swatches} == {"hdc"}
    assert learnt(*all_used(), shop=sample_workshop(swatches=())).swatches == ()


def test_yarn_that_was_not_told_of_is_no_swatch() -> None:
    assert learnt(used("pink", 40, 30)).swatches == ()
    assert learnt(used("teal", 40, 0)).swatches == ()


def test_what_the_workshop_no_longer_has_is_left_out() -> None:
    moss = Pattern(name="moss", like=Stitch.SC)
    with_moss = sample_workshop(
        patterns=(moss,), timings=(Timing(stitch="moss", stitches=100, minutes=5),)
    )
    quote = sample_quote(sample_order(design=sample_design(stitch="moss")), with_moss)
    lines = (hook(2, 11, 55),)
    assert {t.stitch for t in learnt(*lines, shop=with_moss, quote=quote).timings} == {"moss"}
    assert learnt(*lines, quote=quote).timings == ()
    renamed = sample_workshop(yarns=(sample_yarn(name="fell aran"),), swatches=(), timings=_named())
    assert learnt(*lines, shop=renamed).timings == ()


def _named() -> tuple[Timing, ...]:
    return (Timing(stitch="hdc", stitches=100, minutes=5, yarn="fell aran"),)


def test_minutes_that_were_never_given_begin_with_what_was_timed() -> None:
    shop = sample_workshop(minutes=sample_minutes(weave_in_end=None))
    new = learnt(spent(Doing.WEAVING_IN, 20), woven(6), shop=shop)
    assert new.end_minutes == (3.33,)
    assert with_learnt(shop, new).minutes.weave_in_end == (3.33,)
