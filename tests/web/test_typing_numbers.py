"""Numbers as makers of many countries type them: read right, or refused, never misread."""

from decimal import Decimal

import pytest
from babel.numbers import format_decimal
from hypothesis import given
from hypothesis import strategies as st
from werkzeug.datastructures import MultiDict

from quoting.core.ground.measures import Units
from quoting.schema.figures import MONEY, SIDE
from quoting.web.forms.fields import Typed
from quoting.web.forms.lines import part_of, typed_of
from quoting.web.orders.order_form import bind_form
from quoting.web.shop import Shop, open_shop
from tests.examples import TODAY, sample_workshop

LOCALES = ["en_GB", "en_US", "de_DE", "de_CH", "fr_FR", "sv_SE", "pl_PL", "hi_IN", "pt_BR", "fa_IR"]


def shop_in(locale: str, units: Units = Units.METRIC) -> Shop:
    return open_shop(sample_workshop(locale=locale, units=units), today=lambda: TODAY)


SHOPS = {locale: shop_in(locale) for locale in LOCALES}


def field(shop: Shop, place: str, text: str) -> Typed:
    """Return a field of the order form with a text typed into it."""
    part, name = place.split(".")
    return typed_of(part_of(bind_form(shop, MultiDict({place: text})), part), name)


@given(st.sampled_from(LOCALES), st.decimals("0", "1000000", places=2))
def test_an_amount_as_the_locale_writes_it_is_read_exactly(locale: str, amount: Decimal) -> None:
    for grouped in (True, False):
        text = format_decimal(
            amount, locale=locale, decimal_quantization=False, group_separator=grouped
        )
        assert field(SHOPS[locale], "price.given", text).data == amount


@pytest.mark.parametrize("locale", LOCALES)
def test_an_amount_may_be_typed_with_its_currency(locale: str) -> None:
    shop = SHOPS[locale]
    for text in (shop.speech.money(Decimal(185)), "£185", "185 GBP"):
        assert field(shop, "price.given", text).data == 185
    assert field(SHOPS["en_GB"], "price.given", "£185").understood is None


@given(
    st.sampled_from(LOCALES),
    st.text("0123456789", min_size=1, max_size=5),
    st.sampled_from([".", ",", "'", "’", " ", "\u202f", "\u00a0", "\u066b"]),
    st.text("0123456789", min_size=1, max_size=5),
)
def test_one_mark_is_read_as_the_locale_has_it_or_echoed_or_refused(
    locale: str, before: str, mark: str, after: str
) -> None:
    typed = field(SHOPS[locale], "price.given", before + mark + after)
    if typed.mistake is not None:
        assert typed.data is None
    elif mark in SHOPS[locale].marks.decimals or (before == "0" and mark in ".,\u066b"):
        assert typed.data == Decimal(f"{before}.{after}")
    else:
        assert typed.data == Decimal(before + after)
        assert typed.understood is not None


@given(st.sampled_from(LOCALES), st.decimals("0.001", "999", places=3))
def test_what_a_form_is_filled_with_is_read_as_the_same_again(locale: str, size: Decimal) -> None:
    shop = SHOPS[locale]
    for place, kind, value in (("blanket.width", SIDE, float(size)), ("price.given", MONEY, size)):
        again = field(shop, place, str(kind.write(value, shop.notation)))
        assert again.data == value
        assert again.understood is None


@pytest.mark.parametrize(
    ("locale", "text", "amount"),
    [
        ("de_DE", "1,5", "1.5"),
        ("en_GB", "1.5", "1.5"),
        ("de_DE", "1.234,50", "1234.50"),
        ("en_GB", "1,234.50", "1234.50"),
        ("fr_FR", "1 234,50", "1234.50"),
        ("de_CH", "1'234.50", "1234.50"),
        ("de_CH", "1’234.50", "1234.50"),
        ("sv_SE", "1\u202f234,5", "1234.5"),
        ("hi_IN", "12,34,567.5", "1234567.5"),
        ("fa_IR", "\u06f1\u066b\u06f5", "1.5"),
        ("en_GB", "\uff11\uff0e\uff15", "1.5"),
        ("en_GB", "\u22121.5", "-1.5"),
    ],
)
def test_numbers_are_read_as_people_type_them(locale: str, text: str, amount: str) -> None:
    assert field(shop_in(locale), "price.given", text).data == Decimal(amount)


@pytest.mark.parametrize(
    ("locale", "text"), [("de_DE", "1.5"), ("en_GB", "1,5"), ("de_DE", "12.50")]
)
def test_a_doubtful_number_is_refused_with_both_readings(locale: str, text: str) -> None:
    mistake = field(shop_in(locale), "price.given", text).mistake
    assert mistake is not None
    assert mistake.code == "doubtful-number"


@pytest.mark.parametrize(
    ("units", "text", "length_cm"),
    [
        (Units.METRIC, "80", 80.0),
        (Units.INCHES, "80", 203.2),
        (Units.METRIC, "31 1/2 in", 80.01),
        (Units.INCHES, "31½", 80.01),
        (Units.INCHES, "2'6\"", 76.2),
        (Units.METRIC, "2 ft 6 in", 76.2),
        (Units.METRIC, "0.8 m", 80.0),
        (Units.INCHES, "800mm", 80.0),
    ],
)
def test_a_size_is_read_in_the_makers_unit_or_the_one_typed(
    units: Units, text: str, length_cm: float
) -> None:
    assert field(shop_in("en_GB", units), "blanket.width", text).data == pytest.approx(length_cm)


def test_a_size_that_is_round_in_another_unit_is_written_in_it() -> None:
    notation = shop_in("en_GB", Units.INCHES).notation
    assert SIDE.write(80.0, notation) == "80 cm"
    assert SIDE.write(91.44, notation) == "36 in"


@pytest.mark.parametrize(
    ("place", "text", "value", "echo"),
    [
        ("price.given", "1.017,00", Decimal(1017), "1017,00"),
        ("price.given", "1.017,00 €", Decimal(1017), "1017,00"),
        ("price.given", "1.017", Decimal(1017), "1017"),
        ("blanket.width", "0.9 m", 90.0, "90 cm"),
        ("blanket.width", "1.017 mm", 101.7, "101,7 cm"),
    ],
)
def test_a_german_makers_groups_and_points_are_read_in_one_way_and_echoed(
    place: str, text: str, value: float | Decimal, echo: str
) -> None:
    shop = open_shop(sample_workshop(locale="de_DE", currency="EUR"), today=lambda: TODAY)
    read = field(shop, place, text)
    assert (read.data, read.understood) == (value, echo)


@pytest.mark.parametrize(
    ("place", "text", "echo"),
    [
        ("blanket.width", "31 1/2 in", "80.01 cm"),
        ("blanket.width", "80", None),
        ("blanket.width", "80cm", None),
        ("price.given", "1,500", "1500"),
        ("price.given", "185.00", None),
        ("price.margin", "15", None),
        ("price.margin", "15 %", None),
        ("price.margin", "0.15", "0.15%"),
    ],
)
def test_a_text_that_may_be_meant_otherwise_is_echoed_as_understood(
    place: str, text: str, echo: str | None
) -> None:
    assert field(SHOPS["en_GB"], place, text).understood == echo
