"""How the figures of a plan were reckoned, as sums that can be done again by hand."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.estimate.estimate import ColourEstimate
from quoting.core.estimate.hours import Task
from quoting.core.estimate.strands import Why, ends_needleful
from quoting.core.estimate.yarn_needed import LABEL_ERROR
from quoting.core.ground.money import exact, round_half_up
from quoting.core.plan.gauge import Gauge, Made
from quoting.core.quote.quote import Quote
from quoting.web.shop import shop_now
from quoting.wording import Speech, confirming_digits, pass_words, yarn_widened_words

DIGITS = 2
"""Decimals of a length in a sum, where they are enough."""

EACH_DIGITS = 3
"""Decimals of the minutes for one of a thing, where they are enough."""

MINUTE_DIGITS = 1
SHARE_DIGITS = 3
"""Decimals of a share whose percentage has one."""


def main_gauge(quote: Quote) -> Gauge:
    """Return the gauge of the blanket's own stitch in its own yarn."""
    design = quote.order.design
    return quote.plan.gauges[Made(design.yarn, design.stitch)]


def body_gauge(quote: Quote) -> Gauge:
    """Return the gauge that the body's rounds are measured by: of a motif, or of its stitch."""
    first = quote.plan.rows[0]
    yarn = quote.order.design.source_of(first.colour).yarn
    return quote.plan.gauges[Made(yarn, first.stitch, first.fabric)]


def task_sum(task: Task, say: Speech) -> str:
    """Return how the minutes of a task follow: `4,704 × 0.055 min = 258.7 min`."""
    minutes = round_half_up(task.minutes, MINUTE_DIGITS)
    count = round_half_up(task.count, DIGITS)

    def confirms(digits: int) -> bool:
        each = round_half_up(task.minutes_each, digits)
        return round_half_up(count * each, MINUTE_DIGITS) == minutes

    each = say.trimmed(task.minutes_each, confirming_digits(EACH_DIGITS, confirms))
    return f"{say.trimmed(count, DIGITS)} × {each} min = {say.number(minutes)} min"


def yarn_sum(colour: ColourEstimate, say: Speech) -> str:
    """Return how the yarn to have follows from the yarn that the stitches take."""
    tails = 2 * max(0, len(colour.balls_m) - 1)
    extras_m, to_have = colour.yarn.extras_m, colour.metres_to_buy
    worked_m, last = colour.bare_m - extras_m, say.yarn_digits(to_have)

    def confirms(digits: int) -> bool:
        worked = round_half_up(say.yarn_units(worked_m), digits)
        with_reserve = worked * (1 + round_half_up(colour.reserve, digits + SHARE_DIGITS))
        given = exact(say.yarn_units(tails * colour.tail_m + extras_m))
        return round_half_up(with_reserve + given, last) == (
            round_half_up(say.yarn_units(to_have), last)
        )

    digits = confirming_digits(say.yarn_digits(worked_m), confirms)
    worked = say.yarn_length(worked_m, digits)
    reserve = say.percent(colour.reserve, digits + 1)
    extras = f", {say.yarn_length(extras_m, digits)} in extras" if extras_m else ""
    each = say.length(colour.tail_m * 100, DIGITS)
    joins = (
        f", and {say.count(tails, 'tail')} of {each} for new {say.worded('balls')}" if tails else ""
    )
    return (
        f"{worked} in stitches, carries and tails, {reserve} in reserve{extras}{joins}: "
        f"{say.yarn_length(to_have)} to have"
    )


def reserve_words(quote: Quote, say: Speech) -> str:
    """Return where the reserve comes from."""
    habits = quote.workshop.habits
    if habits.allowance is not None:
        return f"The reserve is your own allowance, {say.percent(habits.allowance)}."
    said = (
        f"The reserve makes it {say.percent(habits.confidence)} sure that the yarn is enough: it "
        "covers what the scale or ruler cannot tell, what is guessed of stitches without a swatch, "
        f"{say.percent(habits.tension)} for uneven {say.worded('tension')} and "
        f"{say.percent(LABEL_ERROR)} in the length on the label."
    )
    return " ".join(filter(None, [said, yarn_widened_words(quote.workshop.ranges.yarn, say)]))


def ends_words(quote: Quote, say: Speech) -> str:
    """Return what becomes of the strands."""
    estimate = quote.estimate
    needlefuls = sum(ends_needleful(strand, quote.plan) for strand in estimate.strands)
    sewn = f"{say.number(needlefuls)} where a needleful ends within a seam, " if needlefuls else ""
    unwanted = "because the yarn does not wait where it is wanted"
    why = unwanted if quote.plan.in_rows else say.worded("as the colour changes")
    return (
        f"{say.number(estimate.ended(Why.FINISHED))} fastened off, "
        f"{say.number(estimate.ended(Why.CUT) - needlefuls)} cut {why}, {sewn}"
        f"{say.number(estimate.ended(Why.RAN_OUT))} where a new {say.worded('ball')} is joined. "
        f"A strand is carried up {say.count(estimate.carries, 'time')}."
    )


def border_round_words(quote: Quote, say: Speech) -> list[str]:
    """Return what each round of the border has."""
    return [
        f"{pass_words(worked).capitalize()}: "
        f"{say.count(worked.stitches[worked.stitch], 'stitch', 'stitches')} of "
        f"{say.stitch(worked.stitch)}"
        for worked in quote.plan.rounds
    ]


def price_sum(quote: Quote, say: Speech) -> str:
    """Return where the money goes: the total is cost, fees, tax and profit, or less a loss."""
    price = quote.price
    parts = [("cost", price.cost), ("fees", price.fees), ("tax", price.tax)]
    parts.append(("profit", max(price.profit, Decimal(0))))
    said = " + ".join(f"{say.bare_money(amount)} {name}" for name, amount in parts if amount)
    loss = f" − {say.bare_money(-price.profit)} loss" if price.profit < 0 else ""
    delivery = f" + {say.bare_money(price.delivery)} delivery" if price.delivery else ""
    paid = f"{say.bare_money(price.price)}{delivery}"
    return f"{paid} = {said}{loss}{_tax_added(quote, say)}"


def _tax_added(quote: Quote, say: Speech) -> str:
    outside = quote.price.sale.added(quote.price.tax)
    return f" − {say.bare_money(outside)} tax that is added" if outside else ""


def target_words(quote: Quote, say: Speech) -> str:
    """Return what the price was made by."""
    target, step = quote.price.target, quote.workshop.pricing.round_up_to
    if target.given is not None:
        return f"A price that you gave: {say.money(target.given)}"
    if target.margin is not None:
        words = f"A margin of {say.percent(target.margin)} of what is left after tax"
    else:
        words = f"A markup of {say.percent(target.markup or 0)} on the cost"
    return f"{words}, rounded up to the next {say.money(step)}" if step else words


def earned_sum(quote: Quote, say: Speech) -> str:
    """Return how what an hour earns follows: profit and own pay over all hours."""
    price = quote.price
    return (
        f"{say.bare_money(price.earned_per_hour)} = ({say.bare_money(price.profit)} + "
        f"{say.bare_money(price.own_pay)}) / {say.number(price.hours, 2)}"
    )


def bare_yarn(length_m: float) -> str:
    """Return a length of yarn without its unit, for a column whose heading has it."""
    return shop_now().speech.yarn_length(length_m).partition("\u00a0")[0]
