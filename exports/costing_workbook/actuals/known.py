"""What is known of what an order really took, to be filled into the sheet of actuals."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from types import MappingProxyType

from quoting.core.estimate.chores import Part
from quoting.core.ground.money import exact
from quoting.core.making.money_due import MoneyDue
from quoting.core.making.outcome import Outcome
from quoting.core.making.parts_taken import parts_taken
from quoting.core.quote.quote import Quote


@dataclass(frozen=True, slots=True, kw_only=True)
class Actuals:
    """Hours by part, grams by the estimate's colours, money in the maker's own currency.

    What is not in it was not told, and its cells are left to be filled in. `projected` are the
    rows that no session told.
    """

    hours: Mapping[Part, Decimal] = field(default_factory=lambda: MappingProxyType({}))
    grams: Mapping[str, Decimal] = field(default_factory=lambda: MappingProxyType({}))
    paid: Decimal | None = None
    yarn_cost: Decimal | None = None
    projected: tuple[int, ...] = ()

    @property
    def is_from_log(self) -> bool:
        """Whether anything is known."""
        return self != NOTHING_KNOWN


NOTHING_KNOWN = Actuals()


def actuals_of(quote: Quote, outcome: Outcome, due: MoneyDue) -> Actuals:
    """Return what the log of an order tells, for the sheet.

    Its hours are shared as `parts_taken` has them. What was paid is known once all of it is.
    """
    hours: dict[Part, Decimal] = {}
    for work in outcome.work:
        if work.took is not None:
            hours |= parts_taken(quote.estimate.hours, work.doing, work.took)
    grams = {c.colour: exact(c.took_g) for c in outcome.colours if c.took_g is not None}
    own = due.currency == outcome.currency
    return Actuals(
        hours=hours,
        grams=grams,
        paid=due.received if own and due.received and not due.due else None,
        yarn_cost=outcome.yarn_cost if any(c.cost is not None for c in outcome.colours) else None,
        projected=outcome.projected,
    )
