"""A figure past its limit is told as its kind is: per cent, money, or in the maker's unit."""

from __future__ import annotations

import pytest

from quoting.core.ground.errors import Mistake
from quoting.core.ground.measures import Units
from quoting.core.ground.place import Document, at
from quoting.wording import mistake_sentence, speech_of
from tests.examples import sample_workshop


@pytest.mark.parametrize(
    ("place", "units", "read", "limit", "said"),
    [
        (at("blanket", "width"), Units.METRIC, 2000.0, 1000.0, "1,000\u00a0cm"),
        (at("blanket", "width"), Units.INCHES, 2540.0, 1000.0, "393.7\u00a0in"),
        (at("price", "discount"), Units.METRIC, 1.5, 0.99, "99% (0.99)"),
        (at("order", "quantity"), Units.METRIC, 2000, 1000, "1,000"),
        (at("extras", 1, "cost"), Units.METRIC, 2e9, 1e9, "£1,000,000,000"),
        (at("extras", 1, "metres"), Units.METRIC, 2e5, 1e5, "100,000\u00a0m"),
    ],
)
def test_a_limit_is_told_as_the_kind_at_its_place(
    place, units: Units, read: float, limit: float, said: str
) -> None:
    placed = Mistake(place, "too-large", {"read": read, "limit": limit}).within(Document.ORDER)
    assert said in mistake_sentence(placed, speech_of(sample_workshop(units=units)))


@pytest.mark.parametrize(
    ("place", "said"),
    [
        (at("minutes", "turn"), "10,000"),
        (at("workshop", "tail"), "10,000\u00a0cm"),
        (at("exchange", "EUR", "cushion"), "1,000,000% (10,000)"),
        (at("yarns", 1, "put_ups", 2, "grams"), "10,000\u00a0g"),
    ],
)
def test_a_limit_in_a_workshop_is_told_as_the_kind_at_its_place(place, said: str) -> None:
    placed = Mistake(place, "too-large", {"read": 20_000, "limit": 10_000})
    told = mistake_sentence(placed.within(Document.WORKSHOP), speech_of(sample_workshop()))
    assert said in told
