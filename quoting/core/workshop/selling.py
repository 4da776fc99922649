"""The terms the maker works and sells on: pay, price, fees, tax, delivery."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import Self

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Checks
from quoting.core.ground.place import Place, at

MOST_MONEY = 1_000_000_000


class FeeBase(StrEnum):
    """What a fee's rate is taken on: so much of the price, the delivery and the tax added to them.

    A tax inside the price is in all of them. A further base is one line more, its word and its
    three numbers; price, files and workbooks take fees by these numbers alone.
    """

    PRICE = "price", 1, 0, 0
    PRICE_AND_DELIVERY = "price and delivery", 1, 1, 0
    TOTAL = "total", 1, 1, 1

    _value_: str
    of_price: int
    of_delivery: int
    of_added_tax: int

    def __new__(cls, word: str, of_price: int, of_delivery: int, of_added_tax: int) -> Self:
        """Make a base of its word, and keep its three numbers beside it."""
        base = str.__new__(cls, word)
        base._value_ = word
        base.of_price, base.of_delivery, base.of_added_tax = of_price, of_delivery, of_added_tax
        return base


class TaxShown(StrEnum):
    """Whether the shown price has the tax inside or it is added to it."""

    INCLUDED = "included"
    ADDED = "added"


class YarnCharged(StrEnum):
    """Whether the price carries the whole skeins bought or the grams used."""

    BOUGHT = "bought"
    USED = "used"


@dataclass(frozen=True, slots=True, kw_only=True)
class Pay:
    """What an hour of the maker's is paid, and what overhead it carries.

    `rest_allowance` is a share of the basic time and is added to it: where rest is a share d of
    the day, it is d/(1 − d).
    """

    making_per_hour: Decimal
    office_per_hour: Decimal
    overhead_per_hour: Decimal = Decimal(0)
    rest_allowance: float = 0.0

    def __post_init__(self) -> None:
        checks = Checks()
        for place in ("making_per_hour", "office_per_hour", "overhead_per_hour"):
            checks.number(place, getattr(self, place), least=0, most=MOST_MONEY)
        checks.number("rest_allowance", self.rest_allowance, least=0, most=1)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Target:
    """What fixes a price: exactly one of a margin, a markup, or the price itself.

    Margin is profit over net revenue; markup is profit over cost.
    """

    margin: float | None = None
    markup: float | None = None
    given: Decimal | None = None

    def __post_init__(self) -> None:
        checks = Checks()
        wishes = {"margin": self.margin, "markup": self.markup, "given": self.given}
        named = [place for place, wish in wishes.items() if wish is not None]
        if len(named) != 1:
            checks.add(named[-1] if named else "margin", MistakeCode.ONE_TARGET, read=tuple(named))
        checks.number("margin", self.margin, least=-10, most=10)
        checks.number("markup", self.markup, least=-1, most=100)
        checks.number("given", self.given, above=0, most=MOST_MONEY)
        checks.done()

    @property
    def place(self) -> Place:
        """Where the margin or the markup stands in an order."""
        return at("price", "margin") if self.markup is None else at("price", "markup")


class RestDue(StrEnum):
    """When the last of several payments is due."""

    BEFORE_SENDING = "before sending"
    ON_DELIVERY = "on delivery"


@dataclass(frozen=True, slots=True, kw_only=True)
class Deposit:
    """What is paid when the order is agreed: a share of the total, or the yarn.

    With both it is the yarn and a share of all else that the buyer pays.
    """

    share: float | None = None
    yarn: bool = False

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("share", self.share, above=0, most=1)
        if self.share is None and not self.yarn:
            checks.add("share", MistakeCode.SHARE_OR_YARN)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Pricing:
    """How a price is made from a cost, by a margin or a markup, and how it is paid.

    `at_half` is what share of the total is paid when half is made, at most what the deposit
    leaves; `exchange_cushion` goes on reference rates.
    """

    target: Target
    yarn_charged: YarnCharged = YarnCharged.BOUGHT
    round_up_to: Decimal | None = None
    minimum: Decimal | None = None
    valid_days: int = 14
    deposit: Deposit | None = None
    at_half: float | None = None
    rest_due: RestDue = RestDue.BEFORE_SENDING
    exchange_cushion: float = 0.0

    def __post_init__(self) -> None:
        checks = Checks()
        if self.target.given is not None:
            checks.add("given", MistakeCode.PRICE_FOR_ONE_ORDER)
        checks.number("round_up_to", self.round_up_to, above=0, most=MOST_MONEY)
        checks.number("minimum", self.minimum, least=0, most=MOST_MONEY)
        checks.number("valid_days", self.valid_days, least=1, most=3650)
        checks.number("at_half", self.at_half, above=0, most=1)
        checks.number("exchange_cushion", self.exchange_cushion, least=0, most=1)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Fee:
    """What somebody keeps of each payment: a rate of a base, and a fixed part."""

    name: str
    rate: float = 0.0
    fixed: Decimal = Decimal(0)
    on: FeeBase = FeeBase.TOTAL

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("name", self.name)
        checks.number("rate", self.rate, least=0, most=1)
        checks.number("fixed", self.fixed, least=0, most=MOST_MONEY)
        checks.done()


@dataclass(frozen=True, slots=True, kw_only=True)
class Tax:
    """Sales tax; `rate` is read only when the maker is registered."""

    registered: bool = False
    rate: float = 0.0
    shown: TaxShown = TaxShown.INCLUDED
    on_delivery: bool = True

    def __post_init__(self) -> None:
        checks = Checks()
        checks.number("rate", self.rate, least=0, most=10)
        checks.done()

    @property
    def charged_rate(self) -> float:
        """The rate that is charged: none, unless registered."""
        return self.rate if self.registered else 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class DeliveryBand:
    """Delivery to one country up to one weight, packaging included."""

    to: str
    up_to_g: float
    charged: Decimal
    paid: Decimal

    def __post_init__(self) -> None:
        checks = Checks()
        checks.name("to", self.to)
        checks.number("up_to", self.up_to_g, above=0, most=1_000_000)
        checks.number("charged", self.charged, least=0, most=MOST_MONEY)
        checks.number("paid", self.paid, least=0, most=MOST_MONEY)
        checks.done()

    def goes_to(self, country: str | None) -> bool:
        """Return whether it is the country's, in capitals or not."""
        return country is not None and self.to.casefold() == country.casefold()


@dataclass(frozen=True, slots=True, kw_only=True)
class Delivery:
    """What delivery is charged and costs; the first band that fits wins over the plain figures."""

    charged: Decimal = Decimal(0)
    paid: Decimal = Decimal(0)
    packaging: Decimal = Decimal(0)
    packaging_g: float = 0.0
    bands: tuple[DeliveryBand, ...] = ()

    def __post_init__(self) -> None:
        checks = Checks()
        for place in ("charged", "paid", "packaging"):
            checks.number(place, getattr(self, place), least=0, most=MOST_MONEY)
        checks.number("packaging_weight", self.packaging_g, least=0, most=100_000)
        checks.done()

    def band_for(self, country: str | None, weight_g: float) -> DeliveryBand | None:
        """Return the first band to that country that carries the weight, if there is one."""
        bands = (band for band in self.bands if band.goes_to(country))
        return next((band for band in bands if weight_g <= band.up_to_g), None)
