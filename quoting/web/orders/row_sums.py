"""How the stitches and rows of a body in rows were reckoned, as sums to be done again by hand."""

from __future__ import annotations

from itertools import groupby

from quoting.core.ground.measures import CM_PER_INCH
from quoting.core.ground.money import round_half_up
from quoting.core.order.in_rows import InRows
from quoting.core.plan.rows.counts import stitch_repeat
from quoting.core.quote.quote import Quote
from quoting.web.orders.reckonings import DIGITS, main_gauge
from quoting.wording import Speech, confirming_digits, listed

ROOM_DIGITS = 1


def rows_of(quote: Quote) -> InRows:
    """Return the body of a quote whose blanket is worked in rows."""
    body = quote.order.design.body
    assert isinstance(body, InRows), "these are the sums of rows"  # noqa: S101
    return body


def stitches_sum(quote: Quote, say: Speech) -> str:
    """Return how the stitches follow from the width, before they are made a whole number."""
    side, gauge = quote.order.design.width_cm, main_gauge(quote)
    if rows_of(quote).stitches is not None:
        return f"{say.number(quote.plan.stitches)}, your own count"
    return f"{_room_sum(side, gauge.width_cm, quote, say)} stitches"


def stitches_words(quote: Quote) -> str:
    """Return what the sum of the stitches says."""
    multiple, plus = stitch_repeat(rows_of(quote), quote.order.design, quote.workshop)
    whole = "the nearest whole number"
    if multiple > 1 or plus:
        whole = f"the nearest multiple of {multiple}, and {plus} more"
    return f"the finished width less the border on both sides, by the width of a stitch, to {whole}"


def rows_sum(quote: Quote, say: Speech) -> str:
    """Return how the rows follow from the height, before whole repeats are taken of them."""
    height_cm = quote.order.design.height_cm
    return f"{_room_sum(height_cm, main_gauge(quote).height_cm, quote, say)} rows"


def sections_words(quote: Quote, say: Speech) -> list[str]:
    """Return what each section of stripes takes of them."""
    sections, plan = rows_of(quote).sections, quote.plan
    return [
        f"Section {number}: {say.count(rows, 'row')}, "
        + (
            _fitted_words(quote, number - 1)
            if section.fitted
            else f"{say.trimmed(repeats, 2)} times {say.count(section.rows, 'row')}"
        )
        for number, (section, repeats, rows) in enumerate(
            zip(sections, plan.section_repeats, plan.rows_by_section, strict=True), 1
        )
    ]


def _fitted_words(quote: Quote, section: int) -> str:
    """Return what stripes came to that were fit to the length: `52 oat and 51 teal`."""
    rows = (row.colour for row in quote.plan.rows if row.section == section)
    return listed([f"{len(list(run))} {colour}" for colour, run in groupby(rows)], "and")


def _room_sum(side_cm: float, each_cm: float, quote: Quote, say: Speech) -> str:
    """Return how often a length goes into a side: `(80 − 2 × 0.63) / 0.8 = room for 98.4`."""
    inside = [side_cm, quote.plan.border_depth_cm, each_cm]
    side, depth, each = (length / (CM_PER_INCH if say.inches else 1) for length in inside)
    room = round_half_up((side - 2 * depth) / each, ROOM_DIGITS)

    def confirms(digits: int) -> bool:
        a, b, c = (round_half_up(length, digits) for length in (side, depth, each))
        return bool(c) and round_half_up((a - 2 * b) / c, ROOM_DIGITS) == room

    digits = confirming_digits(DIGITS, confirms)
    whole, border, one = (say.trimmed(length, digits) for length in (side, depth, each))
    body = f"({whole} − 2 × {border})" if depth else whole
    return f"{body} / {one} = room for {say.number(room)}"
