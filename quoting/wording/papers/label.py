"""The label of a blanket, in words."""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.papers.batch import BatchRecord
from quoting.wording.catalogues import sentence
from quoting.wording.paper import Block, Facts, Paper, SaidFact
from quoting.wording.papers.parts import buyers_speech, cautions, fibres, paper_of
from quoting.wording.rounded import rounded_weight
from quoting.wording.shapes import shaped_size
from quoting.wording.speech import Speech


def label_paper(batch: BatchRecord) -> Paper:
    """Return the label as its buyer reads it."""
    speech = buyers_speech(batch.head)
    return paper_of(batch.head, speech, batch.head.title, _blocks(batch, speech))


def _blocks(batch: BatchRecord, speech: Speech) -> Iterator[Block]:
    made = speech.worded(sentence("by hand, finished on {day}"))
    told = (
        (sentence("Size"), _size(batch, speech)),
        (sentence("Weight"), _weight(batch, speech)),
        (sentence("Made"), made.format(day=speech.day(batch.finished))),
        (sentence("Batch"), batch.head.number),
    )
    yield Facts(facts=tuple(SaidFact(name=speech.worded(name), text=text) for name, text in told))
    yield fibres(batch, speech)
    yield from cautions(batch, speech)


def _size(batch: BatchRecord, speech: Speech) -> str:
    """Return the size that was measured, or in whole centimetres or inches that was planned."""
    width_cm, height_cm = batch.width_cm, batch.height_cm
    if batch.measured:
        return shaped_size(width_cm, height_cm, batch.centre, speech)
    plain = f"{speech.bare_length(width_cm, 0)} × {speech.length(height_cm, 0)}"
    planned = shaped_size(
        width_cm,
        height_cm,
        batch.centre,
        speech,
        plain=plain,
        side=lambda side_cm: speech.length(side_cm, 0),
    )
    return _about(planned, speech)


def _weight(batch: BatchRecord, speech: Speech) -> str:
    """Return the weight as it was weighed, or about what it is, as the quote tells it."""
    if batch.weighed:
        return speech.weight(batch.weight_g)
    return _about(rounded_weight(batch.weight_g, speech), speech)


def _about(measure: str, speech: Speech) -> str:
    return speech.worded(sentence("about {measure}")).format(measure=measure)
