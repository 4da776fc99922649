"""How the stitches and rows of a body in rows were reckoned, as sums to be done again by hand."""

from __future__ import annotations

from itertools import groupby

from quoting.core.order.in_rows import InRows
from quoting.core.plan.rows.counts import stitch_repeat
from quoting.core.quote.quote import Quote
from quoting.web.orders.reckonings import main_gauge
from quoting.web.orders.room_sums import room_sum
from quoting.wording import Speech, listed


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
    return f"{room_sum(side, gauge.width_cm, quote, say)} stitches"


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
    return f"{room_sum(height_cm, main_gauge(quote).height_cm, quote, say)} rows"


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
