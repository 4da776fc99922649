"""What a few readings foretell: predictions and points of Student's t from handbooks."""

from __future__ import annotations

import pytest

from quoting.core.estimate.pace import Pace
from quoting.core.ground.student_t import two_sided_t


def test_the_twenty_third_specimen() -> None:
    """Montgomery & Runger, *Applied Statistics and Probability for Engineers*, example 8-8.

    Of 22 loads at failure the mean is 13.71 and s 3.55: the next is between 6.16 and 21.26.
    """
    span = Pace(minutes_each=13.71, counted=22, sessions=22, deviation=3.55).predict(1)
    assert (round(span.low, 2), round(span.high, 2)) == (6.16, 21.26)


def test_the_sixth_circuit_pack() -> None:
    """Hahn & Meeker, *Statistical Intervals*, the circuit packs (from memory).

    Of five voltages the mean is 50.10 and s 1.31: the next is within 3.98 of it, by t 2.776.
    """
    span = Pace(minutes_each=50.10, counted=5, sessions=5, deviation=1.31).predict(1)
    assert round(span.half_width, 2) == 3.98


def test_students_t_of_many_readings() -> None:
    """NIST/SEMATECH e-Handbook, 1.3.5.2: for 195 readings of a flow meter, 1.9723 (from memory)."""
    assert two_sided_t(0.95, 195 - 1) == pytest.approx(1.9723, abs=5e-5)


@pytest.mark.parametrize(
    ("freedom", "t"),
    [(1, 12.71), (2, 4.30), (3, 3.18), (4, 2.78), (5, 2.57), (10, 2.23), (50, 2.01)],
)
def test_students_t_of_the_guide(freedom: int, t: float) -> None:
    """JCGM 100, table G.2, fraction p of 95 % (from memory)."""
    assert round(two_sided_t(0.95, freedom), 2) == t
