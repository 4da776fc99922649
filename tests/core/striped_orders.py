"""Orders of many stripes, the calmer ones offered, and their ends counted by hand."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from quoting.core.order.in_rows import Section
from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan
from quoting.core.quote.quote import Quote
from quoting.core.weighing.alternatives import Alternative
from quoting.core.weighing.calmer_stripes import calmer_stripes
from quoting.core.workshop.habits import Habits
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import PutUp
from tests.examples import (
    TODAY,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    sample_yarn,
)

ENDLESS = PutUp(weight_g=10_000, length_m=20_000, price=Decimal(400))
"""A ball that no blanket uses up, so that nothing is ever joined."""


def endless(**changes: Any) -> Workshop:
    """Return a workshop whose balls never run out."""
    return sample_workshop(yarns=(sample_yarn(put_ups=(ENDLESS,), stock=()),), **changes)


def striped(*sections: Section, **changes: Any) -> Order:
    """Return an order of these sections, without extras."""
    return sample_order(design=sample_design(sections=sections, **changes), extras=())


def offered(order: Order, workshop: Workshop | None = None) -> tuple[Alternative, ...]:
    """Return the calmer stripes offered for an order."""
    return calmer_stripes(sample_quote(order, workshop), today=TODAY)


def strands_counted(plan: Plan, habits: Habits, blankets: int) -> int:
    """Return the strands of a blanket whose balls never run out, by following each yarn by hand.

    Rows turn, so a yarn hangs at the edge that its row came to; every border round begins and ends
    where the last row did.
    """
    rows, rounds = plan.rows, plan.rounds
    edge_of_last = len(rows) % 2
    worked = [(row.colour, n % 2, (n + 1) % 2, row.height_cm) for n, row in enumerate(rows)]
    worked += [(r.colour, edge_of_last, edge_of_last, r.height_cm) for r in rounds]
    strands, hangs = 0, dict[str, tuple[int, int]]()
    for number, (colour, begins, ends, _) in enumerate(worked):
        edge, left_at = hangs.get(colour, (None, -1))
        waited = worked[left_at + 1 : number]
        climbs_cm = sum(height_cm for *_, height_cm in waited)
        carried = (
            edge == begins
            and len(waited) <= habits.carry_rows
            and climbs_cm <= habits.carry_height_cm + 1e-9
        )
        goes_on = edge is not None and (not waited or carried)
        strands += not goes_on
        hangs[colour] = (ends, number)
    return strands * blankets


def ends_counted(quote: Quote) -> int:
    """Return the ends of a quote's strands, counted by hand."""
    return 2 * strands_counted(quote.plan, quote.workshop.habits, quote.order.quantity)
