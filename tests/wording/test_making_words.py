"""What is said of an order that is made, and of what it teaches."""

from __future__ import annotations

from dataclasses import replace
from datetime import date
from decimal import Decimal

import pytest

from quoting.core.estimate.skeins import Bought, SkeinChoice
from quoting.core.making.made_rows import made_rows
from quoting.core.making.progress import progress_of
from quoting.core.making.yarn_left import YarnLeft, yarn_left
from quoting.core.order.design import EndsBecome
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.workshop.timings import Timing
from quoting.wording.learnt_words import end_words, swatch_words, timing_words
from quoting.wording.making_words import (
    balls_words,
    ends_done_words,
    next_row_words,
    off_words,
    projected_words,
    rows_again_words,
    rows_done_words,
    yarn_left_words,
    yarn_ratio_words,
)
from tests.constructed import constructed_quote, from_centre, squares
from tests.core.making.logs import log, reached, used
from tests.examples import LARGE, SMALL, WOOL, sample_order, sample_quote, sample_swatch
from tests.wording.speeches import DE, UK_NAMES, US

QUOTE = sample_quote()
ROWS = made_rows(QUOTE)
SAY = UK_NAMES
PLAN = QUOTE.plan


def plain(said: str) -> str:
    return said.replace("\u00a0", " ")


@pytest.fixture(scope="module")
def left() -> YarnLeft:
    """Return the yarn that is left of the first colour after 20 rows."""
    return yarn_left(QUOTE, log(reached(20)))[0]


def bought(put_up: object = SMALL, packs: int = 1) -> SkeinChoice:
    return SkeinChoice(bought=(Bought(put_up=put_up, packs=packs),))  # type: ignore[arg-type]


def short(left: YarnLeft, lasting: int, to_come: int, lot: str = "771") -> YarnLeft:
    """Return the same with so many rows that it lasts for, and one ball to buy."""
    had = replace(left.had, lot=lot)
    return replace(
        left, rows_lasting=lasting, rows_to_come=to_come, to_buy=bought(), had=had, colour="teal"
    )


def test_how_far_it_is_and_what_comes_next_are_told_as_a_maker_counts() -> None:
    progress = progress_of(QUOTE, log(reached(20)))
    share = round(100 * 20 / ROWS.all)
    assert plain(rows_done_words(progress, PLAN, SAY)) == (
        f"20 of {ROWS.all} rows and rounds done, {share}%"
    )
    assert next_row_words(ROWS, 20, SAY).startswith("Next: row 21, ")
    assert next_row_words(ROWS, ROWS.all, SAY) == "All rows are done."
    done = ends_done_words(progress, EndsBecome.WOVEN_IN, SAY)
    assert done == f"0 of {QUOTE.estimate.ends} ends woven in."


def test_of_several_blankets_the_next_row_says_of_which() -> None:
    rows = made_rows(sample_quote(sample_order(quantity=2)))
    assert "row 1 of blanket 2, " in next_row_words(rows, rows.of_one, SAY)


def test_yarn_that_runs_out_says_how_far_and_what_to_buy_now(left: YarnLeft) -> None:
    assert plain(yarn_left_words(short(left, 18, 31), PLAN, SAY)) == (
        "You can work 18 more rows in teal; you need 31: buy 1 ball of 100 g of lot 771 now."
    )
    assert "1 more row in teal" in yarn_left_words(short(left, 1, 31), PLAN, SAY)
    assert "1 ball of 100\u00a0g now" in yarn_left_words(
        short(left, 18, 31, lot=""), QUOTE.plan, SAY
    )


def test_yarn_that_only_just_does_is_to_be_bought_to_be_sure(left: YarnLeft) -> None:
    assert "only just: buy 1 ball" in yarn_left_words(short(left, 31, 31), PLAN, SAY)


def test_yarn_that_does_says_what_will_be_left(left: YarnLeft) -> None:
    enough = replace(left, to_buy=SkeinChoice(), rows_to_come=31)
    assert "in hand does for the 31 rows to come; about " in yarn_left_words(
        enough, QUOTE.plan, SAY
    )
    done = replace(left, to_buy=SkeinChoice(), rows_to_come=0)
    assert "are done; about " in yarn_left_words(done, PLAN, SAY)


