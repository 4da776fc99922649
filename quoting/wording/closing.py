"""What a blanket closes on, and its neighbours, in words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from quoting.core.order.design import Design
from quoting.core.order.joined_squares import JoinedSquares
from quoting.core.plan.passes import Plan
from quoting.core.quote.quote import Quote
from quoting.core.weighing.closing import Closing, Counted, closing_of, starts_on
from quoting.core.weighing.neighbours import Neighbour
from quoting.core.weighing.variations import Varied
from quoting.core.workshop.rounds import Counting
from quoting.wording.phrases import listed
from quoting.wording.speech import Speech

_VARIED = {
    Varied.STITCHES: "One stitch {by} across",
    Varied.STITCH_REPEAT: "One stitch repeat {by} across",
    Varied.REPEAT: "One repeat of the stripes {by}",
    Varied.STRIPE: "One stripe {by}",
    Varied.ROW: "One row {by}",
    Varied.ROUND: "One round {by}",
    Varied.ROUND_REPEAT: "One repeat of the stripes {by}",
    Varied.START: "One {start} {longer}",
    Varied.COLUMN: "One column of motifs {by}",
    Varied.MOTIF_ROW: "One row of motifs {by}",
    Varied.BORDER_ROUND: "One border round {by}",
}

_COUNTS = {
    Counted.STITCHES: ("stitch", "stitches"),
    Counted.ROWS: ("row", "rows"),
    Counted.ROUNDS: ("round", "rounds"),
    Counted.BORDER_ROUNDS: ("border round", "border rounds"),
}
"""What is told as a number of so many; the others in words of their own."""

_APART = (
    "Whole motifs do not meet both sides here. Border rounds add the same to the width and to the "
    "length, so they cannot make up for it."
)


def counts_words(quote: Quote, speech: Speech) -> str:
    """Return the counts that a blanket closes on: `8 × 11 = 88 motifs, 1 border round`."""
    return ", ".join(_counts(closing_of(quote).counts, quote.plan, speech))


def body_counts_words(quote: Quote, speech: Speech) -> str:
    """Return the counts of a body alone: `98 stitches, 103 rows`."""
    counts = dict(closing_of(quote).counts)
    counts.pop(Counted.BORDER_ROUNDS, None)
    return ", ".join(_counts(counts, quote.plan, speech))


def closed_words(quote: Quote, closing: Closing, speech: Speech) -> str:
    """Return what a blanket closes on, and how far off: `8 × 11 = 88 motifs; 4.6 cm narrower`."""
    return f"{counts_words(quote, speech)}; {off_words(closing, speech)}"


def _counts(counts: Mapping[Counted, int], plan: Plan, speech: Speech) -> Iterator[str]:
    """Yield the counts in their order; columns, rows and number of motifs as one."""
    for counted, count in counts.items():
        match counted:
            case Counted.COLUMNS | Counted.MOTIF_ROWS:
                continue
            case Counted.MOTIFS:
                across, down = counts[Counted.COLUMNS], counts[Counted.MOTIF_ROWS]
                motifs = speech.count(count, "motif")
                yield f"{speech.number(across)} × {speech.number(down)} = {motifs}"
            case Counted.STARTS_ON:
                if count:
                    yield f"longer by {longer_by_words(plan, speech)}"
            case _:
                yield speech.count(count, *_COUNTS[counted])


def count_figures(quote: Quote, speech: Speech) -> dict[str, str]:
    """Return the counts of a body by their headings, the same headings for all of one kind."""
    plan, counts = quote.plan, closing_of(quote).counts
    last = speech.number(plan.stitches)
    if plan.grid is not None:
        across, down = speech.number(plan.grid.columns), speech.number(plan.grid.rows)
        return {"Motifs": speech.number(plan.grid.count), "Across × down": f"{across} × {down}"}
    if Counted.ROUNDS in counts:
        return {"Stitches at the end": last, "Rounds": speech.number(counts[Counted.ROUNDS])}
    return {"Stitches": last, "Rows": speech.number(counts[Counted.ROWS])}


def off_words(closing: Closing, speech: Speech) -> str:
    """Return how far a blanket is off from what was asked: `4.6 cm narrower, 0.4 cm longer`."""
    return ", ".join(_sides_off(closing, speech)) or "as asked"


def off_sentence(quote: Quote, speech: Speech) -> str:
    """Return the same of a quote in a sentence; nothing where it comes out as asked."""
    said = list(_sides_off(closing_of(quote), speech))
    return f"That is {listed(said, 'and')} than asked." if said else ""


def _sides_off(closing: Closing, speech: Speech) -> Iterator[str]:
    """Yield how far each side that was asked for is off: `4.6 cm narrower`."""
    sides = [(closing.off_width_cm, "wider", "narrower")]
    if not closing.by_width:
        sides.append((closing.off_height_cm, "longer", "shorter"))
    for off_cm, more, less in sides:
        if _is_told(off_cm, speech):
            yield f"{speech.length(abs(off_cm))} {more if off_cm > 0 else less}"


def _is_told(off_cm: float, speech: Speech) -> bool:
    return speech.bare_length(abs(off_cm)) != speech.bare_length(0.0)


def apart_words(closing: Closing) -> str:
    """Return what is to be said where whole motifs cannot meet both sides, or nothing."""
    return _APART if closing.meets_one_side_at_most else ""


def neighbour_words(neighbour: Neighbour) -> str:
    """Return what a neighbour has one less or one more of: `One column of motifs less`."""
    return _VARIED[neighbour.varied].format(
        by="more" if neighbour.more else "less",
        longer="longer" if neighbour.more else "shorter",
        start=_start(neighbour.quote.plan)[0],
    )


def fabric_words(design: Design, speech: Speech) -> str:
    """Return what a blanket is worked in: its stitch, or the name of its motif."""
    body = design.body
    return body.motif if isinstance(body, JoinedSquares) else speech.stitch(design.stitch)


def longer_by_words(plan: Plan, speech: Speech) -> str:
    """Return what a rectangle from its centre is longer by: `5 clusters`."""
    return speech.count(starts_on(plan), *_start(plan))


def _start(plan: Plan) -> tuple[str, str]:
    """Return one and several of what a rectangle from its centre is longer by."""
    clusters = plan.centre is Counting.CLUSTERS
    return ("cluster", "clusters") if clusters else ("stitch", "stitches")
