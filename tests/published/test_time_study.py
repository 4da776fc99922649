"""Times: rest, how many timings to take, predictions, and what pace is plausible."""

from __future__ import annotations

from decimal import Decimal
from statistics import fmean, pstdev

import pytest

from quoting.core.estimate.pace import Pace, Session, pace_of, readings_needed, timings_wanted
from quoting.core.estimate.stitching_time import basic_session
from quoting.core.ground.student_t import two_sided_t, within
from quoting.core.quote.quote import Quote
from quoting.core.workshop.selling import Pay
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Workshop
from tests.examples import sample_quote, sample_workshop
from tests.published.elements import normal_minutes


def resting(allowance: float) -> Workshop:
    rates = {"making_per_hour": Decimal(14), "office_per_hour": Decimal(14)}
    return sample_workshop(pay=Pay(**rates, rest_allowance=allowance))


def standard_minutes(basic: float, allowance: float) -> float:
    session = Timing(stitch="hdc", stitches=100, minutes=basic, hands_on=True)
    return basic_session(session, resting(allowance), "").minutes


def test_rest_as_a_share_of_the_day() -> None:
    """Heizer & Render, Operations Management, ch. 10.

    Means 9.5, 2.2, 1.5 min, rated 1.20, 1.05, 1.10: normal 15.36; with 15 % of the day for rest,
    standard 18.07. As an allowance added to the work that is 0.15 / 0.85.
    """
    normal = normal_minutes((1.20, 9.5), (1.05, 2.2), (1.10, 1.5))
    assert normal == pytest.approx(15.36)
    assert round(standard_minutes(normal, 0.15 / 0.85), 2) == 18.07


def test_rest_as_an_allowance_added() -> None:
    """ILO convention, teaching example: 30 s x 1.25 x 1.20 = 45.0 s."""
    assert standard_minutes(0.5 * 1.25, 0.20) == pytest.approx(0.75)


def test_how_many_timings_to_take() -> None:
    """ILO, Introduction to Work Study, example, from memory: 7, 6, 7, 7, 6 want 8.8, so 9.

    It has 2 for Student's t, and the deviation of the five readings themselves.
    """
    readings = [7, 6, 7, 7, 6]
    needed = readings_needed(pstdev(readings), fmean(readings), t=2, limits=0.05)
    assert round(needed, 1) == 8.8


def test_how_many_timings_to_take_by_another_risk() -> None:
    """Krajewski et al., Operations Management, supplement H: (1.96/0.04 x 0.0305/0.50)² is 8.93."""
    assert round(readings_needed(0.0305, 0.50, t=1.96, limits=0.04), 2) == 8.93


@pytest.mark.parametrize(
    ("studied", "mean", "deviation", "needed"), [(25, 0.30, 0.09, 153.3), (10, 0.30, 0.03, 20.5)]
)
def test_how_many_timings_to_take_after_a_few(
    studied: int, mean: float, deviation: float, needed: float
) -> None:
    """Niebel & Freivalds, Methods, Standards, and Work Design, time study, from memory.

    t of 24 degrees of freedom is 2.064 there, that of 9 is 2.262; ±5 % of the mean.
    """
    t = two_sided_t(0.95, studied - 1)
    assert readings_needed(deviation, mean, t=t, limits=0.05) == pytest.approx(needed, abs=0.1)


def test_what_is_there_already_is_not_wanted_again() -> None:
    """Ten readings of the mean 0.30 and the deviation 0.03 above want 21 in all."""
    apart = 0.03 * (9 / 10) ** 0.5
    assert timings_wanted([0.30 - apart, 0.30 + apart] * 5) == 21 - 10


def test_the_prediction_of_one_more() -> None:
    """Statistics course notes, after Hahn: mean 1312, s 25, n 10, 95 %: plus or minus 59."""
    pace = Pace(minutes_each=1312, counted=10, sessions=10, deviation=25)
    assert round(pace.predict(1).half_width) == 59


@pytest.mark.parametrize(
    ("freedom", "t_95", "t_99"),
    [
        (1, 12.706, 63.657),
        (2, 4.303, 9.925),
        (3, 3.182, 5.841),
        (4, 2.776, 4.604),
        (5, 2.571, 4.032),
        (6, 2.447, 3.707),
        (7, 2.365, 3.499),
        (8, 2.306, 3.355),
        (9, 2.262, 3.250),
        (10, 2.228, 3.169),
        (15, 2.131, 2.947),
        (20, 2.086, 2.845),
        (29, 2.045, 2.756),
        (30, 2.042, 2.750),
        (60, 2.000, 2.660),
        (120, 1.980, 2.617),
    ],
)
def test_students_t_is_that_of_the_tables(freedom: int, t_95: float, t_99: float) -> None:
    """Two-sided points of Student's t as in any statistics handbook's table, from memory."""
    assert two_sided_t(0.95, freedom) == pytest.approx(t_95, abs=5e-4)
    assert two_sided_t(0.99, freedom) == pytest.approx(t_99, abs=5e-4)


@pytest.mark.parametrize("t", [0.1, 1.0, 2.5, 40.0])
def test_students_t_has_its_closed_forms(t: float) -> None:
    """Textbook, for two and four: t/root(2 + t²), (1 + 2/(t² + 4)) t/root(t² + 4)."""
    assert within(t, 2) == pytest.approx(t / (2 + t * t) ** 0.5)
    assert within(t, 4) == pytest.approx((1 + 2 / (t * t + 4)) * t / (t * t + 4) ** 0.5)


def odd(stitches: int, minutes: float) -> bool:
    workshop = sample_workshop(timings=(Timing(stitch="hdc", stitches=stitches, minutes=minutes),))
    quote: Quote = sample_quote(workshop=workshop)
    return "odd-pace" in {caution.code for caution in quote.cautions}


@pytest.mark.parametrize(
    ("stitches", "minutes", "questioned"),
    [(18, 1, False), (20, 1, False), (31, 1, False), (33, 1, False), (5113, 30, True)],
)
def test_a_practised_pace_is_believed_and_a_record_questioned(
    stitches: int,
    minutes: float,
    questioned: bool,  # noqa: FBT001 - a parameter
) -> None:
    """Reported contest results: 18-20 a minute practised, 31-33 at contests; 2005's record."""
    assert odd(stitches, minutes) is questioned


def test_sessions_of_equal_length_give_the_textbook_variance() -> None:
    """Sample standard deviation of 2, 4, 4, 4, 5, 5, 7, 9: root(32 / 7) (textbook example)."""
    readings = (2, 4, 4, 4, 5, 5, 7, 9)
    pace = pace_of([Session(count=1, minutes=minutes) for minutes in readings])
    assert pace.minutes_each == 5
    assert pace.deviation == pytest.approx((32 / 7) ** 0.5)
