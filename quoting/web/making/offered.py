"""What an order teaches, offered to the workshop line by line, and taken in as it was ticked."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import TypeVar

from quoting.core.making.learnt import Learnt, learnt_from, with_learnt
from quoting.store.quotes import agreed_quote
from quoting.store.workshops import WorkshopVersion, save_workshop
from quoting.web.kept import book_now, moment_now
from quoting.web.making.at_hand import AtHand
from quoting.web.shop import Shop
from quoting.web.workshop.own_form import own_workshop
from quoting.wording.learnt_words import (
    end_words,
    motif_words,
    swatch_words,
    timing_words,
    weighing_words,
)

T = TypeVar("T")


@dataclass(frozen=True, slots=True, kw_only=True)
class Offered:
    """One thing that may be taken in: the name of its box, and what it says."""

    name: str
    words: str


def offered_by(hand: AtHand, shop: Shop) -> tuple[Offered, ...]:
    """Return all that the order tells and the workshop does not have yet."""
    learnt, speech = _learnt(hand, shop), shop.speech
    timings = [timing_words(timing, speech) for timing in learnt.timings]
    swatches = [swatch_words(swatch, speech) for swatch in learnt.swatches]
    motifs = [motif_words(told, speech) for told in learnt.motifs]
    weighings = [weighing_words(told, speech) for told in learnt.weighings]
    ends = [end_words(minutes, learnt.ends, speech) for minutes in learnt.end_minutes]
    return tuple(
        Offered(name=f"{kind}.{number}", words=words)
        for kind, told in (
            ("timing", timings),
            ("motif", motifs),
            ("swatch", swatches),
            ("weighing", weighings),
            ("end", ends),
        )
        for number, words in enumerate(told, 1)
    )


def take_in(
    hand: AtHand, shop: Shop, ticked: frozenset[str], *, based_on: int | None
) -> WorkshopVersion:
    """Keep the workshop with what was ticked as its next version.

    Errors: `workshop-overtaken`; as the workshop's own.
    """
    learnt = _learnt(hand, shop)
    chosen = replace(
        learnt,
        timings=_ticked("timing", learnt.timings, ticked),
        motifs=_ticked("motif", learnt.motifs, ticked),
        swatches=_ticked("swatch", learnt.swatches, ticked),
        weighings=_ticked("weighing", learnt.weighings, ticked),
        end_minutes=_ticked("end", learnt.end_minutes, ticked),
    )
    workshop = with_learnt(own_workshop(shop), chosen)
    return save_workshop(book_now(), workshop, now=moment_now(), based_on=based_on)


def _learnt(hand: AtHand, shop: Shop) -> Learnt:
    """Return what is learnt; of an order that no quote was agreed for, no weight of motifs.

    That is reckoned by the workshop of the day, and would be offered again once it was taken in.
    """
    learnt = learnt_from(hand.quote, hand.entries, own_workshop(shop))
    frozen = agreed_quote(book_now(), hand.id) is not None
    return learnt if frozen else replace(learnt, weighings=())


def _ticked(kind: str, items: tuple[T, ...], ticked: frozenset[str]) -> tuple[T, ...]:
    return tuple(item for n, item in enumerate(items, 1) if f"{kind}.{n}" in ticked)
