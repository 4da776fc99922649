"""Text to number and size, and back."""

from decimal import Decimal
from functools import partial

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quoting.notation import (
    FILE_MARKS,
    read_money,
    read_number,
    read_size,
    write_number,
)
from tests.notations import (
    ALL_MARKS,
    ARABIC,
    ENGLISH,
    FRENCH,
    GERMAN,
    SWISS,
    marks,
    mistake,
    numbers,
)


@pytest.mark.parametrize(
    ("text", "typed_with", "number"),
    [
        ("1,500", ENGLISH, "1500"),
        ("1,500.25", ENGLISH, "1500.25"),
        ("1,234,567", ENGLISH, "1234567"),
        ("12,34,567", ENGLISH, "1234567"),  # Indian grouping
        ("1 500", ENGLISH, "1500"),
        ("1.500", ENGLISH, "1.5"),
        (".5", ENGLISH, "0.5"),
        ("+5", ENGLISH, "5"),
        ("1.500", GERMAN, "1500"),
        ("1.500,25", GERMAN, "1500.25"),
        ("1,5", GERMAN, "1.5"),
        ("1\u202f500,5", FRENCH, "1500.5"),
        ("1\u00a0500,5", FRENCH, "1500.5"),
        ("1\u2019500.5", SWISS, "1500.5"),
        ("1'500.5", SWISS, "1500.5"),
        ("\u0661\u066c\u0665\u0660\u0660\u066b\u0662\u0665", ARABIC, "1500.25"),
        ("\u200f\u0663\u066b\u0665", ARABIC, "3.5"),
        ("\u0663.\u0665", ENGLISH, "3.5"),
        ("\uff11\uff12\uff0e\uff15", ENGLISH, "12.5"),
        ("\u22123.5", ENGLISH, "-3.5"),
        ("\uff0d3.5", ENGLISH, "-3.5"),
        ("31 1/2", ENGLISH, "31.5"),
        ("31-1/2", ENGLISH, "31.5"),
        ("31½", ENGLISH, "31.5"),
        ("½", FILE_MARKS, "0.5"),
        ("-1 3/4", ENGLISH, "-1.75"),
        ("1,500 1/2", ENGLISH, "1500.5"),
        ("1.500", FILE_MARKS, "1.5"),
        ("1,500", FILE_MARKS, "1.5"),
        ("0,500", ENGLISH, "0.5"),
        ("0.9", GERMAN, "0.9"),
        ("0.9", FRENCH, "0.9"),
    ],
)
def test_a_number_is_read_as_its_writer_meant_it(text, typed_with, number):
    assert read_number(text, typed_with) == Decimal(number)


@pytest.mark.parametrize(
    ("text", "typed_with", "as_decimal", "as_grouping"),
    [
        ("1,5", ENGLISH, "1.5", "15"),
        ("1500,25", ENGLISH, "1500.25", "150025"),
        ("1.5", GERMAN, "1.5", "15"),
        ("1.500", FRENCH, "1.5", "1500"),
    ],
)
def test_a_mark_that_may_be_meant_otherwise_is_asked_about(
    text, typed_with, as_decimal, as_grouping
):
    doubt = mistake(read_number, text, typed_with)
    assert doubt.code == "doubtful-number"
    assert doubt.facts["read"] == text
    assert doubt.facts["as_decimal"] == Decimal(as_decimal)
    assert doubt.facts["as_grouping"] == Decimal(as_grouping)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "not-a-number"),
        (" ", "not-a-number"),
        ("-", "not-a-number"),
        ("5.", "not-a-number"),
        ("--5", "not-a-number"),
        ("5-", "not-a-number"),
        ("1e400", "not-a-number"),
        ("10²", "not-a-number"),
        ("1 50", "not-a-number"),
        ("1'50", "not-a-number"),
        ("1,500,2", "not-a-number"),
        ("1.5.5", "not-a-number"),
        ("1,500 000", "not-a-number"),
        ("3 5/4", "not-a-number"),
        ("1.5 1/2", "not-a-number"),
        ("1/0", "not-a-number"),
        ("10-12", "not-a-number"),
        ("1\n5", "not-a-number"),
        ("nan", "not-finite"),
        ("-Infinity", "not-finite"),
        ("∞", "not-finite"),
        ("1" * 21, "too-many-digits"),
        ("1" * 61, "too-long"),
    ],
)
def test_what_is_no_plain_number_is_refused(text, code):
    assert mistake(read_number, text, ENGLISH).code == code


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("1.017,00", "1017"),
        ("1,017.00", "1017"),
        ("1.234.567,5", "1234567.5"),
        ("12,34,567.5", "1234567.5"),
        ("1,500,000", "1500000"),
        ("1.500.000", "1500000"),
        ("1 500,5", "1500.5"),
        ("1'500", "1500"),
    ],
)
def test_a_number_in_a_file_may_be_grouped_where_it_can_be_meant_in_one_way_only(text, number):
    assert read_number(text, FILE_MARKS) == Decimal(number)
    assert read_money(text, FILE_MARKS) == Decimal(number)


