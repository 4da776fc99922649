"""What every paper of an order bears: its number, its day, from whom it is and for whom."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from quoting.core.ground.measures import Units
from quoting.core.quote.offer import Offer
from quoting.core.workshop.stitches import Vocabulary


class PaperKind(StrEnum):
    """The kinds of papers, each of which is numbered by itself.

    A care card and a label say what a batch record does, and bear its number.
    """

    RECEIPT = "receipt"
    BILL = "bill"
    BATCH = "batch"


@dataclass(frozen=True, slots=True, kw_only=True)
class PaperHead:
    """The head of a paper, as the maker's workshop and the order were on its day.

    `number` is empty until one is given. A paper that `cancels` another bears that one's number
    there, and its facts besides. `quote` is the number of the quote that was agreed, empty where
    there was none, and `quoted_on` its day. `locale`, `units` and `speaks` are how the maker writes
    to her buyer; `currency` (ISO 4217) is her own.
    """

    number: str = ""
    day: date
    cancels: str = ""
    maker: str
    contact: str = ""
    address: str = ""
    buyer: str = ""
    title: str
    quote: str = ""
    quoted_on: date
    currency: str
    locale: str
    units: Units
    speaks: Vocabulary


def head_of(offer: Offer, day: date) -> PaperHead:
    """Return the head of a paper about what was offered; it has no number yet."""
    return PaperHead(
        day=day,
        maker=offer.maker,
        contact=offer.own_words.contact,
        address=offer.own_words.address,
        buyer=offer.buyer,
        title=offer.title,
        quote=offer.number,
        quoted_on=offer.day,
        currency=offer.currency,
        locale=offer.locale,
        units=offer.units,
        speaks=offer.speaks,
    )
