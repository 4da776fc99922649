"""Text to length, yarn, weight and money, and back."""

import math
from contextlib import suppress

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.notation import (
    LENGTH,
    MASS,
    YARN_LENGTH,
    read_measure,
    read_money,
    write_measure,
)
from tests.notations import ENGLISH, GERMAN, marks, mistake


@pytest.mark.parametrize(
    ("text", "cm"),
    [
        ("80 cm", 80.0),
        ("80cm", 80.0),
        ("80 CM", 80.0),
        ("80 cm.", 80.0),
        ("0.9 m", 90.0),
        ("800 mm", 80.0),
        ("31.5 in", 80.01),
        ("31 1/2 in", 80.01),
        ("31½ in", 80.01),
        ("31½ inches", 80.01),
        ("31½”", 80.01),
        ("2'6\"", 76.2),
        ("2\u20326\u2033", 76.2),
        ("2'6''", 76.2),
        ("2’6½”", 77.47),
        ("2 ft 6 in", 76.2),
        ("6'", 182.88),
        ("2 yd", 182.88),
    ],
)
def test_lengths_are_read_into_centimetres(text, cm):
    assert read_measure(text, ENGLISH) == cm


def test_yarn_is_read_into_metres_and_weight_into_grams():
    """Yard and ounce are exact: NIST Handbook 44, appendix C."""
    assert read_measure("200 yd", ENGLISH, YARN_LENGTH) == 182.88
    assert read_measure("3.5 oz", ENGLISH, MASS) == 99.2233309375
    assert read_measure("1 lb", ENGLISH, MASS) == 453.59237
    assert read_measure("2 kg", ENGLISH, MASS) == 2000.0


def test_a_bare_number_takes_the_default_unit_where_there_is_one():
    assert read_measure("31½", ENGLISH, default_unit="in") == 80.01
    assert mistake(read_measure, "80", ENGLISH).code == "missing-unit"


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("", "not-a-measure"),
        ("cm", "not-a-measure"),
        ("wide", "not-a-measure"),
        ("wide cm", "not-a-measure"),
        ("1'500\"", "not-a-measure"),
        ("2'12\"", "not-a-measure"),
        ("-2'6\"", "not-a-measure"),
        ("80 x 90 cm", "not-a-measure"),
        ("80 g", "unknown-unit"),
        ("80 ells", "unknown-unit"),
        ("5 m²", "unknown-unit"),
        ("inf cm", "not-finite"),
        ("1,5 cm", "doubtful-number"),
    ],
)
def test_what_is_no_length_is_refused(text, code):
    assert mistake(read_measure, text, ENGLISH).code == code


def test_an_unknown_unit_is_told_with_those_there_are():
    facts = mistake(read_measure, "80 ells", ENGLISH).facts
    assert facts["read"] == "ells"
    assert facts["known"] == ("mm", "cm", "m", "in", "ft", "yd")


def test_money_keeps_its_decimals_and_takes_no_fraction():
    assert str(read_money("4.60", ENGLISH)) == "4.60"
    assert read_money("1.500,00", GERMAN) == 1500
    assert mistake(read_money, "4½", ENGLISH).code == "not-a-number"


@pytest.mark.parametrize("text", ["£185", "185 £", " GBP 185", "185.00 GBP"])
def test_money_may_bear_a_sign_of_its_own_currency_and_of_no_other(text):
    assert read_money(text, ENGLISH, ("£", "GBP")) == 185
    assert mistake(read_money, text, ENGLISH, ("€", "EUR")).code == "not-a-number"
    assert mistake(read_money, "££185", ENGLISH, ("£", "GBP")).code == "not-a-number"


@example(561540.640146997, ENGLISH, "in")  # its shortest decimals lie midway to the next float
@given(st.floats(1e-6, 1e6), marks, st.sampled_from(LENGTH.units))
def test_a_measure_written_in_any_unit_is_read_again_exactly(cm, written_with, unit):
    assert read_measure(write_measure(cm, written_with, unit=unit), written_with) == cm


def test_a_measure_is_written_no_longer_than_it_need_be():
    assert write_measure(80.0, ENGLISH) == "80 cm"
    assert write_measure(80.01, ENGLISH, unit="in") == "31.5 in"
    assert write_measure(0.5, GERMAN) == "0,5 cm"


@given(st.text(max_size=70), marks, st.sampled_from((LENGTH, MASS, YARN_LENGTH)))
def test_any_text_is_a_finite_measure_or_is_refused(text, typed_with, quantity):
    with suppress(Refused):
        assert math.isfinite(read_measure(text, typed_with, quantity))
    with suppress(Refused):
        assert read_money(text, typed_with).is_finite()
