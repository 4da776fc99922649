"""What to do with the yarn in each row and round, and what to know before, as a maker says it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.estimate.row_guide import Act, RowNote, counting_stitches
from quoting.core.plan.passes import Pass, Work
from quoting.core.quote.quote import Quote
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import at_edge_words, edges_explained
from quoting.wording.speech import Speech

_ACTS = {
    Act.CARRY_UP: "carry up {where}",
    Act.START: "start {colour} {where}",
    Act.JOIN: "join a new ball {where}",
    Act.WAIT: "leave it waiting {where}",
    Act.CUT: "cut {where}",
    Act.FASTEN_OFF: "fasten off {where}",
}


def notes_sentence(notes: Sequence[RowNote], worked: Pass, speech: Speech) -> str:
    """Return the notes of one row or round as a sentence; empty where there is nothing to do.

    The yarn is that of the row, which is said beside it.
    """
    said = "; ".join(_note(note, worked, speech) for note in notes)
    return f"{capitalized(said)}." if said else ""


def _note(note: RowNote, worked: Pass, speech: Speech) -> str:
    where = at_edge_words(note.edge, worked.work, speech)
    return speech.worded(_ACTS[note.act]).format(colour=note.colour, where=where)


def guide_sentences(quote: Quote, speech: Speech) -> Iterator[str]:
    """Yield what to know before the rows are followed, in whole sentences."""
    if quote.plan.of_work(Work.ROW):
        yield edges_explained(speech)
    counting = counting_stitches(quote.plan, quote.workshop)
    if counting:
        named = ", ".join(speech.stitch(stitch) for stitch in counting)
        yield f"The chains that turn a row of {named} stand for its first stitch and are counted."
    if quote.order.quantity > 1:
        yield speech.worded(
            "Where balls are joined is that of the first blanket; in the others it differs."
        )
