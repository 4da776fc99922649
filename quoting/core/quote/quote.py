"""The quote: an order priced, numbered, dated and valid until a day."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from quoting.core.estimate.estimate import Estimate, estimate_plan
from quoting.core.ground.cautions import Caution
from quoting.core.ground.money import MINUTES_PER_HOUR
from quoting.core.order.order import Order
from quoting.core.plan.passes import Plan
from quoting.core.plan.plan import plan_order
from quoting.core.price.cost_lines import Line
from quoting.core.price.price import Price, price_estimate
from quoting.core.quote.advice import advise
from quoting.core.quote.quote_number import quote_number
from quoting.core.workshop.calendar import later, ready_by
from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class Quote:
    """Everything that was asked, reckoned and offered. It is never changed once given.

    Its `number` is empty while a book keeps its order, and is given with the quote.
    """

    number: str
    day: date
    valid_until: date
    ready_by: date
    order: Order
    workshop: Workshop
    plan: Plan
    estimate: Estimate
    price: Price
    cautions: tuple[Caution, ...]

    @property
    def lines(self) -> tuple[Line, ...]:
        """Every line of the costing, in the order it is shown."""
        return self.price.lines


def quote_order(order: Order, workshop: Workshop, *, today: date) -> Quote:
    """Return the quote of an order, given on `today`.

    Errors: as `plan_order`, `estimate_plan` and `price_estimate`.
    """
    plan = plan_order(order, workshop)
    estimate = estimate_plan(plan, order, workshop)
    price = price_estimate(order, estimate, workshop)
    ready = ready_by(
        today,
        calendar=workshop.calendar,
        hours=estimate.hours.span.high / MINUTES_PER_HOUR,
        hours_per_week=workshop.hours_per_week,
        yarn_bought=estimate.skeins > 0,
    )
    valid_until = later(today, workshop.pricing.valid_days)
    return Quote(
        number=quote_number(order, workshop, plan, price, day=today, promised=(ready, valid_until)),
        day=today,
        valid_until=valid_until,
        ready_by=ready,
        order=order,
        workshop=workshop,
        plan=plan,
        estimate=estimate,
        price=price,
        cautions=tuple(advise(order, workshop, plan, estimate, price, today=today, ready=ready)),
    )
