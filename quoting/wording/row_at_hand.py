"""One row of a guide by itself, as it is read with the hook in one hand."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from quoting.core.estimate.strands import Point
from quoting.core.guide.guide import Guide
from quoting.core.making.made_rows import MadeRows, PassPlace
from quoting.core.plan.passes import Pass, Work
from quoting.wording.guide_steps import stitch_details, stitches_words
from quoting.wording.guide_yarn import handling_sentence
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import edge_words, pass_words, point_words
from quoting.wording.speech import Speech


@dataclass(frozen=True, slots=True, kw_only=True)
class RowAtHand:
    """A row as it is told: its number among all, its name, its colour, its stitches.

    `side` is the side that faces, `details` what else there is to do with the hook, `yarn` what
    with the yarn, `balls` which may end about there.
    """

    number: int
    name: str
    colour: str
    stitches: str
    side: str
    details: tuple[str, ...]
    yarn: tuple[str, ...]
    balls: tuple[str, ...]


def row_at_hand(guide: Guide, rows: MadeRows, number: int, speech: Speech) -> RowAtHand:
    """Return one of the rows of all blankets, with the chain that is worked before it."""
    place = rows.place_of(number)
    worked = rows.passes[place.pass_index]
    of_all = rows.worked_with(number)
    blanket = f" of blanket {place.blanket + 1}" if rows.blankets > 1 else ""
    yarn = (handling_sentence(guide.handled[at], rows.passes[at], speech) for at in of_all)
    return RowAtHand(
        number=number,
        name=f"{capitalized(pass_words(worked))}{blanket}",
        colour=worked.colour,
        stitches=stitches_words(worked, speech),
        side=_side(worked, speech),
        details=tuple(_details(worked, guide, speech)),
        yarn=tuple(sentence for sentence in yarn if sentence),
        balls=tuple(_balls(guide, place, worked.colour, speech)),
    )


def _side(worked: Pass, speech: Speech) -> str:
    """Return which side faces, and of a row where it begins."""
    if worked.work is not Work.ROW:
        return "Right side facing."
    side = "Right" if worked.number % 2 else "Wrong"
    return f"{side} side facing, from {edge_words(worked.starts, worked.work, speech)}."


def _details(worked: Pass, guide: Guide, speech: Speech) -> Iterator[str]:
    quote = guide.quote
    if worked.work is Work.ROW:
        if worked.number == 1:
            yield f"Chain {speech.number(quote.plan.foundation_chain)} first."
        else:
            yield _turned(worked, guide)
    yield from (
        f"{capitalized(detail)}." for detail in stitch_details(worked, quote, speech) if detail
    )


def _turned(worked: Pass, guide: Guide) -> str:
    """Return how a row is turned to."""
    turn = guide.quote.workshop.turning_chain(worked.stitch)
    if not turn.chains:
        return "Turn."
    counted = "counted as the first stitch" if turn.counts else "not counted as a stitch"
    return f"Turn and chain {turn.chains}, {counted}."


def _balls(guide: Guide, place: PassPlace, colour: str, speech: Speech) -> Iterator[str]:
    """Yield which balls of a colour may end where a row is worked."""
    here = (place.blanket, place.pass_index)
    for one in guide.used_up:
        soonest, latest = one.end.soonest, one.end.latest
        if one.colour != colour or soonest is None:
            continue
        if _at(soonest) <= here and (latest is None or here <= _at(latest)):
            ball = f"{capitalized(speech.worded('ball'))} {speech.number(one.number)} of {colour}"
            yield f"{ball} may end about here; {_expected(one.end.expected, guide)}."


def _at(point: Point) -> tuple[int, int]:
    return point.blanket, point.pass_index


def _expected(expected: Point | None, guide: Guide) -> str:
    if expected is None:
        return "it should last"
    return f"it is expected to {point_words(expected, guide.quote.plan)}"