def test_yarn_is_held_against_the_plan_only_once_it_was_told(left: YarnLeft) -> None:
    assert yarn_ratio_words(left, ROWS, SAY) == ""
    planned_g = left.planned.reach_m[20] / left.metres_per_gram
    for times, said in ((1.25, "25% more than"), (0.5, "50% less than"), (1.0, "As planned")):
        told = log(reached(20), used(left.colour, planned_g * times, 20))
        (more, *_) = yarn_left(QUOTE, told)
        assert said in yarn_ratio_words(more, ROWS, SAY)


def test_balls_are_told_as_they_are_sold() -> None:
    pack = replace(SMALL, pack=10)
    assert plain(balls_words(bought(packs=2), SAY)) == "2 balls of 100 g"
    assert plain(balls_words(bought(packs=2), DE)) == "2 skeins of 100 g"
    assert plain(balls_words(bought(pack), SAY)) == "1 pack of 10 × 100 g"
    both = SkeinChoice(bought=(Bought(put_up=LARGE, packs=1), Bought(put_up=SMALL, packs=1)))
    assert plain(balls_words(both, SAY)) == "1 ball of 400 g and 1 ball of 100 g"


@pytest.mark.parametrize(
    ("more", "share", "said"),
    [
        (Decimal(1), 0.17, "2 h more, 17%"),
        (Decimal(-1), -0.17, "2 h less, 17%"),
        (Decimal(0), 0.0, "as estimated"),
        (Decimal(1), None, "2 h more"),
    ],
)
def test_how_far_off_an_estimate_was_is_told_in_words(
    more: Decimal, share: float | None, said: str
) -> None:
    assert off_words("2 h", more, share, SAY) == said


def test_rows_that_were_worked_again_are_told() -> None:
    assert rows_again_words(ROWS, 18, 33, SAY) == "rows 18 to 33 worked again"
    assert rows_again_words(ROWS, 18, 18, SAY) == "row 18 worked again"


def test_what_was_learnt_is_told_item_by_item() -> None:
    day = date(2026, 11, 25)
    timing = Timing(stitch="hdc", stitches=1960, minutes=82, yarn=WOOL, day=day)
    assert plain(timing_words(timing, SAY)) == (
        "1,960 htr in moor aran in 1 h 22 min, 25 November 2026"
    )
    for_all = replace(timing, yarn=None, day=None)
    assert plain(timing_words(for_all, SAY)) == "1,960 htr in 1 h 22 min"
    assert plain(end_words(2.456, EndsBecome.WOVEN_IN, SAY)) == "an end woven in took 2.46 min"
    assert plain(swatch_words(sample_swatch(), SAY)) == (
        "htr in moor aran, its tension as measured before"
    )
    assert "gauge" in swatch_words(sample_swatch(), US)


def test_rows_that_were_not_written_down_are_said_to_be_reckoned_at_the_pace_of_the_others() -> (
    None
):
    reckoned = "reckoned at the pace of the others."
    assert projected_words((), ROWS, SAY) == ""
    assert projected_words((4,), ROWS, SAY) == f"1 row was not written down: it is {reckoned}"
    said = projected_words(range(3, ROWS.all + 1), ROWS, SAY)
    rows = f"{len(PLAN.rows) - 2} rows and 1 border round"
    assert said == f"{rows} were not written down: they are {reckoned}"


def test_what_was_not_written_down_goes_by_the_names_of_its_construction() -> None:
    rounds = made_rows(constructed_quote(from_centre()))
    assert projected_words((1, 2, 3), rounds, SAY).startswith("3 rounds were not")
    motifs = made_rows(constructed_quote(squares(JoinMethod.SINGLE_CROCHET)))
    said = projected_words(range(3, motifs.all + 1), motifs, SAY)
    assert said.startswith("10 motifs, 5 seams and 1 border round were not written down: they")
