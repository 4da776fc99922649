"""A batch record in words, which its maker keeps."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.papers.batch import BatchLot, BatchRecord
from quoting.wording.catalogues import sentence
from quoting.wording.paper import Block, Facts, Listing, Paper, SaidFact
from quoting.wording.papers.parts import (
    cancelled_words,
    care,
    cautions,
    fibres,
    makers_speech,
    order_facts,
    paper_of,
    titled,
)
from quoting.wording.shapes import shaped_size
from quoting.wording.speech import Speech

_TITLE = sentence("Batch record {number}")
_CANCELLING = sentence("Batch record {number}, which cancels batch record {cancelled}")
_CANCELLED = sentence("Batch record {cancelled} no longer holds. This is what it said.")

NOT_TOLD = "–"
"""What stands where nobody wrote a lot or its grams down."""


def batch_record_paper(batch: BatchRecord) -> Paper:
    """Return a batch record as its maker reads it."""
    speech = makers_speech(batch)
    title = titled(batch.head, speech, _TITLE, _CANCELLING)
    day = speech.day(batch.head.day)
    return paper_of(batch.head, speech, title, _blocks(batch, speech), heading=day)


def _blocks(batch: BatchRecord, speech: Speech) -> Iterator[Block]:
    yield from cancelled_words(batch.head, speech, _CANCELLED)
    yield Facts(facts=(*order_facts(batch.head, speech), *_made(batch, speech)))
    heads = ("Yarn", speech.worded("Colour"), "Dye lot", "Taken")
    yield Listing(
        heading="What went into it",
        heads=heads,
        rows=tuple(_lot_row(lot, speech) for lot in batch.lots),
        figures_from=len(heads) - 1,
    )
    yield fibres(batch, speech)
    yield care(batch, speech)
    yield from cautions(batch, speech)


def _made(batch: BatchRecord, speech: Speech) -> Iterator[SaidFact]:
    size = shaped_size(batch.width_cm, batch.height_cm, batch.centre, speech)
    weight = speech.weight(batch.weight_g)
    yield SaidFact(name="Finished on", text=speech.day(batch.finished))
    yield SaidFact(
        name="How many", text=speech.counted(batch.quantity, "{n} blanket", "{n} blankets")
    )
    yield SaidFact(
        name="Size", text=f"{size}, measured" if batch.measured else f"{size}, as planned"
    )
    yield SaidFact(
        name="Weight of one",
        text=f"{weight}, weighed" if batch.weighed else f"{weight}, as estimated",
    )


def _lot_row(lot: BatchLot, speech: Speech) -> tuple[str, ...]:
    grams = NOT_TOLD if lot.grams is None else speech.weight(lot.grams)
    return lot.yarn, lot.colour, lot.lot or NOT_TOLD, grams
