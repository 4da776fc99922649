"""What a maker tells of a sitting, and the lines of the log that it comes to."""

from __future__ import annotations

from datetime import UTC, date, datetime, time
from typing import Any

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogLine,
    RowsReached,
    Session,
    YarnUsed,
)
from quoting.core.making.sitting import Consumed, Sitting, sitting_lines

DAY = date(2026, 11, 25)
STARTED = datetime(2026, 11, 25, 9, 10, tzinfo=UTC)


def lines(done: int = 30, started: datetime | None = None, **told: Any) -> tuple[LogLine, ...]:
    return sitting_lines(Sitting(day=DAY, **told), done=done, started=started)


def wrong(**told: Any) -> list[tuple[str, str]]:
    """Return the places and codes that a sitting is refused with."""
    with pytest.raises(Refused) as refused:
        lines(**told)
    return [(mistake.path, mistake.code.value) for mistake in refused.value.mistakes]


def test_rows_and_minutes_are_a_session_from_the_next_row_on() -> None:
    assert lines(rows=38, minutes=50, started=STARTED) == (
        Session(
            day=DAY,
            doing=Doing.AT_THE_HOOK,
            minutes=50,
            started=STARTED,
            first_row=31,
            last_row=38,
        ),
    )


def test_rows_without_minutes_are_rows_reached() -> None:
    assert lines(rows=38) == (RowsReached(day=DAY, rows=38),)


def test_minutes_without_further_rows_are_minutes_alone() -> None:
    alone = (Session(day=DAY, doing=Doing.AT_THE_HOOK, minutes=20),)
    assert lines(minutes=20) == lines(rows=30, minutes=20) == alone


def test_rows_told_beside_other_work_were_worked_before_it() -> None:
    assert lines(rows=38, minutes=20, doing=Doing.WEAVING_IN) == (
        Session(day=DAY, doing=Doing.WEAVING_IN, minutes=20),
        RowsReached(day=DAY, rows=38),
    )


def test_fewer_rows_are_told_where_some_were_pulled_back() -> None:
    assert lines(rows=25, pulled_back=True) == (RowsReached(day=DAY, rows=25),)
    assert lines(rows=25, pulled_back=True, minutes=12) == (
        Session(day=DAY, doing=Doing.AT_THE_HOOK, minutes=12),
        RowsReached(day=DAY, rows=25),
    )


def test_yarn_is_told_by_balls_or_grams_at_the_rows_that_are_done_then() -> None:
    used = (
        Consumed(colour="teal", amount=2, ball_g=100),
        Consumed(colour="oat", amount=38.5),
        Consumed(colour="rust", amount=0.5, ball_g=50),
        Consumed(colour="plum", ball_g=50),
        Consumed(colour="moss", amount=0),
    )
    assert lines(rows=30, used=used, ends=4) == (
        YarnUsed(day=DAY, colour="teal", rows=30, balls=2, ball_g=100),
        YarnUsed(day=DAY, colour="oat", rows=30, grams=38.5),
        YarnUsed(day=DAY, colour="rust", rows=30, grams=25),
        EndsWoven(day=DAY, ends=4),
    )


def test_a_time_of_the_day_to_another_is_told_in_minutes() -> None:
    (session,) = lines(begun=time(9, 10), ended=time(10, 5))
    assert isinstance(session, Session)
    assert session.minutes == 55


def test_minutes_beside_the_times_leave_the_pauses_out() -> None:
    (session,) = lines(begun=time(9, 10), ended=time(10, 5), minutes=40)
    assert isinstance(session, Session)
    assert session.minutes == 40
    assert wrong(begun=time(9, 10), ended=time(10, 5), minutes=56) == [("minutes", "too-large")]
    assert lines(begun=time(9, 10), minutes=40) == lines(minutes=40)


@pytest.mark.parametrize(
    ("told", "place", "code"),
    [
        ({"minutes": 0}, "minutes", MistakeCode.NOT_ABOVE),
        ({"minutes": 40 * 60}, "minutes", MistakeCode.TOO_LARGE),
        ({"begun": time(10, 5), "ended": time(9, 10)}, "ended", MistakeCode.ENDS_BEFORE_IT_BEGINS),
        ({"begun": time(10, 5), "ended": time(10, 5)}, "ended", MistakeCode.ENDS_BEFORE_IT_BEGINS),
        ({"begun": time(10, 5)}, "ended", MistakeCode.MISSING),
        ({"ended": time(10, 5)}, "begun", MistakeCode.MISSING),
        ({"rows": 29}, "rows", MistakeCode.ROWS_GO_BACK),
        ({"rows": -1}, "rows", MistakeCode.TOO_SMALL),
        ({"ends": -1}, "ends", MistakeCode.TOO_SMALL),
        ({}, "rows", MistakeCode.NOTHING_WRITTEN),
        ({"rows": 30, "ends": 0}, "rows", MistakeCode.NOTHING_WRITTEN),
    ],
)
def test_what_cannot_be_is_refused_at_its_place(
    told: dict[str, Any], place: str, code: MistakeCode
) -> None:
    assert wrong(**told) == [(place, code.value)]


@pytest.mark.parametrize(
    "told", [{"amount": -1}, {"amount": 101, "ball_g": 100}, {"amount": 1, "ball_g": 0}]
)
def test_yarn_that_cannot_be_used_up_is_refused(told: dict[str, float]) -> None:
    with pytest.raises(Refused):
        Consumed(colour="teal", **told)