@pytest.mark.parametrize("text", ["1.5.5", "1,500,2", "1,500 000", "1.50,000.00", "01.500,00"])
def test_a_number_in_a_file_that_nobody_groups_so_is_refused(text):
    assert mistake(read_number, text, FILE_MARKS).code == "not-a-number"


@pytest.mark.parametrize("typed_with", ALL_MARKS)
@pytest.mark.parametrize(
    "text", ["0.9 x 1.2 m", "0,9 x 1,2 m", "0.9 m × 1.2 m", "1,2 m * 0,9 m", "90 × 120 cm"]
)
def test_a_size_with_a_side_under_one_is_read_with_the_mark_of_that_side(text, typed_with):
    assert sorted(read_size(text, typed_with)) == [90, 120]


@pytest.mark.parametrize(
    ("text", "typed_with", "read"),
    [
        ("1.1 x 1.2 m", GERMAN, "1.1"),
        ("0,9 m x 1.2 m", GERMAN, "1.2"),
        ("0.9 m x 1,2 m", ENGLISH, "1,2"),
    ],
)
def test_a_size_whose_marks_may_be_meant_otherwise_is_asked_about(text, typed_with, read):
    doubt = mistake(read_size, text, typed_with)
    assert (doubt.code, doubt.facts["read"]) == ("doubtful-number", read)


def test_groups_of_one_side_are_not_taken_for_decimals_of_the_others_mark():
    assert read_size("0,9 m x 1.200 mm", GERMAN) == (90, 120)
    assert read_size("0,9 m x 1.200 mm", ENGLISH) == (90, 120)


@pytest.mark.parametrize("text", ["90", "90 cm", "0.9 m", "90 x 90", "90 x 90 cm"])
def test_one_measure_is_the_size_of_what_goes_by_its_width(text):
    assert read_size(text, ENGLISH, "cm", by_width=True) == (90, 90)


def test_of_what_goes_by_its_width_a_length_is_read_too_and_nonsense_is_told():
    assert read_size("36 in x 90 cm", ENGLISH, by_width=True) == (pytest.approx(91.44), 90)
    assert mistake(read_size, "90", ENGLISH).code == "not-a-size"
    by_width = partial(read_size, by_width=True)
    assert mistake(by_width, "90 x", ENGLISH, "cm").code == "not-a-size"
    assert mistake(by_width, "wide", ENGLISH, "cm").code == "not-a-measure"


def test_a_refusal_shows_the_beginning_of_a_long_text_and_nothing_unprintable():
    facts = mistake(read_number, "\x07" + "7" * 100_000, ENGLISH).facts
    assert facts["begins"] == "\ufffd" + "7" * 39 + "…"
    assert facts["read"] == 100_001


@given(numbers, marks)
def test_a_number_written_is_read_again_as_itself(number, written_with):
    assert read_number(write_number(number, written_with), written_with) == number


@given(st.integers(0, 10**12), st.sampled_from((ENGLISH, GERMAN, FRENCH, SWISS, ARABIC)))
def test_a_number_grouped_by_its_marks_is_read_as_itself(number, written_with):
    grouped = f"{number:,}".replace(",", written_with.grouping)
    assert read_number(grouped, written_with) == number
