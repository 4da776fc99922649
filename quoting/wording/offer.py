"""An offer in words: every amount, fact and sentence that the buyer reads, on page or on paper."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from quoting.core.price.cost_lines import LineKind
from quoting.core.quote.offer import Offer, OfferedColour, OfferedYarn
from quoting.core.quote.offer_rows import Due, Row, RowCode
from quoting.core.workshop.own_words import OwnWords
from quoting.wording.catalogues import sentence
from quoting.wording.cautions import caution_sentence
from quoting.wording.drawing import title_of_drawing
from quoting.wording.exchange import exchange_words
from quoting.wording.lines import move_words
from quoting.wording.offer_extras import extras_words
from quoting.wording.speech import Speech, speech_of

TAX_DIGITS = 3
"""Decimals of a rate of tax in per cent, where it has so many."""

_NAMES = {
    RowCode.BLANKETS: "The blanket",
    RowCode.TOGETHER: "Together",
    RowCode.DELIVERY: "Delivery",
    RowCode.TAX_ADDED: "Tax",
    RowCode.TOTAL: "Total",
    RowCode.TAX_INSIDE: "Tax inside it",
    RowCode.WHOLE: "All of it",
    RowCode.DEPOSIT: "Deposit",
    RowCode.AT_HALF: sentence("Part payment"),
    RowCode.BALANCE: "Balance",
}

_DUE = {
    Due.ON_ACCEPTING: "when you accept",
    Due.AT_HALF: sentence("when half is made"),
    Due.BEFORE_SENDING: "before it is sent",
    Due.ON_DELIVERY: sentence("on delivery"),
}

_CARE = "Care: wash as the yarn’s label says, by itself the first time, and dry flat."
_BY_HAND = (
    "Made by hand: size may differ by a little, and colours on a screen or on paper differ "
    "from yarn."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidRow:
    """One amount and its name; a total is told with more weight."""

    name: str
    amount: str
    is_total: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidFact:
    """One fact beside its name; where it names colours, these are they.

    `of` marks a text that somebody typed, as in `people_texts`.
    """

    name: str
    text: str
    colours: tuple[OfferedColour, ...] = ()
    of: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidOffer:
    """An offer in the words of its maker's locale, in the order that it is read.

    `name` is that of the whole document, `heading` the line under its title. `own_words` are the
    maker's, as she typed them; where she has none for the care, a note says what is usual.
    """

    name: str
    maker: str
    own_words: OwnWords
    title: str
    heading: str
    rows: tuple[SaidRow, ...]
    facts: tuple[SaidFact, ...]
    cautions: tuple[str, ...]
    notes: tuple[str, ...]


def say_offer(offer: Offer) -> SaidOffer:
    """Return an offer in words. Errors: as `speech_of`."""
    speech = speech_of(offer)
    of_day = f"Quote {number_words(offer.number)} of {speech.day(offer.day)}"
    return SaidOffer(
        name=f"Quote {number_words(offer.number)} – {offer.title}",
        maker=offer.maker,
        own_words=offer.own_words,
        title=offer.title,
        heading=f"{of_day} for {offer.buyer}" if offer.buyer else of_day,
        rows=tuple(_said_row(row, offer, speech) for row in offer.rows),
        facts=tuple(_facts(offer, speech)),
        cautions=tuple(caution_sentence(caution, speech) for caution in offer.cautions),
        notes=tuple(_notes(offer, speech)),
    )


def people_texts(offer: Offer) -> dict[str, str]:
    """Return what stands in the marked places of an offer's page, where words of people are.

    Errors: as `speech_of`.
    """
    said = say_offer(offer)
    return {
        "name": said.name,
        "title": said.title,
        "heading": said.heading,
        "extras": extras_words(offer, speech_of(offer)),
        "drawing": title_of_drawing(offer.title),
    }


def number_words(number: str) -> str:
    """Return the number of a quote as it is told, also where none was given yet."""
    return number or "(not given yet)"


def _said_row(row: Row, offer: Offer, speech: Speech) -> SaidRow:
    abroad = row.currency != offer.currency
    return SaidRow(
        name=_name_abroad(row, offer, speech) if abroad else _row_name(row, offer, speech),
        amount=speech.money(row.amount, row.currency),
        is_total=row.code is RowCode.TOTAL,
    )


def _row_name(row: Row, offer: Offer, speech: Speech) -> str:
    match row.code:
        case RowCode.BLANKETS | RowCode.TOGETHER:
            return _price_name(row, offer, speech)
        case RowCode.RUSH | RowCode.DISCOUNT | RowCode.MINIMUM:
            return move_words(LineKind(row.code.value), row.share, speech)
        case RowCode.TAX_ADDED | RowCode.TAX_INSIDE if row.share is not None:
            return f"{_NAMES[row.code]}, {speech.percent(row.share, TAX_DIGITS)}"
        case _:
            return f"{_NAMES[row.code]}, {_DUE[row.due]}" if row.due else _NAMES[row.code]


def _price_name(row: Row, offer: Offer, speech: Speech) -> str:
    if row.each is None:
        return _NAMES[row.code]
    blankets = speech.count(offer.quantity, "blanket")
    name = blankets if row.code is RowCode.BLANKETS else _NAMES[row.code]
    return f"{name}, each {speech.money(row.each)}"


def _name_abroad(row: Row, offer: Offer, speech: Speech) -> str:
    name = f"{_NAMES[row.code]} in {row.currency}"
    if row.code is RowCode.TOTAL and offer.exchange is not None:
        return f"{name}, at {exchange_words(offer.exchange, speech)}"
    return name


def _facts(offer: Offer, speech: Speech) -> Iterator[SaidFact]:
    size = speech.size(offer.width_cm, offer.height_cm)
    yield SaidFact(name="Size", text=f"about {size}, border included")
    yield SaidFact(name="Yarn", text=", ".join(_yarn_name(yarn) for yarn in offer.yarns))
    names = ", ".join(colour.name for colour in offer.colours)
    yield SaidFact(name=speech.worded("Colours"), text=names, colours=offer.colours)
    if offer.extras:
        yield SaidFact(name="With it", text=extras_words(offer, speech), of="extras")
    ready, day = speech.day(offer.ready_by), speech.day(offer.day)
    yield SaidFact(
        name="With you by",
        text=f"{ready} if you accept on {day}, and about a day later for each day that you wait",
    )
    yield SaidFact(name="Valid until", text=speech.day(offer.valid_until))


def _yarn_name(yarn: OfferedYarn) -> str:
    return f"{yarn.name} ({yarn.fibre})" if yarn.fibre else yarn.name


def _notes(offer: Offer, speech: Speech) -> Iterator[str]:
    if not offer.own_words.care:
        yield _CARE
    yield _accepting(offer, speech)


def _accepting(offer: Offer, speech: Speech) -> str:
    until = speech.day(offer.valid_until)
    sentences = [
        f"To accept, reply to this quote with its number, {offer.number}, by {until}."
        if offer.number
        else "This quote was not given yet: it has no number, and cannot be accepted."
    ]
    if offer.waits_for_payment:
        paid = "payment" if offer.row(RowCode.WHOLE) else "deposit"
        sentences.append(f"Work begins when the {paid} has come.")
    return " ".join([*sentences, speech.worded(_BY_HAND)])
