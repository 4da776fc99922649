"""A time of the day is read as it is written by hand, and shown as browsers have it."""

from __future__ import annotations

from datetime import time

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.schema.notation import FILE
from quoting.schema.time_of_day import TIME_OF_DAY


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("9:10", time(9, 10)),
        (" 09:10 ", time(9, 10)),
        ("21.05", time(21, 5)),
        ("9h10", time(9, 10)),
        ("9:10 pm", time(21, 10)),
        ("12:30 a.m.", time(0, 30)),
        ("12:30 PM", time(12, 30)),
        ("0:00", time(0, 0)),
    ],
)
def test_a_time_is_read_as_it_is_written(text: str, wanted: time) -> None:
    assert TIME_OF_DAY.parse(text, FILE) == wanted
    assert TIME_OF_DAY.parse(TIME_OF_DAY.show(wanted, FILE), FILE) == wanted
    assert TIME_OF_DAY.to_record(wanted) == f"{wanted:%H:%M}"


@pytest.mark.parametrize(
    "text", ["9", "25:00", "9:70", "13:00 pm", "0:10 am", "soon", "9:1", "-9:10"]
)
def test_what_is_no_time_is_refused(text: str) -> None:
    with pytest.raises(Refused) as refused:
        TIME_OF_DAY.parse(text, FILE)
    assert refused.value.mistakes[0].code == MistakeCode.WRONG_TYPE
    assert refused.value.mistakes[0].facts["wanted"] == "time"
