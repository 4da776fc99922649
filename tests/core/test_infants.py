"""A blanket that may come to lie where an infant sleeps is known by tick, size or title."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from quoting.core.ground.cautions import Reader
from quoting.core.order.order import Order
from quoting.core.quote.infants import HEALTH_SERVICES, speaks_of_a_baby
from quoting.places import config_folder
from quoting.web.sizes.customary_sizes import Size, read_sizes
from tests.examples import sample_design, sample_order, sample_quote, sample_workshop

SIZES = read_sizes(Path(config_folder()) / "sizes.toml")
BEDS = re.compile(r"\b(cot|crib|pram|stroller|baby|moses|comforter)\b", re.IGNORECASE)
MOSES_BASKET = Size(name="Moses basket", width_cm=60, height_cm=75, source="common practice")


def sized(size: Size, *, title: str = "Moorland stripes") -> Order:
    design = sample_design(width_cm=size.width_cm, height_cm=size.height_cm)
    return sample_order(for_baby=False, title=title, design=design)


def cautions_for_infants(order: Order, locale: str = "en_GB") -> dict[str, object]:
    """Return the country advised in, by the codes of the cautions about babies."""
    quote = sample_quote(order, sample_workshop(locale=locale))
    said = [caution for caution in quote.cautions if caution.code.startswith("baby-")]
    return {caution.code: caution.facts.get("advised_in") for caution in said}


@pytest.mark.parametrize(
    "size",
    [*(size for size in SIZES if BEDS.search(size.name)), MOSES_BASKET],
    ids=lambda size: size.name,
)
def test_a_size_of_an_infants_bed_brings_the_advice_without_a_tick(size: Size) -> None:
    said = cautions_for_infants(sized(size))
    assert said.keys() == {"baby-loose-bedding", "baby-small-parts", "baby-ends"}


@pytest.mark.parametrize(
    "size", [s for s in SIZES if not BEDS.search(s.name)], ids=lambda size: size.name
)
def test_a_larger_size_brings_none(size: Size) -> None:
    assert not cautions_for_infants(sized(size))


def test_a_cot_blanket_that_lies_the_other_way_or_is_a_little_off_brings_it_too() -> None:
    assert cautions_for_infants(sized(Size(name="", width_cm=100, height_cm=79, source="")))


@pytest.mark.parametrize(
    ("title", "locale"),
    [
        ("Baby blanket in oat", "en_GB"),
        ("Cot-to-bed throw", "en_GB"),
        ("Two CRIBS of stripes", "en_US"),
        ("For a newborn", "en_GB"),
        ("Moses basket cover", "en_GB"),
        ("A christening in April", "en_GB"),
        ("Babydecke in Moorfarben", "de_DE"),
        ("Für den Säugling", "de_AT"),
        ("Taufdecke", "de-CH"),
        ("Couverture pour bébé", "fr_FR"),
        ("Pour le nouveau-né", "fr_FR"),
        ("Manta de recién nacido", "es_ES"),
        ("Manta para la CUNA", "es_MX"),
        ("Wiegdekentje", "nl_NL"),
        ("Baby-Decke", "ja_JP"),
    ],
)
def test_a_title_that_speaks_of_a_baby_is_understood(title: str, locale: str) -> None:
    assert speaks_of_a_baby(title, locale)


@pytest.mark.parametrize(
    ("title", "locale"),
    [
        ("Cotton throw", "en_GB"),
        ("Apricot stripes for a cottage", "en_GB"),
        ("Described by its buyer", "en_GB"),
        ("Moss stitch lap blanket", "en_GB"),
        ("Babylon stripes", "en_GB"),
        ("Geburtstagsdecke", "de_DE"),
        ("Manta para la cuna", "en_GB"),
        ("", "en"),
    ],
)
def test_other_titles_are_not_taken_for_a_babys(title: str, locale: str) -> None:
    assert not speaks_of_a_baby(title, locale)


@pytest.mark.parametrize(
    ("deliver_to", "locale", "advised_in"),
    [
        ("GB", "en_US", "GB"),
        ("uk", "de_DE", "GB"),
        (" us ", "en_GB", "US"),
        (None, "en_GB", "GB"),
        (None, "de-DE", "DE"),
        (None, "de", None),
        (None, "zh_Hans", None),
        ("NZ", "en_GB", None),
        ("Germany", "en_GB", None),
    ],
)
def test_the_advice_is_of_the_buyers_country_or_else_of_the_makers(
    deliver_to: str | None, locale: str, advised_in: str | None
) -> None:
    order = sample_order(deliver_to=deliver_to)
    assert cautions_for_infants(order, locale)["baby-loose-bedding"] == advised_in


def test_each_health_service_that_is_known_is_one_of_a_country() -> None:
    assert all(re.fullmatch("[A-Z]{2}", country) for country in HEALTH_SERVICES)


def test_the_buyer_hears_only_of_the_sleeping_place() -> None:
    quote = sample_quote(sized(MOSES_BASKET))
    to_buyer = [caution.code for caution in quote.cautions if caution.reader is Reader.BUYER]
    assert to_buyer == ["baby-loose-bedding"]


@pytest.mark.parametrize("size", SIZES, ids=lambda size: size.name)
def test_no_note_of_a_size_speaks_of_a_mattress_to_cover_or_of_tucking_in(size: Size) -> None:
    assert not re.search(r"mattress|tuck", f"{size.name} {size.source}", re.IGNORECASE)
