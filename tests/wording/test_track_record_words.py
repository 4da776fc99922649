"""How good quotes were, in sentences that say no more than the figures do."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from quoting.core.making.bias import bias_of
from quoting.core.making.coverage import Coverage
from quoting.core.making.outturn import Outturn
from quoting.core.making.widening import Method, Widening
from quoting.core.workshop.ranges import MOST_WIDENED, Ranges
from quoting.wording import (
    Speech,
    bias_sentences,
    coverage_sentence,
    hours_widened_words,
    outturn_words,
    ranges_words,
    widening_sentence,
    yarn_widened_words,
)

SAY = Speech(locale="en_GB")


def of(*real: float) -> Sequence[Outturn]:
    return [Outturn(stated=100, real=each, half_width=5) for each in real]


def test_a_bias_that_is_shown_is_told_with_its_limits_and_its_spread() -> None:
    said = bias_sentences(bias_of(of(108, 109, 110, 109, 108, 110)), "hours", SAY)
    assert said == (
        "Over 6 finished orders your hours came to 9% more than quoted (8.1 to 9.9%).",
        "Single orders lie about 0.9% to either side of that.",
    )


def test_less_than_quoted_is_told_as_less() -> None:
    said, *_ = bias_sentences(bias_of(of(92, 91, 90, 91, 92, 90)), "yarn", SAY)
    assert said == "Over 6 finished orders your yarn came to 9% less than quoted (8.1 to 9.9%)."


def test_what_may_be_chance_is_said_to_be_and_few_orders_to_say_little() -> None:
    said = bias_sentences(bias_of(of(95, 108)), "hours", SAY)
    assert said[0].endswith("(81% less to 84% more).")
    assert said[1] == "That may be chance: nought lies within these limits."
    assert said[-1] == "So few orders say little: the next may be quite otherwise than these 2."


def test_of_one_order_no_limits_are_told() -> None:
    assert bias_sentences(bias_of(of(109)), "hours", SAY) == (
        "1 finished order took 9% more hours than quoted. One says nothing yet of the next.",
    )
    assert bias_sentences(bias_of(of(100)), "yarn", SAY)[0].startswith(
        "1 finished order took as much yarn as quoted."
    )


@pytest.mark.parametrize(
    ("inside", "cases", "said"),
    [
        (8, 10, "8 of 10 orders: in the long run that may be 44 to 97% of them, so that the 95%"),
        (2, 10, "2.5 to 56% of them, and 95% is meant. The ranges were too narrow."),
        (200, 200, "98 to 100% of them. The ranges were wider than the 95% that is meant."),
        (1, 1, "1 of 1 order: in the long run that may be 2.5 to 100% of them"),
    ],
)
def test_how_often_ranges_held_is_told_with_what_that_says(
    inside: int, cases: int, said: str
) -> None:
    assert said in coverage_sentence(Coverage(inside=inside, cases=cases), "hours", SAY)


def widening(factor: float, present: float = 1.0, method: Method = Method.STUDENT_T) -> Widening:
    return Widening(factor=factor, present=present, cases=7, method=method, is_needed=True)


def test_what_would_do_is_told_with_what_it_rests_on_and_what_there_is() -> None:
    assert widening_sentence(widening(1.45), "hours", SAY) == (
        "To hold 19 times in 20, the range of hours has to be 1.45 times as wide as measured "
        "(foretold from 7 orders by Student's t, as so few are). Now it is told as measured."
    )
    by_rank = widening_sentence(widening(1.2, 1.5, Method.ORDER_STATISTIC), "yarn", SAY)
    assert "as far as these 7 orders missed, whatever their spread" in by_rank
    assert by_rank.endswith("Now it is 1.5 times as wide.")


def test_a_factor_that_the_workshop_has_is_said_to_be_there() -> None:
    said = widening_sentence(widening(1.5, 1.5), "hours", SAY)
    assert said == "Your range of hours is 1.5 times as wide as measured, which is what they ask."


def test_ranges_that_nothing_can_mend_are_told() -> None:
    said = widening_sentence(widening(MOST_WIDENED), "hours", SAY)
    assert said.startswith("No range of hours that says anything would have held them")


def test_how_one_figure_turned_out() -> None:
    assert outturn_words(of(104)[0], SAY) == "4% more, within"
    assert outturn_words(of(88)[0], SAY) == "12% less, outside"
    assert outturn_words(Outturn(stated=100, real=100), SAY) == "as quoted"


def test_wider_ranges_are_told_and_others_are_not_spoken_of() -> None:
    assert (hours_widened_words(1.0, SAY), yarn_widened_words(1.0, SAY)) == ("", "")
    assert "1.45 times as wide" in hours_widened_words(1.45, SAY)
    assert "2 times as far off" in yarn_widened_words(2.0, SAY)
    assert ranges_words(Ranges(), SAY) == "as wide as measured"
    assert ranges_words(Ranges(hours=1.5), SAY) == (
        "1.5 times as wide as measured for hours, 1 times for yarn"
    )
