"""A measure as people type it: a number and a unit, or feet and inches."""

from __future__ import annotations

import re
from dataclasses import dataclass
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused, refuse
from quoting.core.ground.measures import CM_PER, GRAMS_PER
from quoting.notation.marks import Marks, plain_text, shown
from quoting.notation.numbers import read_number

INCHES_PER_FOOT = 12

_NAMES = {
    "mm": "millimetre millimetres millimeter millimeters",
    "cm": "centimetre centimetres centimeter centimeters",
    "m": "metre metres meter meters",
    "in": '" ins inch inches',
    "ft": "' foot feet",
    "yd": "yds yard yards",
    "g": "gram grams gramme grammes",
    "kg": "kgs kilo kilos kilogram kilograms",
    "oz": "ozs ounce ounces",
    "lb": "lbs pound pounds",
}
_UNIT = {name: unit for unit, names in _NAMES.items() for name in (unit, *names.split())}

_FEET_AND_INCHES = re.compile(
    r"(?P<feet>\d+) *(?:'|ft\.?|foot|feet) *(?P<inches>.+?) *(?:\"|in\.?|ins\.?|inch|inches)",
    re.IGNORECASE,
)
_NUMBER_AND_UNIT = re.compile(r"(?P<number>.*?) *(?P<unit>[^\W\d_]+|['\"])\.?")


@dataclass(frozen=True, slots=True)
class Quantity:
    """What is measured: the units it may be given in, each as so many of the one used inside."""

    base: str
    factors: tuple[tuple[str, Decimal], ...]

    @property
    def units(self) -> tuple[str, ...]:
        """The units' symbols."""
        return tuple(unit for unit, _ in self.factors)

    def factor(self, unit: str) -> Decimal:
        """Return how many of the inside unit one `unit` is, exactly."""
        return dict(self.factors)[unit]


def _quantity(base: str, factors: dict[str, float]) -> Quantity:
    one = Decimal(repr(factors[base]))
    exact = ((unit, Decimal(repr(factor)) / one) for unit, factor in factors.items())
    return Quantity(base, tuple(exact))


LENGTH = _quantity("cm", CM_PER)
YARN_LENGTH = _quantity("m", CM_PER)
MASS = _quantity("g", GRAMS_PER)


def read_measure(
    text: str, marks: Marks, quantity: Quantity = LENGTH, default_unit: str | None = None
) -> float:
    """Return a measure in the quantity's inside unit: cm, metres of yarn, or grams.

    `default_unit` is taken where the text has none. Errors: `not-a-measure`, `missing-unit`,
    `unknown-unit` with the units there are, and those of `read_number`.
    """
    typed = plain_text(text)
    double = _FEET_AND_INCHES.fullmatch(typed)
    if double is not None and "in" in quantity.units:
        return _feet_and_inches(double, marks, quantity, text)
    single = _NUMBER_AND_UNIT.fullmatch(typed)
    number, name = (single["number"], single["unit"]) if single else (typed, "")
    if not number:
        number, name = typed, ""
    size = _number_in(number, marks, quantity, text)
    return float(size * quantity.factor(_unit(name, quantity, default_unit, text)))


def _feet_and_inches(double: re.Match[str], marks: Marks, quantity: Quantity, text: str) -> float:
    inches = _number_in(double["inches"], marks, quantity, text)
    if not 0 <= inches < INCHES_PER_FOOT:
        raise _not_a_measure(text, quantity)
    feet = _number_in(double["feet"], marks, quantity, text)
    return float((feet * INCHES_PER_FOOT + inches) * quantity.factor("in"))


def _number_in(number: str, marks: Marks, quantity: Quantity, text: str) -> Decimal:
    try:
        return read_number(number, marks)
    except Refused as refused:
        if refused.mistakes[0].code == MistakeCode.NOT_A_NUMBER:
            raise _not_a_measure(text, quantity) from None
        raise


def _unit(name: str, quantity: Quantity, default_unit: str | None, text: str) -> str:
    if not name and default_unit is None:
        raise refuse("", MistakeCode.MISSING_UNIT, read=shown(text), known=quantity.units)
    unit = _UNIT.get(name.lower()) if name else default_unit
    if unit is None or unit not in quantity.units:
        raise refuse("", MistakeCode.UNKNOWN_UNIT, read=shown(name), known=quantity.units)
    return unit


def _not_a_measure(text: str, quantity: Quantity) -> Refused:
    return refuse("", MistakeCode.NOT_A_MEASURE, read=shown(text), known=quantity.units)
