"""The label of a blanket, in words."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.papers.batch import BatchRecord
from quoting.wording.catalogues import sentence
from quoting.wording.paper import Block, Facts, Paper, SaidFact
from quoting.wording.papers.parts import buyers_speech, cautions, fibres, paper_of
from quoting.wording.speech import Speech


def label_paper(batch: BatchRecord) -> Paper:
    """Return the label as its buyer reads it."""
    speech = buyers_speech(batch.head)
    return paper_of(batch.head, speech, batch.head.title, _blocks(batch, speech))


def _blocks(batch: BatchRecord, speech: Speech) -> Iterator[Block]:
    size = speech.size(batch.width_cm, batch.height_cm)
    weight = speech.weight(batch.weight_g)
    about = speech.worded(sentence("about {measure}"))
    made = speech.worded(sentence("by hand, finished on {day}"))
    yield Facts(
        facts=(
            SaidFact(
                name=speech.worded(sentence("Size")),
                text=size if batch.measured else about.format(measure=size),
            ),
            SaidFact(
                name=speech.worded(sentence("Weight")),
                text=weight if batch.weighed else about.format(measure=weight),
            ),
            SaidFact(
                name=speech.worded(sentence("Made")),
                text=made.format(day=speech.day(batch.finished)),
            ),
            SaidFact(name=speech.worded(sentence("Batch")), text=batch.head.number),
        )
    )
    yield fibres(batch, speech)
    yield from cautions(batch, speech)
