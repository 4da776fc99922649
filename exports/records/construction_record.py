"""What a construction adds to the record of a blanket: its parts, its motifs, its rounds."""

from __future__ import annotations

from collections.abc import Callable
from itertools import groupby
from typing import Any

from exports.records.plain_values import Record, plain_float
from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.plan.layout_colours import layouts_made
from quoting.core.plan.passes import Plan
from quoting.core.quote.quote import Quote
from quoting.core.weighing.closing import Closing, closing_of, starts_on
from quoting.schema.blanket_shapes import BODIES


def construction_record(quote: Quote) -> Record:
    """Return how the body is worked, what it closes on, and what only its construction has."""
    body = quote.order.design.body
    word, own = BODIES.word_of(body), OWN.get(type(body))
    record: Record = {
        "construction": word,
        "ends_become": quote.order.design.ends.value,
        "closing": closing_record(closing_of(quote)),
        "parts": _parts(quote.plan),
    }
    return record if own is None else record | {word: own(quote, body)}


def closing_record(closing: Closing) -> Record:
    """Return the counts, and how much wider and longer it is than was asked.

    What goes by its width has no length of its own that could be off.
    """
    return {
        **{counted.value: count for counted, count in closing.counts.items()},
        "off_width_cm": plain_float(closing.off_width_cm),
        "off_height_cm": None if closing.by_width else plain_float(closing.off_height_cm),
    }


def _parts(plan: Plan) -> list[Record]:
    """Return the parts in the order worked; each has so many passes, from `first_pass` on."""
    numbered = groupby(enumerate(plan.passes), key=lambda each: each[1].part)
    spans = {part: [index for index, _ in passes] for part, passes in numbered}
    return [
        {
            "kind": part.kind.value,
            "count": part.count,
            "first_pass": spans[number][0],
            "passes": len(spans[number]),
            "layout": part.layout,
        }
        for number, part in enumerate(plan.parts)
    ]


def _centre(quote: Quote, body: FromCentre) -> Record:
    return {
        "counting": body.counting.value,
        "rounds": len(quote.plan.rows),
        "starts_on": starts_on(quote.plan),
        "turned": body.turned,
    }


def _squares(quote: Quote, body: JoinedSquares) -> Record:
    plan, grid = quote.plan, quote.plan.grid
    assert grid is not None, "squares lie in a grid"  # noqa: S101
    return {
        "motif": body.motif,
        "rounds": body.rounds or quote.workshop.motif(body.motif).rounds,
        "side_cm": plain_float(grid.side_cm),
        "gap_cm": plain_float(grid.gap_cm),
        "columns": grid.columns,
        "rows": grid.rows,
        "motifs": grid.count,
        "layouts": _layouts(plan),
        "placed": list(grid.layouts),
        "join": {"method": body.join.method.value, "colour": body.join.colour},
        "edges": grid.shared_edges,
        "seam_lines": grid.seam_lines,
    }


def _layouts(plan: Plan) -> list[Record]:
    """Return the colours of each layout, of all its rounds, and how many motifs have it.

    A last round that joins all motifs is one of them, though it is a part of its own. `layout` is
    its number in the order, from 0, that `parts` and `placed` have: one without motifs is left out.
    """
    return [
        {"colours": list(layout.colours), "count": layout.count, "layout": layout.number - 1}
        for layout in layouts_made(plan)
    ]


OWN: dict[type[Body], Callable[[Quote, Any], Record]] = {
    FromCentre: _centre,
    JoinedSquares: _squares,
}
"""What only one construction has, in a table named by its word."""
