"""How one workshop speaks: its locale, its units, its stitch names, its currency.

Babel only formats here. Whatever it is given has been rounded half up first, and money has the
decimals of ISO 4217, from which the locale data differ.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from babel import Locale
from babel.numbers import (
    format_currency,
    format_decimal,
    format_percent,
)

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.errors import refuse
from quoting.core.ground.measures import CM_PER, GRAMS_PER, Units
from quoting.core.ground.money import MINUTES_PER_HOUR, exact, round_half_up, round_up_to_step
from quoting.core.quote.offer import Offer
from quoting.core.workshop.stitches import Stitch, Vocabulary, stitch_name
from quoting.core.workshop.workshop import Workshop
from quoting.notation import Marks
from quoting.wording.catalogues import ENGLISH, language_of, translated, translated_count
from quoting.wording.dates import format_date
from quoting.wording.locales import (
    currency_format,
    currency_signs,
    is_locale,
    locale_of,
    marks_of,
    number_text,
    plain_yen,
)
from quoting.wording.trade_speech import worded

RATE_DIGITS = 4
"""Decimals of a rate that is finer than money, such as the price of a gram."""

SHORT_YARN, FEW_GRAMS, FEW_HOURS = 10, 10, 5
"""Under so many a decimal is shown."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Speech:
    """Says figures as one workshop's pages and documents show them.

    `currency` is an ISO 4217 code, or empty where none is known yet. `language` is that of a
    buyer's documents, by the code of its catalogue; the maker's own pages are English. Edges are
    called as a `left_handed` maker sees them, or as any other does.
    """

    locale: str
    units: Units = Units.METRIC
    vocabulary: Vocabulary = Vocabulary.US
    currency: str = ""
    language: str = ENGLISH
    left_handed: bool = False

    @property
    def _data(self) -> Locale:
        """The locale's data, looked up once: by its name they are sought at every number."""
        return locale_of(self.locale)

    @property
    def currency_signs(self) -> tuple[str, ...]:
        """How an amount of the workshop's currency may be marked: by a symbol or its code."""
        return currency_signs(self.locale, self.currency)

    @property
    def marks(self) -> Marks:
        """The decimal and grouping marks that numbers are typed and shown with."""
        return marks_of(self.locale)

    @property
    def inches(self) -> bool:
        """Whether inches, yards and ounces are shown."""
        return self.units is Units.INCHES

    def number(self, value: Decimal | float, digits: int | None = None) -> str:
        """Return a number with so many decimals, or with its own."""
        return number_text(self.locale, str(as_decimal(value)), digits)

    def trimmed(self, value: Decimal | float, digits: int) -> str:
        """Return a number with at most so many decimals and no zeros at their end."""
        return self.number(round_half_up(as_decimal(value), digits))

    def ungrouped(self, value: Decimal | float) -> str:
        """Return a number in full with its own decimals and no grouping, to be typed again."""
        return str(
            format_decimal(
                as_decimal(value),
                locale=self._data,
                decimal_quantization=False,
                group_separator=False,
            )
        )

    def percent(self, share: Decimal | float, digits: int = 1) -> str:
        """Return a share as a percentage with at most so many decimals."""
        rounded = round_half_up(as_decimal(share), digits + 2)
        return str(format_percent(rounded, locale=self._data, decimal_quantization=False))

    def money(self, amount: Decimal, currency: str | None = None, digits: int | None = None) -> str:
        """Return an amount with its currency's symbol, in ISO 4217 decimals unless told.

        Where no currency is known, the plain number.
        """
        code = currency or self.currency
        if not code:
            return self.number(amount, digits)
        places = minor_digits(code) if digits is None else digits
        return plain_yen(
            format_currency(
                round_half_up(amount, places),
                code,
                format=currency_format(self.locale, places),
                locale=self._data,
                currency_digits=False,
            )
        )

    def bare_money(self, amount: Decimal, currency: str | None = None) -> str:
        """Return an amount without its symbol, for columns whose heading names the currency."""
        code = currency or self.currency
        return self.number(amount, minor_digits(code) if code else None)

    def rate(self, amount: Decimal, currency: str | None = None, digits: int = RATE_DIGITS) -> str:
        """Return money for one of a thing, which may be finer than the currency's decimals."""
        code = currency or self.currency
        fine = round_half_up(amount, digits).normalize()
        own = max(0, -int(fine.as_tuple().exponent))
        return self.money(fine, code, max(own, minor_digits(code) if code else 0))

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
        said = [f"{self.number(whole)}\u00a0h"] if whole else []
        return " ".join([*said, f"{rest}\u00a0min"] if rest or not whole else said)

    def hours_range(self, low: Decimal, high: Decimal) -> str:
        """Return a range of hours as `29 to 35 h`, with a decimal where they are few."""
        digits = 0 if high >= FEW_HOURS else 1
        return f"{self.number(low, digits)} to {self.number(high, digits)}\u00a0h"

    def day(self, day: date) -> str:
        """Return a date in words: `20 March 2027`."""
        return str(format_date(day, format="long", locale=self._data))

    def short_day(self, day: date) -> str:
        """Return a date where there is little room: `20 Mar 2027`."""
        return str(format_date(day, format="medium", locale=self._data))

    def stitch(self, name: str) -> str:
        """Return a stitch in the workshop's vocabulary; a pattern keeps its name."""
        if name in set(Stitch):
            return stitch_name(Stitch(name), self.vocabulary)
        return name

    def count(self, count: int, one: str, many: str = "") -> str:
        """Return so many of a thing: `1 row`, `3 rows`."""
        return f"{self.number(count)} {one if count == 1 else many or one + 's'}"

    def counted(self, count: int, one: str, many: str) -> str:
        """Return so many of a thing in a buyer's document: `{n} row`, `{n} rows`, in its language.

        Both texts are marked as `sentence`s of a catalogue by standing here.
        """
        if self.language == ENGLISH:
            text = self.worded(one if count == 1 else many)
        else:
            text = translated_count(one, many, count, self.language)
        return text.format(n=self.number(count))

    def worded(self, text: str) -> str:
        """Return a text of the program's own in the trade's words and the spelling of here.

        In a document of another language, in that.
        """
        if self.language != ENGLISH:
            return translated(text, self.language)
        return worded(text, self.vocabulary, self.locale)


FILE_SPEECH = Speech(locale="en")
"""How mistakes are said while no workshop has been read."""


def speech_of(speaker: Workshop | Offer) -> Speech:
    """Return how a workshop speaks, or an offer in its buyer's language.

    Errors: `not-a-locale` at `workshop.locale`.
    """
    if not is_locale(speaker.locale):
        raise refuse("workshop.locale", MistakeCode.NOT_A_LOCALE, read=speaker.locale)
    return Speech(
        locale=str(locale_of(speaker.locale)),
        units=speaker.units,
        vocabulary=speaker.speaks,
        currency=speaker.currency,
        language=language_of(speaker.locale) if isinstance(speaker, Offer) else ENGLISH,
        left_handed=isinstance(speaker, Workshop) and speaker.habits.left_handed,
    )


def as_decimal(value: Decimal | float) -> Decimal:
    """Return a number as a decimal: its own, or a float's at 15 digits."""
    return value if isinstance(value, Decimal) else exact(value)
