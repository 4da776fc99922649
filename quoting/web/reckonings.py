"""How the figures of a plan were reckoned, as sums that can be done again by hand."""

from __future__ import annotations

from decimal import Decimal

from quoting.core.counts import stitch_repeat
from quoting.core.estimate import ColourEstimate
from quoting.core.exchange import ExchangeRate
from quoting.core.gauge import Gauge
from quoting.core.measures import CM_PER_INCH
from quoting.core.quote import Quote
from quoting.core.strands import Why
from quoting.core.yarn import LABEL_ERROR
from quoting.web.shop import shop_now
from quoting.wording import Speech

DIGITS = 2


def main_gauge(quote: Quote) -> Gauge:
    """Return the gauge of the blanket's own stitch in its own yarn."""
    design = quote.order.design
    return quote.plan.gauges[design.yarn, design.stitch]


def stitches_sum(quote: Quote, say: Speech) -> str:
    """Return how the stitches follow from the width: `98 = (80 − 2 × 0.63) / 0.80`."""
    side, gauge = quote.order.design.width_cm, main_gauge(quote)
    if quote.order.design.stitches is not None:
        return f"{say.number(quote.plan.stitches)}, your own count"
    body = _body_sum(side, quote, say)
    return f"{say.number(quote.plan.stitches)} = {body} / {_length(gauge.width_cm, say)}"


def stitches_words(quote: Quote) -> str:
    """Return what the sum of the stitches says."""
    multiple, plus = stitch_repeat(quote.order.design, quote.workshop)
    whole = "the nearest whole number"
    if multiple > 1 or plus:
        whole = f"the nearest multiple of {multiple}, and {plus} more"
    return f"the finished width less the border on both sides, by the width of a stitch, to {whole}"


def rows_sum(quote: Quote, say: Speech) -> str:
    """Return how the rows follow from the height, before whole repeats are taken of them."""
    gauge = main_gauge(quote)
    body_cm = quote.order.design.height_cm - 2 * quote.plan.border_depth_cm
    body = _body_sum(quote.order.design.height_cm, quote, say)
    room = say.trimmed(body_cm / gauge.height_cm, 1)
    return f"{body} / {_length(gauge.height_cm, say)} = room for {room} rows"


def sections_words(quote: Quote, say: Speech) -> list[str]:
    """Return what each section of stripes takes of them."""
    design, plan = quote.order.design, quote.plan
    return [
        f"Section {number}: {say.count(rows, 'row')}, {say.trimmed(repeats, 2)} times "
        f"{say.count(sum(stripe.rows for stripe in section.stripes), 'row')}"
        for number, (section, repeats, rows) in enumerate(
            zip(design.sections, plan.section_repeats, plan.rows_by_section, strict=True), 1
        )
    ]


def _body_sum(side_cm: float, quote: Quote, say: Speech) -> str:
    depth_cm = quote.plan.border_depth_cm
    if not depth_cm:
        return _length(side_cm, say)
    return f"({say.bare_length(side_cm, DIGITS)} − 2 × {_length(depth_cm, say)})"


def _length(length_cm: float, say: Speech) -> str:
    return say.number(_size(length_cm, say), DIGITS)


def _size(length_cm: float, say: Speech) -> float:
    """Return a length in the unit that is shown."""
    return length_cm / (CM_PER_INCH if say.inches else 1)


def yarn_sum(colour: ColourEstimate, say: Speech) -> str:
    """Return how the yarn to have follows from the yarn that the stitches take."""
    joins = max(0, len(colour.balls_m) - 1)
    reserve = say.percent(colour.reserve)
    extras_m = colour.yarn.extras_m
    extras = f", {say.yarn_length(extras_m)} in extras" if extras_m else ""
    tails = f", and {say.count(2 * joins, 'tail')} for new balls" if joins else ""
    return (
        f"{say.yarn_length(colour.bare_m - extras_m)} in stitches, carries and tails, {reserve} in "
        f"reserve{extras}{tails}: {say.yarn_length(colour.metres_to_buy)} to have"
    )


def reserve_words(quote: Quote, say: Speech) -> str:
    """Return where the reserve comes from."""
    habits = quote.workshop.habits
    if habits.allowance is not None:
        return f"The reserve is your own allowance, {say.percent(habits.allowance)}."
    return (
        f"The reserve makes it {say.percent(habits.confidence)} sure that the yarn is enough: it "
        f"covers what the scale or ruler cannot tell, {say.percent(habits.tension)} drift of "
        f"tension and {say.percent(LABEL_ERROR)} in the length on the label."
    )


def ends_words(quote: Quote, say: Speech) -> str:
    """Return what becomes of the strands."""
    estimate = quote.estimate
    return (
        f"{say.number(estimate.ended(Why.FINISHED))} fastened off, "
        f"{say.number(estimate.ended(Why.CUT))} cut because the yarn does not wait where it is "
        f"wanted, {say.number(estimate.ended(Why.RAN_OUT))} where a new ball is joined. "
        f"A strand is carried up {say.count(estimate.carries, 'time')}."
    )


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
    price = quote.price
    outside = price.total - price.price - price.delivery
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


def exchange_rate(rate: ExchangeRate, say: Speech) -> str:
    """Return a rate of exchange with six significant digits, as reference rates are given."""
    return say.number(Decimal(f"{rate.rate:.6g}"))


def exchange_words(rate: ExchangeRate, say: Speech) -> str:
    """Return what an amount in another currency was reckoned by, its day and its cushion."""
    one = f"{exchange_rate(rate, say)} for 1 {say.currency}, the rate of {say.day(rate.day)}"
    cushion = f", and {say.percent(rate.cushion)} against its moving" if rate.cushion else ""
    return one + cushion
