"""A value that is no count, measure, number, money, text, choice or day is told at its place."""

import pytest

from quoting.wording import Speech, mistake_sentence
from tests.files.samples import ROWS, STRIPE_ROWS


@pytest.mark.parametrize(
    ("rows", "code"),
    [
        ("0", "too-small"),
        ("-3", "too-small"),
        ("10001", "too-large"),
        ("99999999999999999999", "too-many-digits"),
        ("true", "wrong-type"),
        ("1.0", "wrong-type"),
        ("'1'", "wrong-type"),
        ("[]", "wrong-type"),
        ("{}", "wrong-type"),
        ("2027-03-20", "wrong-type"),
    ],
)
def test_a_count_is_a_whole_number_within_its_limits(order_mistakes, rows, code):
    found = order_mistakes((ROWS, f'{{ colour = "teal", rows = {rows} }}'))
    assert {place: mistake.code for place, mistake in found.items()} == {STRIPE_ROWS: code}


@pytest.mark.parametrize(
    ("width", "code"),
    [
        ('"0 cm"', "not-above"),
        ('"-80 cm"', "not-above"),
        ('"900 m"', "too-large"),
        ('"inf cm"', "not-finite"),
        ('"nan"', "not-finite"),
        ('"80"', "missing-unit"),
        ("80", "missing-unit"),
        ("80.5", "missing-unit"),
        ('"80 g"', "unknown-unit"),
        ('"1.5.5 cm"', "not-a-measure"),
        ('"wide"', "not-a-measure"),
        ("true", "wrong-type"),
        ('"' + "8" * 100_000 + ' cm"', "too-long"),
    ],
)
def test_a_measure_has_a_number_and_a_unit(order_mistakes, width, code):
    found = order_mistakes(('"80 cm"', width))
    assert {place: mistake.code for place, mistake in found.items()} == {"blanket.width": code}


@pytest.mark.parametrize(("width", "quoted"), [("80", '"80 cm"'), ("80.5", '"80.5 cm"')])
def test_a_measure_without_quotes_is_shown_with_them(order_mistakes, width, quoted):
    (mistake,) = order_mistakes(('"80 cm"', width)).values()
    assert mistake.facts["quoted"] == quoted
    assert mistake_sentence(mistake, Speech(locale="en_GB")).endswith(f", as {quoted}.")


@pytest.mark.parametrize(
    ("share", "code"),
    [
        ("inf", "not-finite"),
        ("nan", "not-finite"),
        ("1e400", "not-finite"),
        ("1e99999999999999999999", "not-finite"),
        ("-1", "too-small"),
        ("2000000.0", "too-large"),
        ("false", "wrong-type"),
        ('"1"', "wrong-type"),
    ],
)
def test_a_number_is_finite_and_within_its_limits(order_mistakes, share, code):
    found = order_mistakes(("share = 1 ", f"share = {share} "))
    assert found["blanket.sections.1.share"].code == code


@pytest.mark.parametrize("price", ["185.00", "185", "true", "inf"])
def test_money_is_text_never_a_number(order_mistakes, price):
    (only,) = order_mistakes(('"185.00"', price)).values()
    assert (only.path, only.code) == ("price.given", "wrong-type")
    assert only.facts == {"read": price.replace("inf", "Infinity"), "wanted": "money-text"}


def test_text_has_its_limits(order_mistakes):
    long = "a" * 100_000
    (only,) = order_mistakes(("Cot blanket in moorland stripes", long)).values()
    assert (only.path, only.code) == ("order.title", "too-long")


@pytest.mark.parametrize("escape", ["\\u0007", "\\u0000", "\\u001b", "\\u202e"])
def test_text_has_no_control_characters(order_mistakes, escape):
    (only,) = order_mistakes(("Rosalind Quill", f"Rosalind{escape}Quill")).values()
    assert (only.path, only.code) == ("order.buyer", "control-character")


@pytest.mark.parametrize(
    ("old", "new", "place", "nearest"),
    [
        ('stop_at = "repeat"', 'stop_at = "repeats"', "blanket.stop_at", "repeat"),
        ('corner = "chain"', 'corner = "one xtra"', "blanket.border.1.corner", "one extra"),
        ('terms = "US"', 'terms = "us"', "terms", "US"),
        ('construction = "rows"', 'construction = "spiral"', "blanket.construction", None),
    ],
)
def test_a_choice_is_one_of_its_words(order_mistakes, old, new, place, nearest):
    (only,) = order_mistakes((old, new)).values()
    assert (only.path, only.code) == (place, "not-one-of")
    assert only.facts["nearest"] == nearest
    assert only.facts["read"] not in only.facts["known"]


@pytest.mark.parametrize("day", ['"2027-03-20"', "2027-03-20T12:00:00", "12:00:00", "20270320"])
def test_a_day_is_a_local_date(order_mistakes, day):
    (only,) = order_mistakes(("2027-03-20", day)).values()
    assert (only.path, only.code) == ("order.wanted_by", "wrong-type")
    assert only.facts["wanted"] == "date"
