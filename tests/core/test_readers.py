"""A buyer reads the measures and the stitch names of where she lives, a maker's neighbour hers."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.core.ground.measures import Units
from quoting.core.quote.offer import offer_of
from quoting.core.workshop.readers import stitch_names_read_in, units_read_in
from quoting.core.workshop.stitches import Vocabulary
from tests.examples import sample_order, sample_quote, sample_workshop

US, UK = Vocabulary.US, Vocabulary.UK


@pytest.mark.parametrize(
    ("locale", "names"),
    [("en_US", US), ("en-CA", US), ("en_GB", UK), ("en_AU", UK), ("en_NZ", UK), ("en_IE", UK)],
)
@pytest.mark.parametrize("usual", Vocabulary)
def test_stitches_are_called_as_where_it_is_read(
    locale: str, names: Vocabulary, usual: Vocabulary
) -> None:
    """Common practice, no source."""
    assert stitch_names_read_in(locale, usual) is names


@pytest.mark.parametrize("locale", ["en", "de", "de_DE", "fr_BE"])
@pytest.mark.parametrize("usual", Vocabulary)
def test_where_a_locale_tells_no_names_they_are_the_makers(locale: str, usual: Vocabulary) -> None:
    assert stitch_names_read_in(locale, usual) is usual


@pytest.mark.parametrize(
    ("locale", "units"),
    [
        ("en_US", Units.INCHES),
        ("es_US", Units.INCHES),
        ("en_GB", Units.METRIC),
        ("de", Units.METRIC),
        ("fr_CA", Units.METRIC),
    ],
)
@pytest.mark.parametrize("usual", Units)
def test_sizes_are_told_in_the_measures_of_where_it_is_read(
    locale: str, units: Units, usual: Units
) -> None:
    """Source: Unicode TR 35, part 6, measurement data: US for the United States."""
    assert units_read_in(locale, usual) is units


@pytest.mark.parametrize("usual", Units)
def test_english_of_no_country_is_measured_as_the_maker_does(usual: Units) -> None:
    assert units_read_in("en", usual) is usual


def test_an_offer_is_told_as_its_buyer_is_used_to() -> None:
    british = replace(sample_workshop(), locale="en_GB", speaks=UK)
    offer = offer_of(sample_quote(sample_order(language="en_US"), british))
    assert (offer.speaks, offer.units) == (US, Units.INCHES)


@pytest.mark.parametrize("language", [None, "en_GB"])
def test_who_reads_what_the_maker_writes_reads_her_own_way(language: str | None) -> None:
    """Some write British English and work in American terms, as the demo's maker does."""
    own = replace(sample_workshop(), locale="en_GB", speaks=US, units=Units.INCHES)
    offer = offer_of(sample_quote(sample_order(language=language), own))
    assert (offer.speaks, offer.units) == (US, Units.INCHES)
