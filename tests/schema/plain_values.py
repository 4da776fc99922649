"""What values are made of: texts, figures, and the kinds that are the same wherever they stand."""

from __future__ import annotations

from typing import Any

from hypothesis import strategies as st

from quoting.core.order.resizing import Size
from quoting.core.workshop.stitches import WORKED
from quoting.schema.figures import Count, Exact, Measure, Money, Number, Share
from quoting.schema.languages import Language
from quoting.schema.price_list import SizeText
from quoting.schema.words import Answer, BasicStitch, Day, PatternName, StitchName, Text
from quoting.schema.workshop_shape import ByStitch

Strategy = st.SearchStrategy[Any]

CURRENCIES = ("EUR", "JPY", "KWD", "USD")
OWN_PATTERN = "heather.stitch"

texts = st.text("abyzÄßéαж .,;=\"'#[]-0189", min_size=1, max_size=12).filter(
    lambda text: text == text.strip() and text != "(not read)"
)
"""Words with what means something in one notation or another: dots, quotes, semicolons."""

measured = st.floats(1, 100)
money = st.decimals(1, 1000, places=2)
pattern_names = texts.map(lambda text: f"{text} pattern")
stitch_names = st.sampled_from([*(stitch.value for stitch in WORKED), OWN_PATTERN])
languages = st.sampled_from(["de", "de_AT", "de-CH", "en", "en_US"])
sizes = st.builds(Size, width_cm=measured, height_cm=measured)

PLAIN: tuple[tuple[Any, Strategy], ...] = (
    (Share, st.floats(0.5, 0.98)),
    (Number, st.floats(1, 50)),
    (Count, st.integers(1, 7)),
    (Money, money),
    (Exact, st.decimals(1, 1000, places=4)),
    (Measure, measured),
    (PatternName, pattern_names),
    (StitchName, stitch_names),
    (BasicStitch, st.sampled_from(list(WORKED))),
    (Language, languages),
    (Text, texts),
    (Answer, st.booleans()),
    (Day, st.dates()),
    (SizeText, sizes),
    (ByStitch, st.dictionaries(st.sampled_from(list(WORKED)), st.booleans(), max_size=3)),
)
"""Values of the kinds that are the same wherever they stand, the narrower kinds first."""


def few(each: Strategy) -> Strategy:
    """Return one or two of a strategy's values."""
    return st.lists(each, min_size=1, max_size=2).map(tuple)


def either(kind: type, fields: dict[str, Strategy], *ways: dict[str, Strategy]) -> Strategy:
    """Return values of which one way or another is given, never two."""
    return st.one_of(*(st.builds(kind, **(fields | way)) for way in ways))
