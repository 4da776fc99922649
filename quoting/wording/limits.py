"""Figures that are past a limit, and the limit, as values of their kind are told."""

from __future__ import annotations

from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal
from typing import Any

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Mistake
from quoting.core.ground.measures import CM_PER, GRAMS_PER
from quoting.core.ground.money import exact
from quoting.notation import MASS, YARN_LENGTH, Quantity
from quoting.schema.figures import Measure, Money, Share
from quoting.schema.kind import Kind
from quoting.schema.price_list import SizeText
from quoting.schema.several import OneOrMore
from quoting.wording.figures import as_decimal
from quoting.wording.speech import Speech

LEAST_DIGITS = 2
"""Digits that a least is said with after its zeros, and decimals that it has in any case."""

SHARE_DIGITS = 6
"""Decimals of a share in per cent, where it has so many."""


def past_limit(
    name: str, fact: Decimal | float, mistake: Mistake, kind: Kind[Any] | None, speech: Speech
) -> str:
    """Return what was read, or the limit it is past, as a value of that kind is told."""
    match kind:
        case Measure() | SizeText():
            return _measure(name, fact, mistake, kind.quantity, speech)
        case Money():
            return speech.rate(as_decimal(fact))
        case Share():
            return f"{speech.percent(fact, SHARE_DIGITS)} ({speech.number(fact)})"
        case OneOrMore():
            return past_limit(name, fact, mistake, kind.each, speech)
    return speech.number(fact)


def _measure(
    name: str, fact: Decimal | float, mistake: Mistake, quantity: Quantity, speech: Speech
) -> str:
    if mistake.code == MistakeCode.TOO_SMALL:
        return _under(name, fact, mistake, quantity, speech)
    if quantity is YARN_LENGTH:
        return speech.yarn_length(float(fact))
    return speech.weight(fact) if quantity is MASS else speech.length(float(fact), 2)


def _unit(quantity: Quantity, speech: Speech) -> tuple[float, str]:
    """Return the unit that a measure is said in: its size in cm, g or m, and its sign."""
    if quantity is MASS:
        return GRAMS_PER[speech.weight_unit], speech.weight_unit
    if quantity is YARN_LENGTH:
        return CM_PER[speech.yarn_unit] / CM_PER["m"], speech.yarn_unit
    return CM_PER[speech.length_unit], speech.length_unit


def _under(
    name: str, fact: Decimal | float, mistake: Mistake, quantity: Quantity, speech: Speech
) -> str:
    """Return a least rounded up, so that it will do as it is said, and what is under it down."""
    size, sign = _unit(quantity, speech)
    limit = mistake.facts.get("limit")
    assert isinstance(limit, int | float | Decimal), "what is too small has a limit"  # noqa: S101
    least = as_decimal(limit) / exact(size)
    digits = max(LEAST_DIGITS, LEAST_DIGITS - 1 - least.adjusted()) if least else LEAST_DIGITS
    towards = ROUND_CEILING if name == "limit" else ROUND_FLOOR
    said = (as_decimal(fact) / exact(size)).quantize(Decimal(1).scaleb(-digits), towards)
    return f"{speech.number(said)}\u00a0{sign}"
