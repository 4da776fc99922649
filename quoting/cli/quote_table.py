"""A quote as a page of plain text: the plan, the yarn, the hours, the costs and the price."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from decimal import Decimal

from quoting.cli.body_facts import body_facts
from quoting.cli.columns import PAGE_WIDTH, columns, facts, wrapped
from quoting.core.estimate.ball_ends import BallEnd
from quoting.core.estimate.chores import Part
from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.skeins import Bought
from quoting.core.estimate.strands import Why, ends_needleful
from quoting.core.ground.cautions import Caution, Reader
from quoting.core.plan.passes import Plan
from quoting.core.price.payments import Payments
from quoting.core.quote.fate_of_ends import main_fate
from quoting.core.quote.quote import Quote
from quoting.core.weighing.closing import closing_of
from quoting.wording import (
    Speech,
    body_heading,
    body_pass,
    caution_sentence,
    foundation_words,
    line_quantity,
    line_rate,
    line_unit,
    line_what,
    off_words,
    part_words,
    point_words,
    speech_of,
    task_words,
)
from quoting.wording.ends import FATES, but_for_words
from quoting.wording.shapes import made_size

MOST_BALLS = 3
MOST_ROUNDS = 8


def quote_table(quote: Quote) -> str:
    """Return the page. Errors: as `speech_of`."""
    speech = speech_of(quote.workshop)
    parts = (
        _head(quote, speech),
        _titled("Blanket", facts(list(_blanket(quote, speech)))),
        _titled("Yarn", _yarn(quote, speech)),
        _titled("Ends", facts(list(_ends(quote, speech)))),
        _titled("Hours", _hours(quote, speech)),
        _titled(f"Costing, in {speech.currency}", _lines(quote, speech)),
        _titled(f"Price, in {speech.currency}", _price(quote, speech)),
        _titled("Worth knowing", _cautions(quote.cautions, speech)),
    )
    return "\n\n".join("\n".join(part) for part in parts) + "\n"


def _titled(title: str, lines: Iterator[str]) -> Iterator[str]:
    yield title
    yield "-" * PAGE_WIDTH
    yield from lines


def _head(quote: Quote, speech: Speech) -> Iterator[str]:
    order = quote.order
    yield from wrapped(f"Quote {quote.number}, {quote.workshop.name}", PAGE_WIDTH)
    several = f"{speech.number(order.quantity)} × " if order.quantity > 1 else ""
    buyer = f", for {order.buyer}" if order.buyer else ""
    yield from wrapped(f"{several}{order.title}{buyer}", PAGE_WIDTH)
    yield f"Given {speech.day(quote.day)}, valid until {speech.day(quote.valid_until)}"
    yield f"With the buyer by {speech.day(quote.ready_by)}, if agreed today"


def _blanket(quote: Quote, speech: Speech) -> Iterator[tuple[str, str]]:
    plan, design = quote.plan, quote.order.design
    yield "Size asked", speech.size(design.width_cm, design.height_cm)
    yield "Size made", made_size(plan, speech)
    yield "Against asked", off_words(closing_of(quote), speech)
    yield from body_facts(quote, speech)
    if plan.foundation_chain:
        yield "Begin", foundation_words(quote, speech)
    rows = speech.number(sum(plan.rows_by_colour.values()))
    yield body_heading(plan), f"{rows}: {_counts(plan.rows_by_colour, speech)}"
    if len(plan.rows_by_section) > 1:
        counts = (speech.count(each, body_pass(plan)) for each in plan.rows_by_section)
        yield "In sections", ", ".join(f"{n}: {count}" for n, count in enumerate(counts, 1))
    if plan.rounds:
        yield "Border", _border(plan, speech)


def _counts(counts: Mapping[str, int], speech: Speech) -> str:
    return ", ".join(f"{name} {speech.number(count)}" for name, count in counts.items())


def _border(plan: Plan, speech: Speech) -> str:
    """Return the stitches of each round; of many, the first and the last."""
    said = [
        f"{speech.number(r.stitches[r.stitch])} {speech.stitch(r.stitch)} in {r.colour}"
        for r in plan.rounds
    ]
    if len(said) > MOST_ROUNDS:
        said = [*said[: MOST_ROUNDS - 1], f"… {said[-1]}"]
    return f"{speech.count(len(plan.rounds), 'round')}: {', '.join(said)}"


def _yarn(quote: Quote, speech: Speech) -> Iterator[str]:
    colour, balls = speech.worded("Colour"), speech.worded("Balls")
    heading = (colour, "Yarn used", "To have", "Weighs", balls, "Left")
    yield from columns([heading, *(_colour(c, speech) for c in quote.estimate.colours)])
    yield ""
    yield from facts([(c.colour, _balls(c, quote.plan, speech)) for c in quote.estimate.colours])


def _colour(colour: ColourEstimate, speech: Speech) -> tuple[str, ...]:
    return (
        f"{colour.colour} ({colour.source.yarn})",
        speech.yarn_length(colour.metres),
        speech.yarn_length(colour.metres_to_buy),
        speech.weight(colour.grams),
        speech.number(colour.choice.skeins),
        speech.yarn_length(colour.metres_left),
    )


def _balls(colour: ColourEstimate, plan: Plan, speech: Speech) -> str:
    """Return what to buy for a colour and where its balls are used up."""
    bought = [_bought(some, speech) for some in colour.choice.bought]
    if colour.from_stock_g:
        bought = [f"{speech.weight(colour.from_stock_g)} from stock", *bought]
    ends = [_ball_end(end, plan) for end in colour.ball_ends if end.expected]
    more = f"; and {len(ends) - MOST_BALLS} more" if len(ends) > MOST_BALLS else ""
    used = (
        f"; {speech.worded('a ball')} is used up {'; '.join(ends[:MOST_BALLS])}{more}"
        if ends
        else ""
    )
    return ", ".join(bought) + used


def _bought(some: Bought, speech: Speech) -> str:
    ball = speech.weight(some.put_up.weight_g)
    if some.put_up.pack == 1:
        return f"{speech.number(some.packs)} × {ball}"
    return f"{speech.count(some.packs, 'pack')} of {some.put_up.pack} × {ball}"


def _ball_end(end: BallEnd, plan: Plan) -> str:
    """Return where a ball is used up, and between which rows that may come to be."""
    assert end.expected is not None, "a ball that lasts has no end to tell"  # noqa: S101
    limits = [point_words(p, plan) for p in (end.soonest, end.latest) if p is not None]
    between = f" (soonest {limits[0]}, latest {limits[1]})" if len(limits) > 1 else ""
    return point_words(end.expected, plan) + between


def _ends(quote: Quote, speech: Speech) -> Iterator[tuple[str, str]]:
    estimate = quote.estimate
    ends = f"{speech.count(estimate.ends, 'end')}{but_for_words(quote, speech)}"
    yield FATES[main_fate(quote)].to_do.capitalize(), ends
    yield "Carried up", speech.count(estimate.carries, "time")
    needlefuls = sum(ends_needleful(strand, quote.plan) for strand in estimate.strands)
    yield "Cut", speech.count(estimate.ended(Why.CUT) - needlefuls, "time")
    if needlefuls:
        yield "Needleful ends in a seam", speech.count(needlefuls, "time")
    yield speech.worded("New ball joined"), speech.count(estimate.ended(Why.RAN_OUT), "time")


def _hours(quote: Quote, speech: Speech) -> Iterator[str]:
    hours = quote.estimate.hours
    rows = [
        (part_words(part, speech, quote), speech.hours(hours.of(part)))
        for part in Part
        if hours.of(part)
    ]
    yield from columns([*rows, ("All of it", speech.hours(hours.total))])
    yield f"Range: {speech.hours_range(hours.low, hours.high)}"
    if hours.not_given:
        missing = ", ".join(task_words(what, speech) for what in hours.not_given)
        yield from wrapped(f"Not counted yet: {missing}", PAGE_WIDTH)


def _lines(quote: Quote, speech: Speech) -> Iterator[str]:
    heading = ("What", "Quantity", "", "Rate", "Amount")
    rows = [
        (
            line_what(line, speech),
            line_quantity(line, speech),
            line_unit(line, speech),
            line_rate(line, speech),
            speech.bare_money(line.amount),
        )
        for line in quote.lines
    ]
    yield from columns([heading, *rows])


def _price(quote: Quote, speech: Speech) -> Iterator[str]:
    price = quote.price
    amounts: list[tuple[str, Decimal]] = [("Cost, pay included", price.cost), ("Fees", price.fees)]
    amounts += [("Tax", price.tax)] if price.tax else []
    amounts += [("Profit", price.profit), ("Price", price.price)]
    amounts += [("Price of each", price.each)] if price.quantity > 1 else []
    amounts += [("Delivery", price.delivery), ("Total", price.total)]
    amounts += _payments(price.parts)
    amounts += [("An hour earns", price.earned_per_hour)]
    yield from columns([(name, speech.bare_money(amount)) for name, amount in amounts])
    yield f"Margin: {speech.percent(price.margin)} of what is left after tax"
    yield from _in_buyers_currency(quote, speech)


def _payments(parts: Payments) -> list[tuple[str, Decimal]]:
    """Return what is paid when; nothing where none of it is agreed."""
    if not parts.at_half:
        told = [("Deposit", parts.deposit), ("Balance", parts.balance)]
        return told if parts.deposit else []
    told = [("Deposit", parts.deposit), ("When half is made", parts.at_half), ("Rest", parts.rest)]
    return [(name, amount) for name, amount in told if amount]


def _in_buyers_currency(quote: Quote, speech: Speech) -> Iterator[str]:
    rate, total = quote.price.exchange, quote.price.buyer_total
    if rate is None or total is None:
        return
    cushion = f", with {speech.percent(rate.cushion)} to spare" if rate.cushion else ""
    at = f"{speech.number(rate.rate)} {rate.currency} for {speech.number(rate.per)}"
    yield from wrapped(
        f"For the buyer: {speech.money(total, rate.currency)}, at {at} {quote.price.currency} "
        f"on {speech.day(rate.day)}{cushion}",
        PAGE_WIDTH,
    )


def _cautions(cautions: Sequence[Caution], speech: Speech) -> Iterator[str]:
    for caution in cautions:
        told = "For the buyer: " if caution.reader is Reader.BUYER else ""
        first, *more = wrapped(told + caution_sentence(caution, speech), PAGE_WIDTH - 2)
        yield f"- {first}"
        yield from (f"  {line}" for line in more)
