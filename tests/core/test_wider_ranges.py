"""Ranges as wide as a workshop has them told: of hours, of yarn, and of the reserve."""

from __future__ import annotations

from dataclasses import replace

import pytest

from exports.records.quote_record import quote_record
from quoting.core.estimate.yarn_range import grams_range
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.ranges import MOST_WIDENED, Ranges
from tests.examples import sample_quote, sample_workshop

PLAIN = sample_quote()


@pytest.mark.parametrize("factor", [0.99, 0, -1, MOST_WIDENED + 0.01, float("inf"), float("nan")])
def test_no_range_is_made_narrower_or_wider_than_says_anything(factor: float) -> None:
    for key in ("hours", "yarn"):
        with pytest.raises(Refused) as refused:
            Ranges(**{key: factor})
        (mistake,) = refused.value.mistakes
        assert mistake.path == key
        assert mistake.code in set(MistakeCode)


def test_the_half_width_of_all_hours_is_widened_and_its_tasks_stay() -> None:
    wide = sample_quote(None, sample_workshop(ranges=Ranges(hours=1.5))).estimate.hours
    was = PLAIN.estimate.hours
    assert wide.total == was.total
    assert wide.span.half_width == pytest.approx(1.5 * was.span.half_width)
    assert wide.tasks == was.tasks


def test_the_ready_by_day_follows_the_wider_hours() -> None:
    wide = sample_quote(None, sample_workshop(ranges=Ranges(hours=3)))
    assert wide.ready_by > PLAIN.ready_by


def test_the_reserve_and_the_balls_follow_the_wider_yarn() -> None:
    wide = sample_quote(None, sample_workshop(ranges=Ranges(yarn=4)))
    for colour, was in zip(wide.estimate.colours, PLAIN.estimate.colours, strict=True):
        assert colour.reserve == pytest.approx(4 * was.reserve)
        assert colour.choice.skeins >= was.choice.skeins
    assert wide.estimate.skeins > PLAIN.estimate.skeins


def test_an_allowance_of_the_makers_own_stays_as_it_is() -> None:
    shop = sample_workshop(habits=Habits(allowance=0.1), ranges=Ranges(yarn=2))
    assert {colour.reserve for colour in sample_quote(None, shop).estimate.colours} == {0.1}


def test_the_range_of_a_colours_grams_lies_round_what_is_expected() -> None:
    """By hand: 1.96 standard uncertainties of what is worked; an extra's yarn is given."""
    for colour in PLAIN.estimate.colours:
        found = grams_range(colour)
        assert (found.low + found.high) / 2 == pytest.approx(colour.grams)
        assert found.high / colour.grams - 1 == pytest.approx(1.96 * colour.yarn.error, rel=1e-4)


def test_no_colour_takes_less_than_nothing() -> None:
    wide = sample_quote(None, sample_workshop(ranges=Ranges(yarn=50)))
    assert {grams_range(colour).low for colour in wide.estimate.colours} == {0.0}


def test_the_record_says_how_wide_the_ranges_are_and_between_what_the_yarn_lies() -> None:
    shop = replace(sample_workshop(), ranges=Ranges(hours=1.5, yarn=1.25))
    record = quote_record(sample_quote(None, shop))
    assert record["hours"]["widened_by"] == 1.5  # type: ignore[index]
    yarn = record["yarn"][0]  # type: ignore[index]
    assert yarn["widened_by"] == 1.25
    assert yarn["grams_low"] < yarn["grams"] < yarn["grams_high"]
