"""How the rounds of a piece from its centre were reckoned, as sums to be done again by hand."""

from __future__ import annotations

from quoting.core.order.from_centre import FromCentre
from quoting.core.quote.quote import Quote
from quoting.core.weighing.closing import starts_on
from quoting.web.orders.room_sums import room_sum, times_sum
from quoting.wording import Speech, longer_by_words


def centre_of(quote: Quote) -> FromCentre:
    """Return the body of a quote whose blanket is worked from its centre."""
    body = quote.order.design.body
    assert isinstance(body, FromCentre), "these are the sums of rounds"  # noqa: S101
    return body


def rounds_sum(quote: Quote, say: Speech) -> str:
    """Return how the rounds follow from the size, or that they are the maker's own."""
    body, rounds = centre_of(quote), quote.plan.rows
    if body.rounds is not None:
        return f"{say.number(len(rounds))}, your own count"
    if body.repeats is not None:
        period = say.count(sum(stripe.rounds for stripe in body.stripes), "round")
        return f"{body.repeats} × {period} = {len(rounds)}, your own count of repeats"
    heights_cm = [worked.height_cm for worked in rounds[:2]]
    first_cm, each_cm = 2 * heights_cm[0], 2 * heights_cm[-1]
    sum_ = room_sum(_short_cm(quote), each_cm, quote, say, more_cm=-first_cm)
    return f"{sum_} rounds after the first"


def rounds_words(quote: Quote) -> str:
    """Return what the sum of the rounds says, and what size and yarn go by."""
    body, motif = centre_of(quote), quote.plan.rows[0].fabric.motif
    stitch = f"the swatch of {quote.order.design.stitch}"
    goes_by = f"Size and yarn go by {f'the motif {motif}' if motif else stitch}."
    if body.whole_rounds is not None:
        return goes_by
    side = "width" if body.counting.goes_by_width else "shorter side"
    return (
        f"The finished {side} less the border on both sides and the first round, by what each "
        f"round adds, to the nearest whole number. {goes_by}"
    )


def growth_words(quote: Quote, say: Speech) -> str:
    """Return how the stitches grow: `12 stitches in round 1, 16 more in each`."""
    counted, rounds, first = quote.plan.counted, len(quote.plan.rows), quote.plan.rows[0]
    assert counted is not None, "a piece from its centre is counted in rounds"  # noqa: S101
    stitches = first.stitches[first.stitch]
    said = say.count(stitches, "stitch", "stitches")
    total = sum(worked.stitches[worked.stitch] for worked in quote.plan.rows)
    return (
        f"{say.number(rounds)} × {say.number(stitches)} + {counted.growth} × {rounds} × "
        f"({rounds} − 1) / 2 = {say.number(total)} in all: {said} in round 1, "
        f"{counted.growth} more in each"
    )


def longer_words(quote: Quote, say: Speech) -> str:
    """Return by how much a rectangle is longer, and how that follows; empty of other shapes."""
    plan, extra = quote.plan, starts_on(quote.plan)
    if not extra:
        return ""
    said = f"Longer by {longer_by_words(plan, say)} than a square"
    each_cm = abs(plan.height_cm - plan.width_cm) / extra
    own = ", your own count" if centre_of(quote).starts_on is not None else ""
    return f"{said}{own}: {times_sum(extra, each_cm, say)}."


def _short_cm(quote: Quote) -> float:
    design = quote.order.design
    if centre_of(quote).counting.goes_by_width:
        return design.width_cm
    return min(design.width_cm, design.height_cm)
