"""A quote as plain tables, lists, numbers and text: what `quoting quote --json` prints.

Lengths are in cm and metres, weights in grams, hours in hours to two decimals. Money is text with
its currency's own decimals. A blanket's `rows` are its rows, or its rounds without the border's; of
joined motifs those of all of them together.
"""

from __future__ import annotations

from dataclasses import dataclass

from exports.records.construction_record import construction_record
from exports.records.plain_values import (
    Record,
    money_text,
    plain_facts,
    plain_float,
    plain_number,
    plain_words,
)
from quoting.core.estimate.ball_ends import BallEnd
from quoting.core.estimate.chores import Part
from quoting.core.estimate.estimate import ColourEstimate, Estimate
from quoting.core.estimate.hours import Hours
from quoting.core.estimate.skeins import Bought
from quoting.core.estimate.strands import Point, Strand, Why
from quoting.core.estimate.yarn_range import grams_range
from quoting.core.ground.cautions import Caution
from quoting.core.plan.passes import Plan
from quoting.core.price.cost_lines import Line, Unit
from quoting.core.price.price import Price
from quoting.core.quote.own_stitch import own_stitch
from quoting.core.quote.quote import Quote
from quoting.wording import Speech, caution_sentence, line_what, speech_of


def quote_record(quote: Quote) -> Record:
    """Return a quote as a table that JSON can hold. Errors: as `speech_of`."""
    speech = speech_of(quote.workshop)
    estimate = quote.estimate
    return {
        "quote": _head(quote),
        "blanket": _blanket(quote.plan, quote),
        "strands": _strands(estimate, _Told.of(quote)),
        "yarn": [_yarn(colour, quote) for colour in estimate.colours],
        "hours": _hours(estimate.hours),
        "price": _price(quote.price, speech),
        "warnings": [_warning(caution, speech) for caution in quote.cautions],
    }


def _head(quote: Quote) -> Record:
    return {
        "number": quote.number,
        "day": quote.day.isoformat(),
        "valid_until": quote.valid_until.isoformat(),
        "ready_by": quote.ready_by.isoformat(),
        "title": quote.order.title,
        "buyer": quote.order.buyer,
        "quantity": quote.order.quantity,
        "each": money_text(quote.price.each, quote.price.currency),
    }


def _blanket(plan: Plan, quote: Quote) -> Record:
    design = quote.order.design
    return {
        "stitch": own_stitch(design, plan),
        "stitches": plan.stitches,
        "foundation_chain": plan.foundation_chain,
        "rows": sum(plan.rows_by_colour.values()),
        "rows_by_colour": plan.rows_by_colour,
        "rows_by_section": list(plan.rows_by_section),
        "border_rounds": [worked.stitches[worked.stitch] for worked in plan.rounds],
        "width_cm": plain_float(plan.width_cm),
        "height_cm": plain_float(plan.height_cm),
        "border_depth_cm": plain_float(plan.border_depth_cm),
        "asked": {"width_cm": design.width_cm, "height_cm": design.height_cm},
        **construction_record(quote),
    }


@dataclass(frozen=True, slots=True)
class _Told:
    """What has to be told of a place: of which blanket it is, and of which part, if of several."""

    blanket: bool
    part: bool

    @classmethod
    def of(cls, quote: Quote) -> _Told:
        """Return what has to be told of the places of a quote."""
        return cls(quote.order.quantity > 1, len(quote.plan.parts) > 1)


def _strands(estimate: Estimate, told: _Told) -> Record:
    return {
        "count": len(estimate.strands),
        "ends": estimate.ends,
        "carries": estimate.carries,
        "cuts": estimate.ended(Why.CUT),
        "joins": estimate.ended(Why.RAN_OUT),
        "list": [_strand(strand, told) for strand in estimate.strands],
    }


def _strand(strand: Strand, told: _Told) -> Record:
    return {
        "colour": strand.colour,
        "starts": _point(strand.starts, told),
        "ends": _point(strand.ends, told),
        "metres": plain_float(strand.yarn_m),
        "why": strand.why.value,
    }


def _point(point: Point, told: _Told) -> Record:
    """Return a place in the work; of which blanket, part and copy of it, from 0, if of several."""
    piece: Record = {"piece": point.blanket} if told.blanket else {}
    part: Record = {"part": point.part, "copy": point.copy} if told.part else {}
    return piece | part | {"pass": point.pass_index, "edge": point.edge.value}


