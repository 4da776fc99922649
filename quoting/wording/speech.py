"""How one workshop speaks: its measures, its stitch names, its days, its words.

A buyer's document may be in another language than the maker's pages are: in that of its catalogue.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse
from quoting.core.ground.measures import CM_PER, GRAMS_PER, Units
from quoting.core.ground.money import MINUTES_PER_HOUR, exact, round_half_up, round_up_to_step
from quoting.core.quote.offer import Offer
from quoting.core.workshop.stitches import Stitch, Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.wording.catalogues import (
    ENGLISH,
    language_of,
    sentence,
    translated,
    translated_count,
)
from quoting.wording.dates import format_date
from quoting.wording.figures import Figures
from quoting.wording.locales import is_locale, known_locale, locale_of
from quoting.wording.stitch_terms import full_name, short_name
from quoting.wording.trade_speech import spelled, worded

SHORT_YARN, FEW_GRAMS, FEW_HOURS = 10, 10, 5
"""Under so many a decimal is shown."""


_HOURS = sentence("{n}\u00a0h")
_MINUTES = sentence("{n}\u00a0min")
_HOURS_RANGE = sentence("{low} to {high}\u00a0h")


@dataclass(frozen=True, slots=True, kw_only=True)
class Speech(Figures):
    """Says what one workshop's pages and documents show.

    `language` is that of a buyer's documents, by the code of its catalogue; the maker's own pages
    are English. Edges are called as a `left_handed` maker sees them, or as any other does.
    """

    units: Units = Units.METRIC
    vocabulary: Vocabulary = Vocabulary.US
    language: str = ENGLISH
    left_handed: bool = False

    @property
    def inches(self) -> bool:
        """Whether inches, yards and ounces are shown."""
        return self.units is Units.INCHES

    def length(self, length_cm: float, digits: int = 1) -> str:
        """Return a length of the blanket: `80 cm`, `31.5 in`."""
        return f"{self.bare_length(length_cm, digits)}\u00a0{self.length_unit}"

    def bare_length(self, length_cm: float, digits: int = 1) -> str:
        """Return a length without its unit, in `length_unit`."""
        return self.trimmed(length_cm / CM_PER[self.length_unit], digits)

    def least_length(self, length_cm: float) -> str:
        """Return a length rounded up to a tenth: what is typed after it is no shorter."""
        least = round_up_to_step(exact(length_cm / CM_PER[self.length_unit]), Decimal("0.1"))
        return f"{self.number(least)}\u00a0{self.length_unit}"

    @property
    def length_unit(self) -> str:
        """The unit that sizes are shown in."""
        return "in" if self.inches else "cm"

    def size(self, width_cm: float, height_cm: float) -> str:
        """Return a width and a height: `80 × 100 cm`."""
        return f"{self.bare_length(width_cm)} × {self.length(height_cm)}"

    def yarn_length(self, yarn_m: float, digits: int | None = None) -> str:
        """Return a length of yarn: `210 m`, `230 yd`, with a decimal under ten unless told."""
        length = self.yarn_units(yarn_m)
        shown = self.yarn_digits(yarn_m) if digits is None else digits
        return f"{self.trimmed(length, shown)}\u00a0{self.yarn_unit}"

    def yarn_units(self, yarn_m: float) -> float:
        """Return how many of `yarn_unit` a length of yarn is."""
        return yarn_m * CM_PER["m"] / CM_PER[self.yarn_unit] if self.inches else yarn_m

    def yarn_digits(self, yarn_m: float) -> int:
        """Return the decimals that a length of yarn is said with."""
        return 0 if abs(self.yarn_units(yarn_m)) >= SHORT_YARN else 1

    @property
    def yarn_unit(self) -> str:
        """The unit that lengths of yarn are shown in."""
        return "yd" if self.inches else "m"

    def weight(self, weight_g: Decimal | float) -> str:
        """Return a weight: `100 g`, `3.5 oz`; what is under one of these to two decimals."""
        weight = float(weight_g) / GRAMS_PER[self.weight_unit] if self.inches else weight_g
        digits = 2 if weight < 1 else 1 if self.inches or weight < FEW_GRAMS else 0
        return f"{self.trimmed(weight, digits)}\u00a0{self.weight_unit}"

    @property
    def weight_unit(self) -> str:
        """The unit that weights are shown in."""
        return "oz" if self.inches else "g"

    def hours(self, hours: Decimal) -> str:
        """Return hours as `31 h 20 min`."""
        minutes = int(round_half_up(hours * MINUTES_PER_HOUR, 0))
        whole, rest = divmod(minutes, MINUTES_PER_HOUR)
        said = [self.worded(_HOURS).format(n=self.number(whole))] if whole else []
        said += [self.worded(_MINUTES).format(n=rest)] if rest or not whole else []
        return " ".join(said)

    def hours_range(self, low: Decimal, high: Decimal) -> str:
        """Return a range of hours as `29 to 35 h`, with a decimal where they are few."""
        digits = 0 if high >= FEW_HOURS else 1
        text = self.worded(_HOURS_RANGE)
        return text.format(low=self.number(low, digits), high=self.number(high, digits))

    def day(self, day: date) -> str:
        """Return a date in words: `20 March 2027`."""
        return _as_read(format_date(day, format="long", locale=self._data), self.locale)

    def short_day(self, day: date) -> str:
        """Return a date where there is little room: `20 Mar 2027`."""
        return str(format_date(day, format="medium", locale=self._data))

    def stitch(self, name: str) -> str:
        """Return a stitch as patterns name it, `hdc`; a pattern of stitches keeps its name.

        In a document of another language by the letters of that language's own patterns.
        """
        if name not in set(Stitch):
            return name
        return short_name(Stitch(name), self.vocabulary, self.language)

    def stitch_in_full(self, name: str) -> str:
        """Return a stitch in full, `half double crochet`; a pattern keeps its name."""
        if name not in set(Stitch):
            return name
        return full_name(Stitch(name), self.vocabulary, self.language)

    def count(self, count: int, one: str, many: str = "") -> str:
        """Return so many of a thing: `1 row`, `3 rows`."""
        return f"{self.number(count)} {one if count == 1 else many or one + 's'}"

    def counted(self, count: int, one: str, many: str, **facts: str) -> str:
        """Return so many of a thing in a buyer's document: `{n} row`, `{n} rows`, in its language.

        Both texts are marked as `sentence`s of a catalogue by standing here. What else they name in
        braces are the `facts`.
        """
        text = one if count == 1 else many
        if self.language != ENGLISH:
            text = translated_count(one, many, count, self.language)
        return self._spelled(text).format(n=self.number(count), **facts)

    def worded(self, text: str) -> str:
        """Return a text of the program's own in the trade's words and the spelling of here.

        In a document of another language, in that; in English where its catalogue lacks it.
        """
        if self.language == ENGLISH:
            return self._spelled(text)
        return self._spelled(translated(text, self.language))

    def _spelled(self, text: str) -> str:
        return spelled(worded(text, self.vocabulary, self.locale), self.locale)


FILE_SPEECH = Speech(locale="en")
"""How mistakes are said while no workshop has been read."""


def _as_read(day: str, locale: str) -> str:
    """Return a date in words; in French the first of a month is an ordinal (common practice)."""
    french = locale.startswith("fr") and day.startswith("1 ")
    return f"1er{day[1:]}" if french else day


def speech_of(speaker: Workshop | Offer) -> Speech:
    """Return how a workshop speaks, or an offer in its buyer's language.

    Where a language has no data for a country (`de_FR`), it is said as in any.
    Errors: `not-a-locale` at `workshop.locale`.
    """
    of_buyer = isinstance(speaker, Offer)
    locale = known_locale(speaker.locale) if of_buyer else speaker.locale
    if not is_locale(locale):
        raise refuse("workshop.locale", MistakeCode.NOT_A_LOCALE, read=speaker.locale)
    return Speech(
        locale=str(locale_of(locale)),
        units=speaker.units,
        vocabulary=speaker.speaks,
        currency=speaker.currency,
        language=language_of(locale) if of_buyer else ENGLISH,
        left_handed=isinstance(speaker, Workshop) and speaker.habits.left_handed,
    )
