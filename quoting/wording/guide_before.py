"""What is to be known before the first chain: edges, turning chains, how a border is begun."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.estimate.estimate import habits_for
from quoting.core.plan.passes import Edge, Plan, Work
from quoting.core.quote.fate_of_ends import fate_at_edges
from quoting.core.quote.quote import Quote
from quoting.core.workshop.habits import Join
from quoting.wording.ends import FATES
from quoting.wording.foundation import chains_words
from quoting.wording.guide_rounds import rounds_sentences
from quoting.wording.rows_and_edges import body_pass, edge_side, edges_explained
from quoting.wording.speech import Speech
from quoting.wording.trade_words import stitch_names_meant

_JOINS = {
    Join.ANYWHERE: "Join a new ball where the old one ends, also within a {row}.",
    Join.AT_AN_EDGE: (
        "Join a new ball at an edge: begin no {row} that the ball in hand might not finish."
    ),
}


def before_sentences(quote: Quote, speech: Speech) -> Iterator[str]:
    """Yield what to know before the steps are followed, in whole sentences."""
    plan = quote.plan
    yield f"Stitches have their {stitch_names_meant(speech)}."
    if plan.in_rows:
        yield f"{edges_explained(speech)} Odd rows have the right side facing, even rows the wrong."
        yield from _turns(quote, speech)
    if plan.counted is not None:
        yield from rounds_sentences(plan, plan.rows[0].stitch, quote.workshop, speech)
    yield from _border(plan, speech)
    joined = speech.worded(_JOINS[quote.workshop.habits.join])
    yield joined.format(row=body_pass(plan))
    if told := FATES[fate_at_edges(quote)].told:
        tail_cm = habits_for(quote.plan, quote.order, quote.workshop).tail_cm
        yield told.format(tail=speech.length(tail_cm))
    if quote.order.quantity > 1:
        yield (
            f"Each of the {speech.number(quote.order.quantity)} blankets is worked so; the ends "
            "that are listed are those of the first."
        )


def _turns(quote: Quote, speech: Speech) -> Iterator[str]:
    """Yield how the rows of each stitch are turned to."""
    for stitch in dict.fromkeys(row.stitch for row in quote.plan.of_work(Work.ROW)):
        turn = quote.workshop.turning_chain(stitch)
        if not turn.chains:
            yield f"Rows of {speech.stitch(stitch)} are turned without a chain."
            continue
        yield f"A row of {speech.stitch(stitch)} is turned to with {chains_words(turn, speech)}."


def _border(plan: Plan, speech: Speech) -> Iterator[str]:
    """Yield where a border begins; nothing where there is none."""
    if not plan.rounds:
        return
    rows, first = plan.of_work(Work.ROW), plan.rounds[0]
    if not rows:
        begun = "a corner" if first.corner is not None else "the join of the last round"
        yield (
            f"The border is worked with the right side facing, from {begun}; close each round with "
            "a slip stitch."
        )
        return
    turned = "Turn after the last row: the" if len(rows) % 2 == 0 else "The"
    corner = edge_side(first.starts, speech) if first.starts is not Edge.WITHIN else "same"
    yield (
        f"{turned} border is worked with the right side facing, from the upper {corner} corner; "
        "close each round with a slip stitch."
    )
