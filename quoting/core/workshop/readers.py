"""What a buyer who reads another locale than the maker's is used to: measures and stitch names.

Stitch names are common practice: Canada has the American ones, other countries that speak English
the British; a language of its own has names of its own, and a catalogue knows them. Inches and
ounces are what people of the United States measure by (Unicode TR 35, part 6, measurement data:
its other countries with that system have no maker's tongue here).
"""

from __future__ import annotations

from quoting.core.ground.measures import Units
from quoting.core.workshop.stitches import Vocabulary

_AMERICAN_NAMES = frozenset({"CA", "US"})
_BRITISH_NAMES = frozenset({"AU", "GB", "IE", "IN", "NZ", "ZA"})


def units_read_in(locale: str, usual: Units) -> Units:
    """Return the units that a locale's readers measure by; the usual where it tells nothing."""
    language, country = _parts(locale)
    if country == "US":
        return Units.INCHES
    return usual if language == "en" and not country else Units.METRIC


def stitch_names_read_in(locale: str, usual: Vocabulary) -> Vocabulary:
    """Return whose stitch names a locale's readers know; the usual where it tells nothing."""
    _, country = _parts(locale)
    if country in _AMERICAN_NAMES:
        return Vocabulary.US
    return Vocabulary.UK if country in _BRITISH_NAMES else usual


def _parts(locale: str) -> tuple[str, str]:
    """Return a locale's language and its country, which may be empty."""
    language, *others = locale.replace("-", "_").split("_")
    return language.lower(), next((part.upper() for part in others if len(part) == 2), "")
