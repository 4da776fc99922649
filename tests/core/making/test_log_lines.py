"""What no line of a log may say, whatever the order."""

from __future__ import annotations

from decimal import Decimal

import pytest

from quoting.core.ground.errors import Refused
from quoting.core.making.log_lines import (
    MOST_LOT,
    MOST_REMARK,
    LogLine,
    Payment,
    Remark,
    Session,
    YarnTaken,
    YarnUsed,
)
from tests.core.making.logs import DAY, hook, paid, used


def wrong(make: type[LogLine], **facts: object) -> dict[str, str]:
    with pytest.raises(Refused) as refused:
        make(day=DAY, **facts)
    return {mistake.path: mistake.code for mistake in refused.value.mistakes}


def test_of_rows_both_the_first_and_the_last_are_told_or_neither() -> None:
    hooked = {"doing": hook(1, 2, 3).doing, "minutes": 30.0}
    assert wrong(Session, first_row=3, **hooked) == {"last_row": "missing"}
    assert wrong(Session, last_row=3, **hooked) == {"first_row": "missing"}
    assert hook(None, None, 30).rows == 0
    assert hook(4, 6, 30).rows == 3


@pytest.mark.parametrize(("first", "last"), [(0, 5), (-3, 5), (5, 4)])
def test_rows_begin_at_1_and_end_no_sooner_than_they_begin(first: int, last: int) -> None:
    facts = {"doing": hook(1, 2, 3).doing, "minutes": 30.0}
    assert set(wrong(Session, first_row=first, last_row=last, **facts).values()) == {"too-small"}


def test_yarn_used_is_told_in_grams_or_in_balls_of_a_weight() -> None:
    yarn = {"colour": "teal", "rows": 9}
    assert wrong(YarnUsed, **yarn) == {"grams": "missing"}
    assert wrong(YarnUsed, grams=5.0, balls=1, ball_g=50.0, **yarn) == {"grams": "missing"}
    assert wrong(YarnUsed, balls=2, **yarn) == {"ball_g": "missing"}
    assert YarnUsed(day=DAY, balls=2, ball_g=50, **yarn).used_g == 100
    assert used("teal", 12.5, 9).used_g == 12.5


def test_money_of_nothing_is_none() -> None:
    assert wrong(Payment, amount=Decimal(0), currency="GBP") == {"amount": "missing"}
    assert paid("-5").amount == -5


@pytest.mark.parametrize("text", ["", "  \n "])
def test_a_remark_says_something(text: str) -> None:
    assert wrong(Remark, text=text) == {"text": "missing"}


def test_a_remark_is_no_book() -> None:
    assert wrong(Remark, text="x" * (MOST_REMARK + 1)) == {"text": "too-long"}


@pytest.mark.parametrize(
    ("lot", "code"),
    [
        ("7" * (MOST_LOT + 1), "too-long"),
        ("7\0", "control-character"),
        ("7\n1", "control-character"),
    ],
)
def test_a_dye_lot_is_what_a_label_can_say(lot: str, code: str) -> None:
    assert wrong(YarnTaken, colour="teal", grams=100, lot=lot) == {"lot": code}
    assert YarnTaken(day=DAY, colour="teal", grams=100, lot="7" * MOST_LOT).lot
