"""What to do with the yarn in each row and round, and what to know before, as a maker says it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from quoting.core.estimate.row_guide import Act, RowNote, counting_stitches
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Edge, Pass, Plan, Work
from quoting.core.quote.quote import Quote
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import at_edge_words, edge_name, edges_explained, pass_words
from quoting.wording.speech import Speech

_ACTS = {
    Act.CARRY_UP: "carry up {where}",
    Act.START: "start {colour} {where}",
    Act.JOIN: "join a new ball {where}",
    Act.WAIT: "leave it waiting {where}",
    Act.CUT: "cut {where}",
    Act.FASTEN_OFF: "fasten off {where}",
}


def notes_sentence(notes: Sequence[RowNote], worked: Pass, plan: Plan, speech: Speech) -> str:
    """Return the notes of one row or round as a sentence; empty where there is nothing to do.

    The yarn is that of the row, which is said beside it.
    """
    said = "; ".join(_note(note, worked, plan, speech) for note in notes)
    return f"{capitalized(said)}." if said else ""


def _note(note: RowNote, worked: Pass, plan: Plan, speech: Speech) -> str:
    where = f"at {_along(note.edge, worked)}"
    if note.edge is Edge.WITHIN or _has_edges(worked, plan):
        where = at_edge_words(note.edge, worked.work, speech)
    act = Act.FASTEN_OFF if note.act is Act.CUT and worked.fresh else note.act
    return speech.worded(_ACTS[act]).format(colour=note.colour, where=where)


def begins_words(worked: Pass, plan: Plan, speech: Speech) -> str:
    """Return where a row or round begins: `right-hand edge`, `the join`."""
    if _has_edges(worked, plan):
        return edge_name(worked.starts, speech)
    return _along(worked.starts, worked)


def _has_edges(worked: Pass, plan: Plan) -> bool:
    """Return whether a pass has a right-hand and a left-hand edge: in a blanket with rows."""
    return plan.in_rows and worked.work is not Work.SEAM


def _along(edge: Edge, worked: Pass) -> str:
    """Return where along a round or a seam."""
    if worked.work is Work.SEAM:
        return "its beginning" if edge is Edge.START else "its end"
    return "the join"


def each_part_words(worked: Pass, plan: Plan) -> str:
    """Return what a pass is, in each of its parts: `row 3`, `layout 2, round 1`, `each seam`."""
    part = plan.part_of(worked)
    if not part.at_once:
        return pass_words(worked)
    if part.kind is PartKind.MOTIF:
        layouts = sum(each.kind is PartKind.MOTIF for each in plan.parts)
        layout = f"layout {(part.layout or 0) + 1}" if layouts > 1 else "each motif"
        return f"{layout}, {pass_words(worked)}"
    several = sum(other.part == worked.part for other in plan.passes) > 1
    return f"seam, needleful {worked.number}" if several else f"each {part.kind.value}"


def sewn_sentence(worked: Pass, speech: Speech) -> str:
    """Return with how much yarn a needleful is sewn, and a space; nothing of what is worked."""
    return f"Sew with {speech.yarn_length(worked.sewn_m, 2)}. " if worked.sewn_m else ""


def guide_sentences(quote: Quote, speech: Speech) -> Iterator[str]:
    """Yield what to know before the rows are followed, in whole sentences."""
    if quote.plan.in_rows:
        yield edges_explained(speech)
    if quote.plan.grid is not None:
        yield "Every round and seam stands here once, with how often it is worked."
    counting = counting_stitches(quote.plan, quote.workshop)
    if counting:
        named = ", ".join(speech.stitch(stitch) for stitch in counting)
        yield f"The chains that turn a row of {named} stand for its first stitch and are counted."
    if quote.order.quantity > 1:
        yield speech.worded(
            "Where balls are joined is that of the first blanket; in the others it differs."
        )
