"""Words for a maker to begin her own with: none of them is on a quote before she takes it over."""

from __future__ import annotations

from collections.abc import Mapping

from quoting.core.workshop.stitches import Vocabulary
from quoting.wording.catalogues import language_of, sentence
from quoting.wording.locales import is_locale
from quoting.wording.speech import Speech

SUGGESTED: Mapping[str, str] = {
    "greeting": sentence(
        "Thank you for asking. This is the blanket as I understood it; tell me what to change."
    ),
    "care": sentence(
        "Wash it by itself the first time, as the yarn’s label says. Press the water out in a "
        "towel and dry it flat, away from sun and heat."
    ),
    "terms_of_sale": sentence(
        "The blanket is made for you by hand, as this quote says. If anything is wrong with it "
        "when it comes, write to me and we will find a way. Rights that you have by law stay as "
        "they are."
    ),
}
"""By the keys of a maker's own words."""


def suggested_words(locale: str, vocabulary: Vocabulary) -> Mapping[str, str]:
    """Return the words by their keys, in a locale's language; none where it is no locale."""
    if not is_locale(locale):
        return {}
    speech = Speech(locale=locale, vocabulary=vocabulary, language=language_of(locale))
    return {key: speech.worded(text) for key, text in SUGGESTED.items()}
