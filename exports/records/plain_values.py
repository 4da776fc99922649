"""Values as JSON can hold them: text, numbers, lists and tables; and that JSON as text."""

from __future__ import annotations

import json
from collections.abc import Mapping
from datetime import date
from decimal import Decimal

from quoting.core.ground.currencies import minor_digits
from quoting.core.ground.errors import Fact
from quoting.core.ground.money import round_half_up

Record = dict[str, object]

FLOAT_DIGITS = 3
RATE_DIGITS = 10


def json_text(record: Record) -> str:
    """Return a record as JSON in ASCII, which every terminal and pipe carries unharmed."""
    return json.dumps(record, indent=2) + "\n"


def plain_facts(facts: Mapping[str, Fact]) -> Record:
    """Return facts as JSON can hold them: hours as numbers, money as text, days as ISO 8601."""
    return {name: _plain_fact(name, fact) for name, fact in facts.items()}


def _plain_fact(name: str, fact: Fact) -> object:
    match fact:
        case Decimal():
            return float(fact) if name == "hours" else format(fact, "f")
        case date():
            return fact.isoformat()
        case tuple():
            return list(fact)
        case _:
            return fact


def plain_words(said: str) -> str:
    """Return a sentence with plain spaces for those that no line may break at."""
    return said.replace("\u00a0", " ")


def money_text(amount: Decimal, currency: str) -> str:
    """Return an amount as text with its currency's decimals, or with more where it is finer."""
    whole = round_half_up(amount, minor_digits(currency))
    fine = round_half_up(amount, RATE_DIGITS)
    return format(whole if whole == fine else fine.normalize(), "f")


def plain_number(number: Decimal) -> int | float:
    """Return a number, whole where it is whole."""
    return int(number) if number == number.to_integral_value() else float(number)


def plain_float(value: float) -> float:
    """Return a length, a weight or minutes to three decimals."""
    return float(round_half_up(value, FLOAT_DIGITS))
