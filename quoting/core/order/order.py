"""The order: what a buyer asks, and whether the workshop can read it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.currencies import MINOR_DIGITS
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.money import round_money
from quoting.core.ground.place import Place, at
from quoting.core.order.design import ColourSource, Design
from quoting.core.workshop.selling import MOST_MONEY, Target
from quoting.core.workshop.workshop import Workshop


@dataclass(frozen=True, slots=True, kw_only=True)
class Extra:
    """Something that goes with the blanket, and the yarn it takes, if it takes any.

    Yarn has a colour and a length, or there is none. One that is `optional` may be left out by the
    buyer, who is told what the order is less without it.
    """

    what: str
    cost: Decimal = Decimal(0)
    minutes: float = 0.0
    colour: str | None = None
    yarn_m: float = 0.0
    optional: bool = False

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("what", self.what)
        checks.number("cost", self.cost, least=0, most=MOST_MONEY)
        checks.number("minutes", self.minutes, least=0, most=100_000)
        checks.number("metres", self.yarn_m, least=0, most=100_000)
        if self.yarn_m and self.colour is None:
            checks.add("colour", MistakeCode.MISSING)
        if self.colour is not None and not self.yarn_m:
            checks.add("metres", MistakeCode.MISSING)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Terms:
    """What is particular to the price of this order."""

    target: Target | None = None
    discount: float = 0.0
    rush: float = 0.0

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("discount", self.discount, least=0, most=0.99)
        checks.number("rush", self.rush, least=0, most=10)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Order:
    """What is asked: `quantity` blankets of one design, and where they go.

    `language` is the locale that its buyer reads (`de`, `en_US`); the workshop's where it is None.
    """

    title: str
    buyer: str
    design: Design
    for_baby: bool = False
    quantity: int = 1
    wanted_by: date | None = None
    deliver_to: str | None = None
    pays_in: str | None = None
    language: str | None = None
    notes: str = ""
    extras: tuple[Extra, ...] = ()
    terms: Terms = field(default_factory=Terms)

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name(at("order", "title"), self.title)
        checks.text(at("order", "buyer"), self.buyer, most=80)
        checks.text(at("order", "notes"), self.notes, most=2000, lines=True)
        if self.deliver_to is not None:
            checks.name(at("order", "deliver_to"), self.deliver_to)
        if self.language is not None:
            checks.name(at("order", "language"), self.language)
        checks.number(at("order", "quantity"), self.quantity, least=1, most=1000)
        if self.pays_in is not None and self.pays_in not in MINOR_DIGITS:
            checks.add(at("order", "pays_in"), MistakeCode.UNKNOWN_CURRENCY, read=self.pays_in)
        checks.done()


def check_order(order: Order, workshop: Workshop) -> None:
    """Refuse an order that names what the workshop does not have.

    Errors: `unknown-yarn`, `unknown-colour`, `unknown-stitch`, `unknown-motif`, `no-rate`, and
    `not-whole-minor-units` of a given price, each at its place in the order file.
    """
    checks = Checks()
    for place, name in _stitches(order.design):
        with checks.under(place):
            workshop.basic_stitch(name, "")
    for place, name in order.design.body.motifs_with_places():
        with checks.under(place):
            workshop.motif(name, "")
    for colour, source in order.design.colours.items():
        with checks.under(at("blanket", "colours", colour)):
            _check_source(source, workshop)
    with checks.under(at("blanket", "yarn")):
        yarn = workshop.yarn(order.design.yarn, "")
        known = tuple(yarn.colours)
        for place, colour in _colours(order):
            if colour not in order.design.colours and colour not in yarn.colours:
                checks.add(place, MistakeCode.UNKNOWN_COLOUR, read=colour, known=known)
    given = order.terms.target.given if order.terms.target else None
    if given is not None and round_money(given, workshop.currency) != given:
        currency = workshop.currency
        checks.add(
            at("price", "given"), MistakeCode.NOT_WHOLE_MINOR_UNITS, read=given, currency=currency
        )
    pays_in = order.pays_in or workshop.currency
    if pays_in != workshop.currency and pays_in not in workshop.exchange:
        checks.add(
            at("order", "pays_in"),
            MistakeCode.NO_RATE,
            read=pays_in,
            known=tuple(workshop.exchange),
        )
    checks.done()


def _stitches(design: Design) -> Iterator[tuple[Place, str]]:
    yield at("blanket", "stitch"), design.stitch
    yield from design.body.stitches_with_places()
    for number, band in enumerate(design.border, 1):
        yield at("blanket", "border", number, "stitch"), band.stitch


def _colours(order: Order) -> Iterator[tuple[Place, str]]:
    yield from order.design.body.colours_with_places()
    for number, band in enumerate(order.design.border, 1):
        yield at("blanket", "border", number, "colour"), band.colour
    for number, extra in enumerate(order.extras, 1):
        if extra.colour is not None:
            yield at("extras", number, "colour"), extra.colour


def _check_source(source: ColourSource, workshop: Workshop) -> None:
    yarn = workshop.yarn(source.yarn)
    if source.colour not in yarn.colours:
        raise refuse(
            "colour", MistakeCode.UNKNOWN_COLOUR, read=source.colour, known=tuple(yarn.colours)
        )
