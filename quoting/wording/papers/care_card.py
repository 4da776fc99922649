"""The care and fibre card that goes with a blanket, in words."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.papers.batch import BatchRecord
from quoting.wording.catalogues import sentence
from quoting.wording.paper import Block, Facts, Paper, SaidFact
from quoting.wording.papers.parts import buyers_speech, care, cautions, fibres, paper_of
from quoting.wording.speech import Speech

_TITLE = sentence("Care and fibres")


def care_card_paper(batch: BatchRecord) -> Paper:
    """Return the card as its buyer reads it; care is told in words only.

    The common signs for care are marks of their owner's, whose leave they take.
    """
    speech = buyers_speech(batch.head)
    return paper_of(batch.head, speech, speech.worded(_TITLE), _blocks(batch, speech))


def _blocks(batch: BatchRecord, speech: Speech) -> Iterator[Block]:
    yield Facts(
        facts=(
            SaidFact(name=speech.worded(sentence("Blanket")), text=batch.head.title),
            SaidFact(name=speech.worded(sentence("Batch")), text=batch.head.number),
        )
    )
    yield fibres(batch, speech)
    yield care(batch, speech)
    yield from cautions(batch, speech)
