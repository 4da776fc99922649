"""The cost lines of an order: yarn, extras, packaging, hours, overhead, delivery."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from quoting.core.estimate.estimate import ColourEstimate, Estimate
from quoting.core.estimate.hours import Hours
from quoting.core.ground.money import exact, product, round_half_up, round_money
from quoting.core.order.order import Order
from quoting.core.workshop.selling import YarnCharged
from quoting.core.workshop.workshop import Workshop


class LineKind(StrEnum):
    """What a line pays for, or how it moves the price."""

    YARN = "yarn"
    EXTRA = "extra"
    PACKAGING = "packaging"
    MAKING = "making"
    OFFICE = "office"
    OVERHEAD = "overhead"
    DELIVERY = "delivery"
    RUSH = "rush"
    DISCOUNT = "discount"
    MINIMUM = "minimum"
    FEE = "fee"


class Unit(StrEnum):
    """What a line's quantity counts."""

    SKEIN = "skein"
    PACK = "pack"
    GRAM = "g"
    HOUR = "h"
    PIECE = "piece"
    PAYMENT = "payment"
    MONEY = "money"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One line of a costing: `amount` is quantity × rate, rounded once to minor units.

    `subject` is the colour, the extra or the fee it is about, empty where the kind says all;
    `ball_g` and `pack` are those of a yarn line's put-up; `share` is what part of the price of
    one blanket a rush or a discount is.
    """

    kind: LineKind
    subject: str = ""
    quantity: Decimal
    unit: Unit
    rate: Decimal
    amount: Decimal
    ball_g: float | None = None
    pack: int = 1
    share: Decimal | None = None


def cost_lines(order: Order, estimate: Estimate, workshop: Workshop) -> tuple[Line, ...]:
    """Return every cost line of an order, each of an amount in whole minor units."""
    return tuple(_all_lines(order, estimate, workshop))


def delivery_of(order: Order, grams: Decimal, workshop: Workshop) -> tuple[Decimal, Decimal, bool]:
    """Return what delivery is charged and costs, and whether a band of the workshop's fitted."""
    delivery = workshop.delivery
    weight_g = float(grams) + delivery.packaging_g * order.quantity
    band = delivery.band_for(order.deliver_to, weight_g)
    if band is None:
        return delivery.charged, delivery.paid, not delivery.bands or order.deliver_to is None
    return band.charged, band.paid, True


def _all_lines(order: Order, estimate: Estimate, workshop: Workshop) -> Iterator[Line]:
    money = workshop.currency
    for colour in estimate.colours:
        yield from _yarn_lines(colour, workshop)
    for extra in order.extras:
        yield _line(
            LineKind.EXTRA, order.quantity, Unit.PIECE, extra.cost, money, subject=extra.what
        )
    packaging = workshop.delivery.packaging
    if packaging:
        yield _line(LineKind.PACKAGING, order.quantity, Unit.PIECE, packaging, money)
    yield from _hour_lines(estimate.hours, workshop)
    grams = round_half_up(estimate.grams, 0)
    _, paid, _ = delivery_of(order, grams, workshop)
    if paid:
        yield _line(LineKind.DELIVERY, 1, Unit.PIECE, paid, money)


def _yarn_lines(colour: ColourEstimate, workshop: Workshop) -> Iterator[Line]:
    """Yield what a colour's yarn costs: grams from stock, then skeins bought or grams used."""
    money = workshop.currency
    stock_g = round_half_up(colour.from_stock_g, 0)
    if stock_g:
        rate = workshop.yarn(colour.source.yarn).cheapest_per_gram
        yield _line(LineKind.YARN, stock_g, Unit.GRAM, rate, money, subject=colour.colour)
    if not colour.choice.bought:
        return
    if workshop.pricing.yarn_charged is YarnCharged.USED:
        used_g = round_half_up(colour.grams, 0) - stock_g
        rate = colour.choice.cost / exact(colour.choice.bought_g)
        yield _line(LineKind.YARN, used_g, Unit.GRAM, rate, money, subject=colour.colour)
        return
    for bought in colour.choice.bought:
        put_up = bought.put_up
        yield _line(
            LineKind.YARN,
            bought.packs,
            Unit.SKEIN if put_up.pack == 1 else Unit.PACK,
            put_up.price,
            money,
            subject=colour.colour,
            ball_g=put_up.weight_g,
            pack=put_up.pack,
        )


def _hour_lines(hours: Hours, workshop: Workshop) -> Iterator[Line]:
    pay = workshop.pay
    for kind, quantity, rate in (
        (LineKind.MAKING, hours.making, pay.making_per_hour),
        (LineKind.OFFICE, hours.office, pay.office_per_hour),
        (LineKind.OVERHEAD, hours.total, pay.overhead_per_hour),
    ):
        if quantity and rate:
            yield _line(kind, quantity, Unit.HOUR, rate, workshop.currency)


def _line(
    kind: LineKind,
    quantity: Decimal | int,
    unit: Unit,
    rate: Decimal,
    currency: str,
    *,
    subject: str = "",
    ball_g: float | None = None,
    pack: int = 1,
) -> Line:
    return Line(
        kind=kind,
        subject=subject,
        quantity=Decimal(quantity),
        unit=unit,
        rate=rate,
        amount=round_money(product(quantity, rate), currency),
        ball_g=ball_g,
        pack=pack,
    )
