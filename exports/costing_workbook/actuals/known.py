"""What is known of what an order really took, to be filled into the sheet of actuals."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from types import MappingProxyType

from quoting.core.estimate.hours import Part


@dataclass(frozen=True, slots=True, kw_only=True)
class Actuals:
    """Hours by part, grams by the estimate's colours, money in the maker's own currency.

    What is not in it was not told, and its cells are left to be filled in.
    """

    hours: Mapping[Part, Decimal] = field(default_factory=lambda: MappingProxyType({}))
    grams: Mapping[str, Decimal] = field(default_factory=lambda: MappingProxyType({}))
    paid: Decimal | None = None
    yarn_cost: Decimal | None = None


NOTHING_KNOWN = Actuals()
