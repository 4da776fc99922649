"""One row of a guide by itself, as it is read with the hook in one hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby

from quoting.core.estimate.strands import Point
from quoting.core.estimate.workload import TURN
from quoting.core.guide.guide import Guide
from quoting.core.making.made_rows import MadeRows, PassPlace
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Edge, Pass, Work
from quoting.core.quote.fate_of_ends import fate_at_edges
from quoting.core.workshop.stitches import Stitch
from quoting.wording.ends import FATES
from quoting.wording.guide_one_round import joining_row_sentences
from quoting.wording.guide_rounds import round_sentence, round_stitches
from quoting.wording.guide_squares import seam_work_words
from quoting.wording.guide_steps import stitch_details, stitches_words
from quoting.wording.guide_yarn import handling_sentence
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import edge_words, pass_words, point_words
from quoting.wording.speech import Speech
from quoting.wording.ticks import tick_name


@dataclass(frozen=True, slots=True, kw_only=True)
class RowAtHand:
    """A row as it is told: its number among all, its name, its colours, its stitches.

    `side` is the side that faces, `details` what else there is to do with the hook, `yarn` what
    with the yarn, `balls` which may end about there. A motif is one, and so is a seam.
    """

    number: int
    name: str
    colours: tuple[str, ...]
    stitches: str
    side: str
    details: tuple[str, ...]
    yarn: tuple[str, ...]
    balls: tuple[str, ...]


def row_at_hand(guide: Guide, rows: MadeRows, number: int, speech: Speech) -> RowAtHand:
    """Return one of the rows of all blankets, with the chain that is worked before it."""
    place = rows.place_of(number)
    works = [rows.passes[at] for at in rows.worked_with(number)]
    worked, plan = works[-1], rows.plan
    if plan.part_of(worked).at_once:
        return _at_once(guide, rows, number, speech)
    yarn = (
        handling_sentence(guide.handled[at], rows.passes[at], plan, speech)
        for at in rows.worked_with(number)
    )
    return RowAtHand(
        number=number,
        name=f"{capitalized(pass_words(worked))}{_of_blanket(place, rows)}",
        colours=(worked.colour,),
        stitches=stitches_words(worked, speech),
        side=_side(worked, guide, speech),
        details=tuple(_details(worked, guide, speech)),
        yarn=tuple(sentence for sentence in yarn if sentence),
        balls=tuple(_balls(guide, rows, number, speech)),
    )


def _at_once(guide: Guide, rows: MadeRows, number: int, speech: Speech) -> RowAtHand:
    """Return a motif with all its rounds, or a seam with all that it is worked with."""
    place, plan = rows.place_of(number), rows.plan
    works = tuple(rows.passes[at] for at in rows.worked_with(number))
    part = plan.part_of(works[0])
    name = f"{capitalized(tick_name(rows, number, of_all=True))}{_of_blanket(place, rows)}"
    if part.kind is PartKind.MOTIF and len(guide.motifs) > 1:
        name = f"{name}, layout {(part.layout or 0) + 1}"
    ends = next(each for each in guide.part_ends if each.part == works[0].part)
    become = fate_at_edges(guide.quote)
    return RowAtHand(
        number=number,
        name=name,
        colours=tuple(dict.fromkeys(worked.colour for worked in works)),
        stitches=_made_of(works, part.kind, speech),
        side="",
        details=tuple(_parts_of(works, guide, speech)),
        yarn=(f"It leaves {speech.count(ends.each, 'end')} {FATES[become].to_do}.",),
        balls=tuple(_balls(guide, rows, number, speech)),
    )


def _made_of(works: tuple[Pass, ...], kind: PartKind, speech: Speech) -> str:
    if kind is PartKind.MOTIF:
        return speech.count(len(works), "round")
    return seam_work_words(works, speech)


def _parts_of(works: tuple[Pass, ...], guide: Guide, speech: Speech) -> Iterator[str]:
    """Yield the rounds of a motif, those of one colour together; of a seam what it joins."""
    counted = guide.quote.plan.counted
    for colour, band in groupby(works, key=lambda worked: worked.colour):
        rounds = [worked for worked in band if worked.grows]
        if rounds and counted is not None:
            said = "; ".join(
                f"round {w.number}: {round_stitches(w, counted, speech)}" for w in rounds
            )
            yield f"{capitalized(colour)}, {said}."
    for lines in guide.seams:
        if lines.part == works[0].part:
            edges = speech.count(lines.edges, "edge")
            yield f"It joins {edges} between two {lines.between}."


def _of_blanket(place: PassPlace, rows: MadeRows) -> str:
    return f" of blanket {place.blanket + 1}" if rows.blankets > 1 else ""


def _side(worked: Pass, guide: Guide, speech: Speech) -> str:
    """Return which side faces, and of a row where it begins."""
    if worked.work is not Work.ROW:
        turned = worked.grows and TURN in guide.quote.plan.chores and worked.number % 2 == 0
        return "Wrong side facing." if turned else "Right side facing."
    side = "Right" if worked.number % 2 else "Wrong"
    return f"{side} side facing, from {edge_words(worked.starts, worked.work, speech)}."


def _details(worked: Pass, guide: Guide, speech: Speech) -> Iterator[str]:
    quote = guide.quote
    if worked.grows and quote.plan.counted is not None:
        yield from _round_details(worked, guide, speech)
        return
    if worked.work is Work.SEAM and quote.plan.grid is not None:
        yield from joining_row_sentences(worked.number, quote.plan.grid, speech)
    if worked.work is Work.ROW:
        if worked.number == 1:
            yield f"Chain {speech.number(quote.plan.foundation_chain)} first."
        else:
            yield _turned(worked, guide)
    yield from (
        f"{capitalized(detail)}." for detail in stitch_details(worked, quote, speech) if detail
    )


def _round_details(worked: Pass, guide: Guide, speech: Speech) -> Iterator[str]:
    """Yield how a round from the centre is worked, and how many chains are in it."""
    yield round_sentence(worked, guide.quote.plan, guide.quote.workshop, speech)
    chains = worked.stitches.get(Stitch.CH, 0)
    if chains:
        yield f"It has {speech.count(chains, 'chain')} besides."


def _turned(worked: Pass, guide: Guide) -> str:
    """Return how a row is turned to."""
    turn = guide.quote.workshop.turning_chain(worked.stitch)
    if not turn.chains:
        return "Turn."
    counted = "counted as the first stitch" if turn.counts else "not counted as a stitch"
    return f"Turn and chain {turn.chains}, {counted}."


def _balls(guide: Guide, rows: MadeRows, number: int, speech: Speech) -> Iterator[str]:
    """Yield which balls may end where a row is worked, of all colours that are in it."""
    place, own = rows.place_of(number), rows.worked_with(number)
    colours = {rows.passes[at].colour for at in own}
    first, last = (
        Point(place.blanket, at, Edge.WITHIN, rows.passes[at].part, place.copy).when
        for at in (own[0], own[-1])
    )
    for one in guide.used_up:
        soonest, latest = one.end.soonest, one.end.latest
        if one.colour not in colours or soonest is None:
            continue
        if soonest.when <= last and (latest is None or first <= latest.when):
            ball = capitalized(speech.worded("ball"))
            numbered = f"{ball} {speech.number(one.number)} of {one.colour}"
            yield f"{numbered} may end about here; {_expected(one.end.expected, guide)}."


def _expected(expected: Point | None, guide: Guide) -> str:
    if expected is None:
        return "it should last"
    return f"it is expected to {point_words(expected, guide.quote.plan)}"
