"""The offer: all that the buyer is told of a quote, as plain facts and rows of amounts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date

from quoting.core.ground.cautions import Caution, Reader
from quoting.core.ground.measures import Units
from quoting.core.quote.left_out import LeftOut, left_out
from quoting.core.quote.offer_rows import Due, Row, RowCode, rows_of
from quoting.core.quote.quote import Quote
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.stitches import Vocabulary


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferedYarn:
    """A yarn that the blanket is made of; its fibre is empty where it is not known."""

    name: str
    fibre: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferedColour:
    """A colour by its name in the design: the yarn's own colour, whose `code` is `#rrggbb`."""

    name: str
    yarn: str
    colour: str
    code: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """What is made, by when and for how much. It needs neither the quote nor the workshop.

    `width_cm` and `height_cm` are those of a finished blanket with its border, `weight_g` the yarn
    that one is expected to take. `stitch` is canonical, or a pattern's name. `left_out` are those
    of the extras that she may leave out. `rows` come in the order that they are read: those of
    another currency repeat the payments in the buyer's, at `exchange`. `locale`, `units` and
    `speaks` are how the maker writes to her buyers.
    """

    number: str
    maker: str
    own_words: OwnWords = field(default_factory=OwnWords)
    buyer: str
    title: str
    day: date
    valid_until: date
    ready_by: date
    wanted_by: date | None = None
    deliver_to: str | None = None
    quantity: int
    width_cm: float
    height_cm: float
    weight_g: float
    stitch: str
    yarns: tuple[OfferedYarn, ...]
    colours: tuple[OfferedColour, ...]
    extras: tuple[str, ...]
    left_out: tuple[LeftOut, ...] = ()
    currency: str
    rows: tuple[Row, ...]
    exchange: ExchangeRate | None = None
    cautions: tuple[Caution, ...]
    locale: str
    units: Units
    speaks: Vocabulary

    def row(self, code: RowCode, currency: str | None = None) -> Row | None:
        """Return the row of an amount, in the maker's currency unless told; none if not asked."""
        wanted = currency or self.currency
        rows = (row for row in self.rows if (row.code, row.currency) == (code, wanted))
        return next(rows, None)

    @property
    def waits_for_payment(self) -> bool:
        """Whether something is to be paid before the work begins."""
        return any(row.due is Due.ON_ACCEPTING for row in self.rows)


def offer_of(quote: Quote) -> Offer:
    """Return what the buyer is told of a quote."""
    order, workshop, plan = quote.order, quote.workshop, quote.plan
    return Offer(
        number=quote.number,
        maker=workshop.name,
        own_words=workshop.own_words,
        buyer=order.buyer,
        title=order.title,
        day=quote.day,
        valid_until=quote.valid_until,
        ready_by=quote.ready_by,
        wanted_by=order.wanted_by,
        deliver_to=order.deliver_to,
        quantity=order.quantity,
        width_cm=plan.width_cm,
        height_cm=plan.height_cm,
        weight_g=quote.estimate.grams / order.quantity,
        stitch=order.design.stitch,
        yarns=tuple(_yarns(quote)),
        colours=tuple(_colours(quote)),
        extras=tuple(extra.what for extra in order.extras),
        left_out=tuple(left_out(quote)),
        currency=quote.price.currency,
        rows=tuple(rows_of(quote.price, workshop.tax, workshop.pricing.rest_due)),
        exchange=quote.price.exchange,
        cautions=tuple(c for c in quote.cautions if c.reader is Reader.BUYER),
        locale=workshop.locale,
        units=workshop.units,
        speaks=workshop.speaks,
    )


def _yarns(quote: Quote) -> Iterator[OfferedYarn]:
    for name in dict.fromkeys(colour.source.yarn for colour in quote.estimate.colours):
        yield OfferedYarn(name=name, fibre=quote.workshop.yarn(name).fibre)


def _colours(quote: Quote) -> Iterator[OfferedColour]:
    """Yield the colours of the blanket, in the order they are worked."""
    for name in dict.fromkeys(worked.colour for worked in quote.plan.passes):
        source = quote.order.design.source_of(name)
        code = quote.workshop.yarn(source.yarn).colours[source.colour]
        yield OfferedColour(name=name, yarn=source.yarn, colour=source.colour, code=code)
