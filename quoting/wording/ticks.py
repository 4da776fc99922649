"""What is ticked off of an order: rows, rounds, motifs, seams, each by its name and number."""

from __future__ import annotations

from collections.abc import Iterable

from quoting.core.making.made_rows import MadeRows
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Pass, Plan
from quoting.wording.phrases import listed
from quoting.wording.rows_and_edges import body_pass, kind_words, pass_words
from quoting.wording.speech import Speech

_KINDS = {PartKind.MOTIF: "motif", PartKind.SEAM: "seam", PartKind.EDGING: "edging"}


def tick_kind(worked: Pass, plan: Plan) -> str:
    """Return what a pass is ticked off as: `row`, `motif`, `seam`, `border round`."""
    part = plan.part_of(worked)
    return _KINDS[part.kind] if part.at_once else kind_words(worked)


def tick_name(rows: MadeRows, number: int, *, of_all: bool = False) -> str:
    """Return what is ticked off as a number: `row 12`, `motif 12`, of all of them `of 88`.

    Rows of a body are numbered on from one blanket to the next only in the log: see `log_name`.
    """
    place = rows.place_of(number)
    worked, plan = rows.passes[place.pass_index], rows.plan
    part = plan.part_of(worked)
    if not part.at_once:
        return pass_words(worked)
    said = f"{_KINDS[part.kind]} {plan.number_of(worked.part, place.copy)}"
    return f"{said} of {plan.copies_of(part.kind)}" if of_all else said


def log_name(rows: MadeRows, number: int, speech: Speech) -> str:
    """Return what the log calls one that was ticked off: `row 12`, `motif 12`, `seam 3`.

    Where all are rows, or rounds, they are counted on to the border, and to the next blanket.
    """
    if rows.plan.grid is None:
        return f"{body_pass(rows.plan)} {speech.number(number)}"
    number = min(number, rows.all)
    blanket = rows.place_of(number).blanket
    of_blanket = f" of blanket {blanket + 1}" if blanket else ""
    return f"{tick_name(rows, number)}{of_blanket}"


def log_names(rows: MadeRows, first: int, last: int, speech: Speech) -> str:
    """Return what the log calls several: `rows 18 to 33`, `motif 88 to seam 2`."""
    begins, ends = (log_name(rows, number, speech) for number in (first, last))
    if first == last:
        return begins
    kind, _, number = begins.rpartition(" ")
    other, _, up_to = ends.rpartition(" ")
    return f"{kind}s {number} to {up_to}" if kind == other else f"{begins} to {ends}"


def ticks_words(plan: Plan) -> str:
    """Return all that is ticked off of an order: `rows`, `motifs, seams and rounds`."""
    if plan.grid is None:
        return f"{body_pass(plan)}s"
    return _several(tick_kind(worked, plan) for worked in plan.passes)


def counted_ticks(plan: Plan) -> tuple[str, str]:
    """Return one and several of what is ticked off: `row` and `rows and rounds`."""
    if plan.grid is not None:
        return _several((tick_kind(plan.passes[0], plan),))[:-1], ticks_words(plan)
    one = body_pass(plan)
    return one, "rows and rounds" if plan.in_rows else "rounds"


def colour_ticks(colour: str, plan: Plan) -> tuple[str, str]:
    """Return one and several of what has a colour in it: `row` and `rows`, `motif` and `motifs`."""
    if plan.grid is None:
        return body_pass(plan), f"{body_pass(plan)}s"
    own = [tick_kind(worked, plan) for worked in plan.passes if worked.colour == colour]
    kinds = list(dict.fromkeys(own))
    return listed(kinds, "or"), _several(kinds)


def _several(kinds: Iterable[str]) -> str:
    """Return kinds as a list of several; a round of a border is a round beside motifs."""
    named = dict.fromkeys(kind.removeprefix("border ") for kind in kinds)
    return listed([f"{kind}s" for kind in named], "and")
