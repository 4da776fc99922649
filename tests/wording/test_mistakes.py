"""What is said of a mistake: a limit that will do, in the unit of its place."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest

from quoting.core.ground.errors import Fact, Mistake, Refused
from quoting.core.ground.measures import LEAST_CM, LEAST_G, LEAST_YARN_M
from quoting.notation import LENGTH, MASS, YARN_LENGTH, Quantity, read_measure, read_number
from quoting.wording import Speech, mistake_sentence
from tests.paths import place_of
from tests.wording.speeches import DE, GB, US


def test_a_blanket_too_narrow_is_told_a_width_that_is_not_too_narrow_itself() -> None:
    mistake = Mistake(place_of("blanket.width"), "width-too-small", {"smallest_cm": 31.161})
    assert "31.2\u00a0cm" in mistake_sentence(mistake, GB)
    inches = mistake_sentence(mistake, US)
    shown = re.search(r"[\d.]+\u00a0in", inches)
    assert shown
    assert read_measure(shown[0], US.marks) >= 31.161


def test_a_nearly_right_name_is_answered_with_the_right_one() -> None:
    facts: dict[str, Fact] = {"read": "strips", "known": ("stripes", "share"), "nearest": "stripes"}
    said = mistake_sentence(
        Mistake(place_of("blanket.sections.1.strips"), "unknown-key", facts), GB
    )
    assert said.endswith("Did you mean stripes?")
    assert "“strips”" in said
    assert "stripes or share" in said


@pytest.mark.parametrize(
    ("place", "read", "limit", "said"),
    [
        ("blanket.width", 2000.0, 1000.0, "2,000\u00a0cm"),
        ("yarns.1.put_ups.1.grams", 20000.0, 10000.0, "20,000\u00a0g"),
        ("yarns.1.put_ups.1.metres", 200000.0, 100000.0, "200,000\u00a0m"),
        ("extras.1.cost", Decimal("2E9"), 1_000_000_000, "£2,000,000,000.00"),
        ("price.discount", 1.5, 0.99, "150% (1.5)"),
        ("blanket.sections.2.stripes.1.rows", 20000, 10000, "20,000"),
        ("exchange.EUR.rate", Decimal("2E9"), 1e9, "2,000,000,000 is"),
    ],
)
def test_a_limit_is_said_in_the_unit_that_its_place_is_given_in(
    place: str, read: float, limit: float, said: str
) -> None:
    facts: dict[str, Fact] = {"read": read, "limit": limit}
    assert said in mistake_sentence(Mistake(place_of(place), "too-large", facts), GB)


@pytest.mark.parametrize("speech", [GB, US], ids=lambda s: s.locale)
@pytest.mark.parametrize(
    ("place", "limit", "quantity"),
    [
        ("swatches.1.gauge.width", LEAST_CM, LENGTH),
        ("yarns.1.put_ups.1.grams", LEAST_G, MASS),
        ("yarns.1.put_ups.1.metres", LEAST_YARN_M, YARN_LENGTH),
    ],
)
@pytest.mark.parametrize("short_by", [0.01, 0.5, 0.99])
def test_the_least_that_is_told_will_do_and_what_was_read_is_told_to_be_under_it(
    speech: Speech, place: str, limit: float, quantity: Quantity, short_by: float
) -> None:
    facts: dict[str, Fact] = {"read": limit * (1 - short_by), "limit": limit}
    said = mistake_sentence(Mistake(place_of(place), "too-small", facts), speech)
    read, least = (
        read_measure(shown, speech.marks, quantity)
        for shown in re.findall(r"[\d.]+\u00a0\w+", said)
    )
    assert read < limit <= least < 1.1 * limit


def test_a_negative_length_is_told_as_it_is() -> None:
    facts: dict[str, Fact] = {"read": -2.54, "limit": 0}
    said = mistake_sentence(Mistake(place_of("workshop.carry_height"), "too-small", facts), US)
    assert said == "-1\u00a0in is too small; the least that will do is 0\u00a0in."


def test_a_doubtful_number_is_answered_with_both_readings_as_they_can_be_typed() -> None:
    with pytest.raises(Refused) as refused:
        read_number("1.500", DE.marks.__class__(",", " "))
    said = mistake_sentence(refused.value.mistakes[0], DE)
    assert "1,5" in said
    assert "1500" in said


def test_stripes_that_are_fit_are_told_without_a_word_of_one_construction() -> None:
    said = mistake_sentence(Mistake(place_of("blanket.centre.repeats"), "fitted-and-repeats"), GB)
    assert not re.search("section|length|row", said)
