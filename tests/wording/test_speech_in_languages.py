"""Hours, days and stitches as each language has them, whatever the maker's own vocabulary."""

from __future__ import annotations

from datetime import date
from decimal import Decimal

import pytest

from quoting.core.workshop.stitches import Vocabulary
from quoting.wording import Speech
from quoting.wording.catalogues import language_of


def speech(locale: str, vocabulary: Vocabulary = Vocabulary.US) -> Speech:
    return Speech(locale=locale, vocabulary=vocabulary, language=language_of(locale))


STITCHES = [
    ("de", "sc", "feste Masche", "fM"),
    ("de", "hdc", "halbes Stäbchen", "hStb"),
    ("de", "dc", "Stäbchen", "Stb"),
    ("de", "tr", "Doppelstäbchen", "DStb"),
    ("de", "ch", "Luftmasche", "Lm"),
    ("fr", "sc", "maille serrée", "ms"),
    ("fr", "hdc", "demi-bride", "db"),
    ("fr", "dc", "bride", "b"),
    ("fr", "tr", "double bride", "dbr"),
    ("fr", "ch", "maille en l’air", "ml"),
    ("es", "sc", "punto bajo", "pb"),
    ("es", "hdc", "punto medio alto", "pma"),
    ("es", "dc", "punto alto", "pa"),
    ("es", "tr", "punto alto doble", "pad"),
    ("es", "ch", "cadeneta", "cad"),
    ("nl", "sc", "vaste", "v"),
    ("nl", "hdc", "half stokje", "hst"),
    ("nl", "dc", "stokje", "st"),
    ("nl", "tr", "dubbel stokje", "dst"),
    ("nl", "ch", "losse", "l"),
]
"""The basic stitches by their American names: common practice of patterns, no source."""


@pytest.mark.parametrize(("locale", "name", "full", "short"), STITCHES)
@pytest.mark.parametrize("vocabulary", Vocabulary)
def test_a_stitch_is_called_as_patterns_of_the_language_call_it(
    locale: str, name: str, full: str, short: str, vocabulary: Vocabulary
) -> None:
    said = speech(locale, vocabulary)
    assert (said.stitch_in_full(name), said.stitch(name)) == (full, short)


@pytest.mark.parametrize(
    ("name", "american", "british"),
    [
        ("ch", "chain", "chain"),
        ("sc", "single crochet", "double crochet"),
        ("hdc", "half double crochet", "half treble"),
        ("dc", "double crochet", "treble"),
        ("tr", "treble crochet", "double treble"),
    ],
)
def test_english_has_two_names_for_most(name: str, american: str, british: str) -> None:
    """Common practice, no source."""
    assert speech("en_GB", Vocabulary.US).stitch_in_full(name) == american
    assert speech("en_GB", Vocabulary.UK).stitch_in_full(name) == british


@pytest.mark.parametrize("locale", ["en_GB", "de", "fr"])
def test_a_pattern_keeps_its_own_name(locale: str) -> None:
    assert speech(locale).stitch("moor ripple") == "moor ripple"
    assert speech(locale).stitch_in_full("moor ripple") == "moor ripple"


@pytest.mark.parametrize(
    ("locale", "hours", "between"),
    [
        ("en_GB", "31 h 20 min", "29 to 35 h"),
        ("de_DE", "31 Std. 20 Min.", "29 bis 35 Std."),
        ("fr_FR", "31 h 20 min", "29 à 35 h"),
        ("es_ES", "31 h 20 min", "de 29 a 35 h"),
        ("nl_NL", "31 uur 20 min", "29 tot 35 uur"),
    ],
)
def test_hours_are_said_as_the_language_shortens_them(
    locale: str, hours: str, between: str
) -> None:
    said = speech(locale)
    assert said.hours(Decimal(94) / 3).replace("\u00a0", " ") == hours
    assert said.hours_range(Decimal(29), Decimal(35)).replace("\u00a0", " ") == between


def test_in_french_the_first_of_a_month_is_an_ordinal() -> None:
    """Common practice; the locale data have `1 mars 2027`."""
    said = speech("fr_FR")
    assert said.day(date(2027, 3, 1)) == "1er mars 2027"
    assert said.day(date(2027, 3, 11)) == "11 mars 2027"
    assert speech("de_DE").day(date(2027, 3, 1)) == "1. März 2027"


def test_the_swiss_write_no_sharp_s() -> None:
    """Common practice of the country's spelling."""
    assert speech("de_DE").worded("Size") == "Größe"
    assert speech("de_CH").worded("Size") == "Grösse"
    assert speech("de_CH").counted(1, "Border: {n} round.", "Border: {n} rounds.") == (
        "Umrandung: 1 Runde."
    )
