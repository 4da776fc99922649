"""How a blanket is made, as its buyer is told: in rounds from its centre, or of joined motifs.

One that is worked in rows is told by its stitch alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from quoting.core.order.joined_squares import CROCHETED, JoinMethod
from quoting.core.quote.offer import Offer
from quoting.core.quote.offered_motifs import OfferedMotifs
from quoting.core.workshop.rounds import Counting
from quoting.wording.catalogues import sentence
from quoting.wording.speech import Speech

_IN_ONE_PIECE = sentence("in one piece, in rounds from the centre")
_FROM_CENTRE = {
    Counting.CLUSTERS: _IN_ONE_PIECE,
    Counting.SOLID: _IN_ONE_PIECE,
    Counting.CIRCLE: sentence("a circle in one piece, in rounds from the centre"),
    Counting.HEXAGON: sentence("a hexagon in one piece, in rounds from the centre"),
}

_SPACES = {
    True: sentence("worked in clusters of stitches with spaces between them"),
    # To translate: Stitch beside stitch, as against in clusters; of one piece or of motifs.
    False: sentence("worked solid"),
}
"""By whether squares are open between their clusters: to a baby's fingers it matters."""

_MIXED = sentence("their colours mixed")

_CROCHETED = sentence("joined with {stitch} in {colour}")
_JOINED = {
    JoinMethod.AS_YOU_GO: sentence("joined in their last rounds"),
    JoinMethod.CONTINUOUS: sentence("joined in one last round in {colour}"),
    JoinMethod.SLIP_STITCH: _CROCHETED,
    JoinMethod.SINGLE_CROCHET: _CROCHETED,
    JoinMethod.WHIPSTITCH: sentence("sewn together with whipstitch in {colour}"),
    JoinMethod.MATTRESS: sentence("sewn together with mattress stitch in {colour}"),
    JoinMethod.FLAT_BRAID: sentence("joined with a flat braid in {colour}"),
}


def making_words(offer: Offer, speech: Speech) -> str:
    """Return how a blanket is made; nothing of one in rows."""
    return ", ".join(_made(offer, speech))


def _made(offer: Offer, speech: Speech) -> Iterator[str]:
    motifs = offer.motifs
    if motifs is not None:
        yield _counted(motifs, speech)
    elif offer.centre is not None:
        yield speech.worded(_FROM_CENTRE[offer.centre])
    if offer.spaces is not None:
        yield speech.worded(_SPACES[offer.spaces])
    if motifs is not None and motifs.count > 1:
        yield _in_colours(motifs, speech)
        yield _joined(motifs, speech)


def _counted(motifs: OfferedMotifs, speech: Speech) -> str:
    return speech.counted(
        motifs.count,
        "{n} motif of {side}",
        "{n} motifs of {side}, {columns} across and {rows} down",
        side=speech.length(motifs.side_cm),
        columns=speech.number(motifs.columns),
        rows=speech.number(motifs.rows),
    )


def _in_colours(motifs: OfferedMotifs, speech: Speech) -> str:
    if motifs.mixed:
        return speech.worded(_MIXED)
    return speech.counted(motifs.layouts, "all in the same colours", "in {n} layouts of colours")


def _joined(motifs: OfferedMotifs, speech: Speech) -> str:
    stitch = CROCHETED.get(motifs.join)
    return speech.worded(_JOINED[motifs.join]).format(
        colour=motifs.join_colour, stitch=speech.stitch_in_full(stitch) if stitch else ""
    )
