"""A sitting is typed as its shape says: every field of it once, and read again as it was shown."""

from __future__ import annotations

from dataclasses import fields
from datetime import date, time

import pytest

from quoting.core.making.log_lines import Doing
from quoting.core.making.sitting import Consumed, Sitting
from quoting.schema.shape import Shape
from quoting.schema.sitting_shape import CONSUMED, SITTING
from tests.schema.notations import TYPED, as_record, as_sent, from_record, from_sent

WHOLE = Sitting(
    day=date(2026, 11, 25),
    rows=31,
    doing=Doing.WEAVING_IN,
    minutes=42.5,
    begun=time(9, 10),
    ended=time(10, 5),
    ends=4,
    used=(Consumed(colour="teal", amount=1.5, ball_g=100), Consumed(colour="oat", amount=38.5)),
    pulled_back=True,
)


@pytest.mark.parametrize("shape", [SITTING, CONSUMED])
def test_every_field_is_in_the_shape_once(shape: Shape[object]) -> None:
    described = [key.field for key in shape.keys]
    assert sorted(described) == sorted(item.name for item in fields(shape.value))  # type: ignore[arg-type]


@pytest.mark.parametrize("sitting", [WHOLE, Sitting(day=date(2026, 11, 25))])
def test_a_sitting_is_the_same_after_a_form_and_a_record(sitting: Sitting) -> None:
    for notation in TYPED.values():
        assert from_sent(SITTING, as_sent(SITTING, sitting, notation), notation) == sitting
    assert from_record(SITTING, as_record(SITTING, sitting)) == sitting
