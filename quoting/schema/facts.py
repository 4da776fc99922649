"""The kind that is the facts of a caution: each as a record holds it, and as what it was."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from types import MappingProxyType

from quoting.core.ground.errors import Fact, Facts
from quoting.schema.figures import EXACT, is_number
from quoting.schema.kind import Kind
from quoting.schema.notation import Notation
from quoting.schema.several import named_spots
from quoting.schema.spot import Spot
from quoting.schema.words import DAY

_DECIMAL, _DAY = "decimal", "day"
"""What an exact number and a day are kept under, or they would come back as texts."""


class FactTable(Kind[Facts]):
    """Facts by name: texts, numbers, days, lists of words or counts, and what is not there."""

    def read(self, spot: Spot) -> Facts:
        """Return the facts. Errors: `wrong-type`; as an exact number's or a day's."""
        return MappingProxyType({name: _read(inner) for name, inner in named_spots(spot)})

    def write(self, value: Facts, notation: Notation) -> Mapping[str, object]:
        """Return the table."""
        del notation
        return {name: _written(fact) for name, fact in value.items()}


def _read(spot: Spot) -> Fact:
    match spot.value:
        case None | str():
            return spot.value
        case list():
            return _listed(spot, spot.value)
        case {"decimal": number}:
            return EXACT.from_record(spot.at(_DECIMAL, number))
        case {"day": day}:
            return DAY.from_record(spot.at(_DAY, day))
        case int() | float() if is_number(spot.value):
            return spot.value
    return spot.wrong(None, "text")


def _listed(spot: Spot, items: list[object]) -> Fact:
    words = tuple(item for item in items if isinstance(item, str))
    counts = tuple(item for item in items if isinstance(item, int) and is_number(item))
    whole = next((part for part in (words, counts) if len(part) == len(items)), None)
    return spot.wrong((), "list") if whole is None else whole


def _written(fact: Fact) -> object:
    match fact:
        case Decimal():
            return {_DECIMAL: EXACT.to_record(fact)}
        case date():
            return {_DAY: DAY.to_record(fact)}
        case tuple():
            return list(fact)
    return fact


FACTS = FactTable()
