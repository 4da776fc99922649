"""The offer: all that the buyer is told of a quote, as plain facts and rows of amounts."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date

from quoting.core.ground.cautions import Caution, Reader
from quoting.core.ground.measures import Units
from quoting.core.plan.passes import Plan
from quoting.core.quote.left_out import LeftOut, left_out
from quoting.core.quote.offer_rows import Due, Row, RowCode, rows_of
from quoting.core.quote.offered_motifs import OfferedMotifs, offered_motifs
from quoting.core.quote.own_stitch import own_stitch
from quoting.core.quote.quote import Quote
from quoting.core.quote.what_goes_in import Ingredient, what_goes_in
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.own_words import OwnWords, words_in
from quoting.core.workshop.readers import stitch_names_read_in, units_read_in
from quoting.core.workshop.rounds import SQUARES, Counting
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
class OfferedBorder:
    """Rounds of a border in one colour, in the order that they are worked."""

    colour: str
    rounds: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Offer:
    """What is made, by when and for how much. It needs neither the quote nor the workshop.

    `width_cm` and `height_cm` are those of a finished blanket with its border, each side within
    `size_within_cm` where that is promised; `weight_g` is the yarn that one is expected to take.
    `stitch` is canonical, or a pattern's name, and `stitch_words` what that is like. `border` is
    None in offers that were kept before they told of it. `centre` is how one that grows from its
    centre does, `motifs` what one is joined of. `spaces` is whether the squares of either are open
    between clusters of stitches, or solid; None of all else, and in offers that were kept before
    they told of it. `goes_in` is of all blankets. `left_out` are those of the extras that the buyer
    may leave out. `rows` come in the order that they are read: those of another currency repeat the
    payments in the buyer's, at `exchange`. Until
    `change_days` after accepting the buyer may change what is made. `locale` is the one that the
    buyer reads, `units` and `speaks` what its readers are used to.
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
    stitch_words: str = ""
    border: tuple[OfferedBorder, ...] | None = None
    centre: Counting | None = None
    motifs: OfferedMotifs | None = None
    spaces: bool | None = None
    goes_in: tuple[Ingredient, ...] = ()
    size_within_cm: float | None = None
    change_days: int | None = None

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
    stitch = own_stitch(order.design, plan)
    pattern = workshop.pattern(stitch)
    return Offer(
        number=quote.number,
        maker=workshop.name,
        own_words=_own_words(quote),
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
        stitch=stitch,
        yarns=tuple(_yarns(quote)),
        colours=tuple(_colours(quote)),
        extras=tuple(extra.what for extra in order.extras),
        left_out=tuple(left_out(quote)),
        currency=quote.price.currency,
        rows=tuple(rows_of(quote.price, workshop.tax, workshop.pricing.rest_due)),
        exchange=quote.price.exchange,
        cautions=tuple(c for c in quote.cautions if c.reader is Reader.BUYER),
        locale=order.language or workshop.locale,
        units=_units(quote),
        speaks=_stitch_names(quote),
        stitch_words=pattern.for_buyers if pattern is not None else "",
        border=tuple(OfferedBorder(colour=b.colour, rounds=b.rounds) for b in order.design.border),
        centre=plan.centre,
        motifs=offered_motifs(quote),
        spaces=_spaces(plan),
        goes_in=tuple(what_goes_in(quote)),
        size_within_cm=workshop.documents.size_within_cm,
        change_days=workshop.documents.change_days,
    )


def _units(quote: Quote) -> Units:
    """Return what the buyer measures by: the maker's units, unless she reads another locale."""
    language, usual = quote.order.language, quote.workshop.units
    return usual if language in (None, quote.workshop.locale) else units_read_in(language, usual)


def _stitch_names(quote: Quote) -> Vocabulary:
    """Return the stitch names the buyer knows: the maker's, unless she reads another locale."""
    language, usual = quote.order.language, quote.workshop.speaks
    if language in (None, quote.workshop.locale):
        return usual
    return stitch_names_read_in(language, usual)


def _own_words(quote: Quote) -> OwnWords:
    """Return the maker's words, in the buyer's language where she has them in it."""
    usual, language = quote.workshop.own_words, quote.order.language
    return usual if language is None else words_in(language, usual, quote.workshop.words_in)


def _spaces(plan: Plan) -> bool | None:
    if plan.counted is None or plan.counted.counting not in SQUARES:
        return None
    return plan.counted.counting is Counting.CLUSTERS


def _yarns(quote: Quote) -> Iterator[OfferedYarn]:
    for name in dict.fromkeys(colour.source.yarn for colour in quote.estimate.colours):
        yield OfferedYarn(name=name, fibre=quote.workshop.yarn(name).fibre)


def _colours(quote: Quote) -> Iterator[OfferedColour]:
    """Yield the colours in the order worked; those of motifs by how much they take."""
    names = list(dict.fromkeys(worked.colour for worked in quote.plan.passes))
    if quote.plan.grid is not None:
        metres = {colour.colour: colour.metres for colour in quote.estimate.colours}
        names.sort(key=metres.__getitem__, reverse=True)
    for name in names:
        source = quote.order.design.source_of(name)
        code = quote.workshop.yarn(source.yarn).colours[source.colour]
        yield OfferedColour(name=name, yarn=source.yarn, colour=source.colour, code=code)
