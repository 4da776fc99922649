"""A batch record: what went into the blankets of an order, lot by lot, and what came of it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date

from quoting.core.ground.cautions import Caution
from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.making.log_lines import MOST_GRAMS, LogEntry, YarnTaken
from quoting.core.making.told import told
from quoting.core.order.design import MAX_SIDE_CM, ColourSource
from quoting.core.papers.head import PaperHead, head_of
from quoting.core.quote.offer import Offer, OfferedYarn
from quoting.core.workshop.rounds import Counting


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchAsked:
    """What a maker says of blankets that are done; a blank measure is told as it was planned."""

    finished: date
    width_cm: float | None = None
    height_cm: float | None = None
    weight_g: float | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("width", self.width_cm, above=0, most=MAX_SIDE_CM)
        checks.number("height", self.height_cm, above=0, most=MAX_SIDE_CM)
        checks.number("weight", self.weight_g, above=0, most=MOST_GRAMS)
        if (self.width_cm is None) != (self.height_cm is None):
            checks.add("width" if self.width_cm is None else "height", MistakeCode.MISSING)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchLot:
    """Yarn of one colour and dye lot; the lot is empty and the grams None where nobody told."""

    yarn: str
    colour: str
    lot: str = ""
    grams: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class BatchRecord:
    """What `quantity` blankets are, which were `finished` on a day.

    Width, height and weight are those of one: `measured` and `weighed`, or else as offered.
    `centre` is how it grows from its centre, if it does: a circle is told by how far it is across.
    The maker reads it in `makers_locale`. `care` is in her own words, empty where she has none;
    `cautions` are those that the buyer was told.
    """

    head: PaperHead
    quantity: int
    finished: date
    width_cm: float
    height_cm: float
    weight_g: float
    measured: bool = False
    weighed: bool = False
    centre: Counting | None = None
    yarns: tuple[OfferedYarn, ...]
    lots: tuple[BatchLot, ...]
    makers_locale: str
    care: str = ""
    cautions: tuple[Caution, ...] = ()


def batch_of(
    offer: Offer,
    entries: tuple[LogEntry, ...],
    sources: Mapping[str, ColourSource],
    asked: BatchAsked,
    *,
    makers_locale: str,
    day: date,
) -> BatchRecord:
    """Return the record of an order's blankets; `sources` are the yarns of its colours.

    Errors: `day-to-come` at `finished`.
    """
    _check_day(asked, day)
    measured = asked.width_cm is not None
    return BatchRecord(
        head=head_of(offer, day),
        quantity=offer.quantity,
        finished=asked.finished,
        width_cm=asked.width_cm or offer.width_cm,
        height_cm=asked.height_cm or offer.height_cm,
        weight_g=asked.weight_g or offer.weight_g,
        measured=measured,
        weighed=asked.weight_g is not None,
        centre=offer.centre,
        yarns=offer.yarns,
        lots=tuple(_lots(offer, entries, sources)),
        makers_locale=makers_locale,
        care=offer.own_words.care,
        cautions=offer.cautions,
    )


def _check_day(asked: BatchAsked, day: date) -> None:
    checks = Checks()
    if asked.finished > day:
        checks.add("finished", MistakeCode.DAY_TO_COME, read=asked.finished, limit=day)
    checks.done()


def _lots(
    offer: Offer, entries: tuple[LogEntry, ...], sources: Mapping[str, ColourSource]
) -> Iterator[BatchLot]:
    """Yield the lots that were taken, colour by colour; one without a lot where none was told."""
    taken: dict[tuple[str, str], dict[str, float]] = {}
    for offered in offer.colours:
        taken[offered.yarn, offered.colour] = {}
    for line in told(entries, YarnTaken):
        source = sources.get(line.colour)
        if source is not None:
            lots = taken.setdefault((source.yarn, source.colour), {})
            lots[line.lot] = lots.get(line.lot, 0.0) + line.grams
    for (yarn, colour), lots in taken.items():
        if not lots:
            yield BatchLot(yarn=yarn, colour=colour)
        for lot, grams in lots.items():
            yield BatchLot(yarn=yarn, colour=colour, lot=lot, grams=grams)
