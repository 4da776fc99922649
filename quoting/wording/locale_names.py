"""Languages and countries to choose from, by name."""

from __future__ import annotations

from babel.numbers import get_territory_currencies

from quoting.places import catalogue_languages
from quoting.wording.locales import is_locale, locale_of
from quoting.wording.speech import Speech

OFFERED_LOCALES = (
    "en_GB", "en_US", "en_CA", "en_AU", "en_NZ", "en_IE", "en_ZA", "en_IN",
    "cs_CZ", "da_DK", "de_AT", "de_CH", "de_DE", "es_ES", "es_MX", "et_EE", "fi_FI", "fr_BE",
    "fr_CA", "fr_CH", "fr_FR", "hu_HU", "is_IS", "it_IT", "ja_JP", "lt_LT", "lv_LV", "nb_NO",
    "nl_BE", "nl_NL", "pl_PL", "pt_BR", "pt_PT", "sk_SK", "sl_SI", "sv_SE",
)  # fmt: skip
"""Whose ways of writing numbers, amounts and days are offered; a file may name any other."""


def locale_names(speech: Speech) -> tuple[tuple[str, str], ...]:
    """Return each locale that is offered with its name, the workshop's own among them."""
    own = () if speech.locale in OFFERED_LOCALES else (speech.locale,)
    return tuple((code, _name(code)) for code in (*own, *OFFERED_LOCALES))


def _name(code: str) -> str:
    return str(locale_of(code).get_display_name("en"))


def language_names(*others: str) -> tuple[tuple[str, str], ...]:
    """Return each language that documents can be in with its own name, further locales of them.

    What is no locale that there is data for is none of them.
    """
    codes = dict.fromkeys(("en_GB", "en_US", *catalogue_languages(), *others))
    return tuple(
        (code, str(locale_of(code).get_display_name())) for code in codes if is_locale(code)
    )


def usual_currency(code: str) -> str:
    """Return the currency of a locale's country, by CLDR."""
    return str(get_territory_currencies(locale_of(code).territory or "")[-1])
