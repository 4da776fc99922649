"""What an order took beside what was estimated, as its page shows it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import partial

from exports.drawing.tables import colour_codes
from quoting.core.making.made_rows import made_rows
from quoting.core.making.motif_minutes import motif_minutes
from quoting.core.making.outcome import Outcome, outcome_of
from quoting.web.making.at_hand import TOOK, AtHand
from quoting.wording import Speech
from quoting.wording.log_words import doing_words
from quoting.wording.making_words import off_words, projected_words
from quoting.wording.motif_words import minutes_a_motif
from quoting.wording.phrases import listed

UNKNOWN = "–"


@dataclass(frozen=True, slots=True, kw_only=True)
class TookRow:
    """One line: what was estimated, what it took, and how far that is off, in words."""

    name: str
    estimated: str
    took: str
    off: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TookView:
    """What the page shows; `stood_in` names the work that no session told, if any.

    `projected` says which rows were not written down, and how they are reckoned; `motif` are the
    minutes of one motif, of a blanket that is joined of them.
    """

    is_finished: bool
    outcome: Outcome
    work: tuple[TookRow, ...]
    all_work: TookRow
    motif: TookRow | None
    colours: tuple[TookRow, ...]
    codes: Mapping[str, str]
    stood_in: str
    projected: str


def took_view(hand: AtHand, speech: Speech) -> TookView:
    """Return what an order took, as its page shows it."""
    outcome = outcome_of(hand.quote, hand.entries)
    return TookView(
        is_finished=hand.order.stage in TOOK,
        outcome=outcome,
        work=tuple(
            _hours(
                doing_words(part.doing, hand.quote, speech),
                part.expected,
                part.took,
                part.share,
                speech,
            )
            for part in outcome.work
            if part.expected or part.took
        ),
        all_work=_hours(
            "All of it", outcome.expected_hours, outcome.hours, outcome.hours_share, speech
        ),
        motif=_motif(hand, outcome, speech),
        colours=tuple(_yarn(outcome, speech)),
        codes=colour_codes(hand.quote),
        stood_in=_stood_in(hand, outcome, speech),
        projected=projected_words(outcome.projected, made_rows(hand.quote), speech),
    )


def _stood_in(hand: AtHand, outcome: Outcome, speech: Speech) -> str:
    words = [doing_words(doing, hand.quote, speech).lower() for doing in outcome.stood_in]
    return listed(words, "and") if words else ""


def _hours(
    name: str, expected: Decimal, took: Decimal | None, share: float | None, speech: Speech
) -> TookRow:
    more = None if took is None else took - expected
    return TookRow(
        name=name,
        estimated=speech.hours(expected),
        took=UNKNOWN if took is None else speech.hours(took),
        off=UNKNOWN if more is None else off_words(speech.hours(abs(more)), more, share, speech),
    )


def _motif(hand: AtHand, outcome: Outcome, speech: Speech) -> TookRow | None:
    minutes = motif_minutes(hand.quote, outcome)
    if minutes is None:
        return None
    said = partial(speech.trimmed, digits=1)
    more = None if minutes.difference is None else round(minutes.difference, 1)
    return TookRow(
        name=speech.worded(minutes_a_motif(hand.quote)),
        estimated=said(minutes.expected),
        took=UNKNOWN if minutes.took is None else said(minutes.took),
        off=UNKNOWN if more is None else off_words(said(abs(more)), more, minutes.share, speech),
    )


def _yarn(outcome: Outcome, speech: Speech) -> Iterator[TookRow]:
    for colour in outcome.colours:
        took, more = colour.took_g, colour.difference_g
        yield TookRow(
            name=colour.colour,
            estimated=speech.weight(colour.expected_g),
            took=UNKNOWN if took is None else speech.weight(took),
            off=UNKNOWN
            if more is None
            else off_words(speech.weight(abs(more)), more, colour.share, speech),
        )
