"""How the rounds of a piece from its centre were reckoned, as sums to be done again by hand."""

from __future__ import annotations

from quoting.core.order.from_centre import FromCentre
from quoting.core.quote.quote import Quote
from quoting.core.workshop.rounds import CLUSTER, Counting, Rounds
from quoting.web.orders.room_sums import room_sum, times_sum
from quoting.web.orders.size_off import size_off_words
from quoting.wording import Speech


def centre_of(quote: Quote) -> FromCentre:
    """Return the body of a quote whose blanket is worked from its centre."""
    body = quote.order.design.body
    assert isinstance(body, FromCentre), "these are the sums of rounds"  # noqa: S101
    return body


def centre_off_words(quote: Quote, say: Speech) -> str:
    """Return by how much the piece is off what was asked; of a round one, by its width alone."""
    return size_off_words(quote, say, by_width=_is_round(centre_of(quote)))


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
    side = "width" if _is_round(body) else "shorter side"
    return (
        f"The finished {side} less the border on both sides and the first round, by what each "
        f"round adds, to the nearest whole number. {goes_by}"
    )


def growth_words(quote: Quote, say: Speech) -> str:
    """Return how the stitches grow: `12 stitches in round 1, 16 more in each`."""
    counted = _counted(quote)
    rounds, first = len(quote.plan.rows), quote.plan.rows[0]
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
    extra = _extra(quote)
    if not extra:
        return ""
    one, many = ("cluster", "clusters") if _in_clusters(quote) else ("stitch", "stitches")
    said = f"Longer by {say.count(extra, one, many)} than a square"
    plan = quote.plan
    each_cm = abs(plan.height_cm - plan.width_cm) / extra
    own = ", your own count" if centre_of(quote).starts_on is not None else ""
    return f"{said}{own}: {times_sum(extra, each_cm, say)}."


def _is_round(body: FromCentre) -> bool:
    return body.counting in (Counting.CIRCLE, Counting.HEXAGON)


def _in_clusters(quote: Quote) -> bool:
    return centre_of(quote).counting is Counting.CLUSTERS


def _short_cm(quote: Quote) -> float:
    design = quote.order.design
    if _is_round(centre_of(quote)):
        return design.width_cm
    return min(design.width_cm, design.height_cm)


def _counted(quote: Quote) -> Rounds:
    """Return how the rounds are counted, were it no rectangle."""
    body, design = centre_of(quote), quote.order.design
    return Rounds(
        counting=body.counting,
        kind=quote.workshop.basic_stitch(design.stitch, "stitch"),
        first_side=body.first_side,
        side_chains=body.side_chains,
    )


def _extra(quote: Quote) -> int:
    """Return the stitches, or clusters, that a long side has more than a short one."""
    rounds = len(quote.plan.rows)
    more = quote.plan.stitches - _counted(quote).round(rounds).stitches
    return more // (2 * (CLUSTER if _in_clusters(quote) else 1))
