"""Lengths, hours, days and counts are written as the locale and the units want."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from quoting.core.ground.measures import Units
from quoting.notation import read_measure
from quoting.wording import Speech, is_locale
from tests.wording.speeches import DE, GB, LOCALES, US


def test_sizes_yarn_and_weights_are_in_the_workshops_units() -> None:
    assert GB.length(80) == "80\u00a0cm"
    assert GB.size(79.6667, 99.1167) == "79.7 × 99.1\u00a0cm"
    assert US.length(80.01) == "31.5\u00a0in"
    assert DE.length(79.6667) == "79,7\u00a0cm"
    assert GB.yarn_length(210.4) == "210\u00a0m"
    assert US.yarn_length(91.44) == "100\u00a0yd"
    assert GB.weight(100.0) == "100\u00a0g"
    assert US.weight(100.0) == "3.5\u00a0oz"


@pytest.mark.parametrize("locale", LOCALES)
def test_a_length_that_is_shown_can_be_typed_in_again(locale: str) -> None:
    for units in Units:
        speech = Speech(locale=locale, units=units)
        assert read_measure(speech.length(123.4), speech.marks) == pytest.approx(123.4, abs=0.13)


@pytest.mark.parametrize(
    ("hours", "said"),
    [
        ("31.33", "31\u00a0h 20\u00a0min"),
        ("5.00", "5\u00a0h"),
        ("0.75", "45\u00a0min"),
        ("0", "0\u00a0min"),
        ("1.999", "2\u00a0h"),
    ],
)
def test_hours_are_said_as_hours_and_minutes(hours: str, said: str) -> None:
    assert GB.hours(Decimal(hours)) == said


def test_a_range_of_hours_is_said_in_whole_hours_unless_they_are_few() -> None:
    assert GB.hours_range(Decimal("28.6"), Decimal("35.2")) == "29 to 35\u00a0h"
    assert GB.hours_range(Decimal("1.24"), Decimal("2.06")) == "1.2 to 2.1\u00a0h"


def test_a_day_is_written_out() -> None:
    assert GB.day(date(2027, 3, 20)) == "20 March 2027"


def test_one_thing_is_one_and_more_are_many() -> None:
    assert [GB.count(n, "skein") for n in (0, 1, 3)] == ["0 skeins", "1 skein", "3 skeins"]


@pytest.mark.parametrize("text", ["en_GB", "de-CH", "nb_NO", "zh_Hans_CN", "pt"])
def test_a_locale_there_is_data_for_is_one(text: str) -> None:
    assert is_locale(text)


@pytest.mark.parametrize("text", ["", "English", "xx_YY", "en_GB_", "../etc", "en GB", "e" * 5000])
def test_any_other_text_is_no_locale(text: str) -> None:
    assert not is_locale(text)
