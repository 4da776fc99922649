"""The number of a quote that was given, as it is written and read."""

from __future__ import annotations

import pytest

from quoting.core.quote.given_number import GivenNumber, read_number


@pytest.mark.parametrize(
    ("number", "written"),
    [
        (GivenNumber(2026, 14), "2026-014"),
        (GivenNumber(2026, 14, 2), "2026-014/2"),
        (GivenNumber(2027, 1234, 10), "2027-1234/10"),
    ],
)
def test_a_number_is_read_as_it_is_written(number: GivenNumber, written: str) -> None:
    assert str(number) == written
    assert read_number(f" {written} ") == number


@pytest.mark.parametrize(
    "text", ["", "14", "2026-14", "0000-014", "2026-000", "2026-014/0", "2026-014/00", "2026-014/"]
)
def test_what_is_no_number_is_none(text: str) -> None:
    assert read_number(text) is None