def _yarn(colour: ColourEstimate, quote: Quote) -> Record:
    currency, told = quote.price.currency, _Told.of(quote)
    between = grams_range(colour)
    return {
        "colour": colour.colour,
        "yarn": colour.source.yarn,
        "metres": plain_float(colour.metres),
        "grams": plain_float(colour.grams),
        "metres_to_buy": plain_float(colour.metres_to_buy),
        "skeins": colour.choice.skeins,
        "purchase": [_purchase(bought, currency) for bought in colour.choice.bought],
        "grams_low": plain_float(between.low),
        "grams_high": plain_float(between.high),
        "widened_by": quote.workshop.ranges.yarn,
        "from_stock_grams": plain_float(colour.from_stock_g),
        "cost": money_text(quote.price.yarn_cost(colour.colour), currency),
        "metres_left": plain_float(colour.metres_left),
        "runs_out": [_ball_end(end, told) for end in colour.ball_ends],
    }


def _purchase(bought: Bought, currency: str) -> Record:
    """Return what to buy: `count` packs of `pack` balls each, and what one pack costs."""
    put_up = bought.put_up
    return {
        "grams": put_up.weight_g,
        "metres": put_up.length_m,
        "pack": put_up.pack,
        "count": bought.packs,
        "price": money_text(put_up.price, currency),
    }


def _ball_end(end: BallEnd, told: _Told) -> Record:
    """Return where a ball is used up; none where it lasts to the end."""
    points = {"expected": end.expected, "soonest": end.soonest, "latest": end.latest}
    return {name: point and _point(point, told) for name, point in points.items()}


def _hours(hours: Hours) -> Record:
    return {
        **{part.value: float(hours.of(part)) for part in Part},
        "total": float(hours.total),
        "low": float(hours.low),
        "high": float(hours.high),
        "widened_by": hours.widened_by,
        "not_given": list(hours.not_given),
        "tasks": [
            {
                "part": task.part.value,
                "what": task.what,
                "yarn": task.yarn,
                "count": task.count,
                "minutes": plain_float(task.minutes),
                "half_width_minutes": plain_float(task.half_width_min),
                "sure": task.sureness.value,
            }
            for task in hours.tasks
        ],
    }


def _price(price: Price, speech: Speech) -> Record:
    amounts = {
        "cost": price.cost,
        "fees": price.fees,
        "tax": price.tax,
        "listed": price.listed,
        "price": price.price,
        "delivery": price.delivery,
        "total": price.total,
        "deposit": price.deposit,
        "balance": price.balance,
        "at_half": price.parts.at_half,
        "rest": price.parts.rest,
        "profit": price.profit,
        "earned_per_hour": price.earned_per_hour,
    }
    return {
        "currency": price.currency,
        "lines": [_line(line, price.currency, speech) for line in price.lines],
        **{name: money_text(amount, price.currency) for name, amount in amounts.items()},
        "margin": float(price.margin),
        "payments": price.payments,
        "in_buyers_currency": _exchange(price),
    }


def _line(line: Line, currency: str, speech: Speech) -> Record:
    """Return a line; quantity × rate is its amount, once that is rounded."""
    share = line.unit is Unit.MONEY
    return {
        "kind": line.kind.value,
        "what": plain_words(line_what(line, speech)),
        "quantity": money_text(line.quantity, currency) if share else plain_number(line.quantity),
        "unit": line.unit.value,
        "rate": format(line.rate, "f") if share else money_text(line.rate, currency),
        "amount": money_text(line.amount, currency),
    }


def _exchange(price: Price) -> Record | None:
    rate, total = price.exchange, price.buyer_total
    if rate is None or total is None:
        return None
    return {
        "currency": rate.currency,
        "rate": format(rate.for_one, "f"),
        "units": format(rate.rate, "f"),
        "per": format(rate.per, "f"),
        "day": rate.day.isoformat(),
        "cushion": rate.cushion,
        "amount": money_text(total, rate.currency),
    }


def _warning(caution: Caution, speech: Speech) -> Record:
    return {
        "code": caution.code,
        "for": caution.reader.value,
        "facts": plain_facts(caution.facts),
        "text": plain_words(caution_sentence(caution, speech)),
    }
