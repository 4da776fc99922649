"""Each line of a log is told as a maker would tell it."""

from __future__ import annotations

from datetime import UTC, date, datetime
from decimal import Decimal

import pytest

from quoting.core.making.log_lines import (
    Doing,
    EndsWoven,
    LogLine,
    Moved,
    Payment,
    Remark,
    RowsReached,
    Session,
    Withdrawn,
    YarnTaken,
    YarnUsed,
)
from quoting.core.making.made_rows import made_rows
from quoting.core.order.stage import Stage
from quoting.wording.log_words import doing_words, log_words, minutes_words
from tests.examples import sample_quote
from tests.wording.speeches import DE, GB, UK_NAMES, US

DAY = date(2026, 11, 25)
STARTED = datetime(2026, 11, 25, 9, 10, tzinfo=UTC)
HOOK = Doing.AT_THE_HOOK
ROWS = made_rows(sample_quote())


def session(**told: object) -> Session:
    return Session(**({"day": DAY, "doing": HOOK, "minutes": 65} | told))  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("line", "said"),
    [
        (session(), "At the hook, 1 h 5 min"),
        (session(first_row=12, last_row=30), "At the hook, 1 h 5 min, rows 12 to 30"),
        (session(first_row=12, last_row=12, minutes=9), "At the hook, 9 min, row 12"),
        (RowsReached(day=DAY, rows=31), "31 rows done"),
        (
            YarnUsed(day=DAY, colour="teal", rows=25, balls=1, ball_g=100),
            "teal: 1 ball of 100 g used up, when 25 rows were done",
        ),
        (
            YarnUsed(day=DAY, colour="oat", rows=1, grams=38.5),
            "oat: 39 g used, when 1 row was done",
        ),
        (
            YarnTaken(day=DAY, colour="oat", grams=100, lot="771", cost=Decimal("4.60")),
            "oat: 100 g got for it, lot 771, £4.60 paid",
        ),
        (
            YarnTaken(day=DAY, colour="rust", grams=60, from_shelf=True),
            "rust: 60 g from the shelf",
        ),
        (EndsWoven(day=DAY, ends=1), "1 end woven in"),
        (Payment(day=DAY, amount=Decimal(50), currency="GBP"), "£50.00 received"),
        (Payment(day=DAY, amount=Decimal("-12.50"), currency="EUR"), "€12.50 paid back"),
        (Remark(day=DAY, text="Wider rust."), "Wider rust."),
        (
            Moved(stage=Stage.AGREED, before=Stage.QUOTED, quote="2026-001/2"),
            "From quoted to agreed, by quote 2026-001/2",
        ),
        (
            Moved(stage=Stage.ON_THE_HOOK, before=Stage.AGREED, why="the yarn came"),
            "From agreed to on the hook, the yarn came",
        ),
        (Withdrawn(), "Taken back"),
    ],
)
def test_a_line_is_told_in_words(line: LogLine, said: str) -> None:
    assert log_words(line, ROWS, UK_NAMES).replace("\u00a0", " ") == said


def test_a_session_by_the_clock_tells_when_it_began_here() -> None:
    here = f"{STARTED.astimezone():%H:%M}"
    assert f"from {here}" in log_words(session(started=STARTED), ROWS, GB)


def test_lines_are_told_in_the_words_and_the_numbers_of_the_workshop() -> None:
    used = YarnUsed(day=DAY, colour="ball", rows=1025, balls=2, ball_g=100)
    assert "ball: 2 skeins of" in log_words(used, ROWS, US)
    assert "1.025 rows" in log_words(used, ROWS, DE)
    assert doing_words(Doing.OFFICE, ROWS.quote, US).startswith("Admin")


def test_a_moment_at_the_hook_is_told_with_its_decimals() -> None:
    assert minutes_words(0.25, GB) == "0.25\u00a0min"
    assert minutes_words(42.5, GB) == "43\u00a0min"
