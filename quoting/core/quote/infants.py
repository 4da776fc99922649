"""Whether a blanket may come to lie where an infant sleeps, and whose advice its buyer is given.

A tick on the order says so, or the size, or the title: what a maker forgets to tick is said all
the same, and once too often does no harm.

Sources of the advice (paraphrased; each but the second from memory, beside a page that repeats
it). All of them keep loose bedding out of the first year's bed.

- GB: NHS, Reduce the risk of sudden infant death syndrome (suttonhealthandcare.nhs.uk/safer-sleep).
- US: American Academy of Pediatrics, Pediatrics 150(1), e2022057990, 2022.
- DE: Bundesinstitut für Öffentliche Gesundheit, until 2025 Bundeszentrale für gesundheitliche
  Aufklärung (as reported at abendblatt.de/nachrichten/article213514293).
- FR: Santé publique France, carnet de santé.
- NL: JGZ-richtlijn Preventie wiegendood (cjgmiddendrenthe.nl, Veilig in bed en in de box).
- ES: the regions' health services (saludcastillayleon.es, muerte súbita del lactante).
"""

from __future__ import annotations

import re
import unicodedata

from quoting.core.ground.measures import CM_PER_INCH
from quoting.core.ground.sameness import HAIR
from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan

WIDEST_CM = 36 * CM_PER_INCH
LONGEST_CM = 42 * CM_PER_INCH
"""No blanket that makers call by a cot, crib, pram or Moses basket is larger (common practice)."""

HEALTH_SERVICES = frozenset({"DE", "ES", "FR", "GB", "NL", "US"})
"""Countries, by ISO 3166, whose health service's advice is known here."""

_ALSO_WRITTEN = {"UK": "GB"}

_WORDS = {
    "en": r"\w*bab(y(?!lon)|ies)|new[- ]?born|infant|cots?\b|cribs?\b|prams?\b|pushchair|stroller"
    r"|bassinet|cradle|carrycot|moses|nursery|christening|baptism|layette",
    "de": r"saugling|neugeboren|kinderwagen|stubenwagen|kinderbett|gitterbett|wiege|tauf"
    r"|geburt(?!stag)",
    "fr": r"bebe|nourrisson|nouveau[- ]ne|berceau|landau|poussette|couffin|bapteme|naissance",
    "es": r"bebe|recien nacid|cuna|cochecito|moises|capazo|bautizo|nacimiento|canastilla",
    "nl": r"pasgeboren|wieg|ledikant|kinderwagen|kraam|geboorte|doop",
}
"""How words for a baby, its bed and its feasts begin, without accents; English ones anywhere."""


def may_be_an_infants(order: Order, plan: Plan, *locales: str) -> bool:
    """Return whether an order is for an infant, by its tick, its size or its title."""
    return (
        order.for_baby
        or _is_small(order.design.width_cm, order.design.height_cm)
        or _is_small(plan.width_cm, plan.height_cm)
        or speaks_of_a_baby(order.title, *locales)
    )


def speaks_of_a_baby(title: str, *locales: str) -> bool:
    """Return whether a title has a word for a baby, in English or in the language of a locale."""
    languages = {"en", *(locale[:2].lower() for locale in locales)}
    words = "|".join(_WORDS[language] for language in sorted(languages & _WORDS.keys()))
    return re.search(rf"\b({words})", _plain(title)) is not None


def advised_in(order: Order, locale: str) -> str | None:
    """Return the buyer's country where its health service is known here: the locale's by default.

    None where it is another, or no country at all is known.
    """
    of_locale = re.fullmatch(r".*[_-]([A-Za-z]{2})", locale)
    written = order.deliver_to or (of_locale[1] if of_locale else "")
    country = written.strip().upper()
    country = _ALSO_WRITTEN.get(country, country)
    return country if country in HEALTH_SERVICES else None


def _is_small(width_cm: float, height_cm: float) -> bool:
    short, long = sorted((width_cm, height_cm))
    return short <= WIDEST_CM + HAIR and long <= LONGEST_CM + HAIR


def _plain(text: str) -> str:
    """Return a text in small letters without accents."""
    apart = unicodedata.normalize("NFKD", text.casefold())
    return "".join(char for char in apart if not unicodedata.combining(char))
