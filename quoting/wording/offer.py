"""An offer in words: every amount, fact and sentence that the buyer reads, on page or on paper."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from quoting.core.quote.offer import Offer
from quoting.core.quote.offer_rows import RowCode
from quoting.core.workshop.own_words import OwnWords
from quoting.places import catalogue_languages
from quoting.wording.catalogues import ENGLISH, sentence
from quoting.wording.cautions import caution_sentence
from quoting.wording.drawing import title_of_drawing
from quoting.wording.offer_extras import extras_words
from quoting.wording.offer_facts import (
    facts_of_changes,
    facts_of_days,
    facts_of_making,
    facts_of_work,
    heading_of_work,
)
from quoting.wording.offer_rows import said_row
from quoting.wording.paper import Facts, SaidFact, SaidRow
from quoting.wording.speech import Speech, speech_of

_NOT_GIVEN = "(not given yet)"

_CARE = sentence("Care: wash as the yarn’s label says, by itself the first time, and dry flat.")
_BY_HAND = sentence("Made by hand: colours on a screen or on paper differ from yarn.")
_BY_HAND_ABOUT = sentence(
    "Made by hand: size may differ by a little, and colours on a screen or on paper differ "
    "from yarn."
)
_LAW = sentence(
    "The law where you live may give you further rights; for what it says, ask the authority or "
    "a licensed adviser there."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidOffer:
    """An offer in the words of its buyer's locale, in the order that it is read.

    `name` is that of the whole document, `heading` the line under its title. `facts` are what is
    made and hold whenever it is given, `days` follow from the day; `changes` are what may still be
    changed, and `work` is what goes into it.
    `own_words` are the maker's, as she typed them; where she has none for the care, a note says
    what is usual.
    """

    language: str
    name: str
    maker: str
    own_words: OwnWords
    title: str
    heading: str
    rows: tuple[SaidRow, ...]
    facts: tuple[SaidFact, ...]
    days: tuple[SaidFact, ...]
    changes: tuple[SaidFact, ...]
    work: Facts
    warning: str
    cautions: tuple[str, ...]
    notes: tuple[str, ...]
    care_heading: str
    terms_heading: str


def say_offer(offer: Offer, language: str = "") -> SaidOffer:
    """Return an offer in words, in its own language unless told. Errors: as `speech_of`."""
    speech = _speech(offer, language)
    return SaidOffer(
        language=speech.language,
        name=speech.worded(sentence("Quote {number} – {title}")).format(
            number=_number(offer, speech), title=offer.title
        ),
        maker=offer.maker,
        own_words=offer.own_words,
        title=offer.title,
        heading=_heading(offer, speech),
        rows=tuple(said_row(row, offer, speech) for row in offer.rows),
        facts=tuple(facts_of_making(offer, speech)),
        days=tuple(facts_of_days(offer, speech)),
        changes=tuple(facts_of_changes(offer, speech)),
        work=Facts(
            heading=heading_of_work(offer, speech), facts=tuple(facts_of_work(offer, speech))
        ),
        warning=speech.worded(sentence("Please note:")),
        cautions=tuple(caution_sentence(caution, speech) for caution in offer.cautions),
        notes=tuple(_notes(offer, speech)),
        care_heading=speech.worded(sentence("Care")),
        terms_heading=speech.worded(sentence("Terms of sale")),
    )


def people_texts(offer: Offer, language: str = "") -> dict[str, str]:
    """Return what stands in the marked places of an offer's page, where words of people are.

    `language` is the one that the page is written in: before there were others, all were English.
    Errors: as `speech_of`.
    """
    said = say_offer(offer, language)
    return {
        "name": said.name,
        "title": said.title,
        "heading": said.heading,
        "extras": extras_words(offer, _speech(offer, language)),
        "drawing": title_of_drawing(offer.title, _speech(offer, language)),
    }


def number_words(number: str) -> str:
    """Return the number of a quote as its maker is told it, also where none was given yet."""
    return number or _NOT_GIVEN


def _speech(offer: Offer, language: str) -> Speech:
    """Return the speech of an offer, in a language that there still is; as it is without one."""
    known = language in {ENGLISH, *catalogue_languages()}
    return replace(speech_of(offer), language=language) if known else speech_of(offer)


def _number(offer: Offer, speech: Speech) -> str:
    return offer.number or speech.worded(sentence("(not given yet)"))


def _heading(offer: Offer, speech: Speech) -> str:
    told = {"number": _number(offer, speech), "day": speech.day(offer.day)}
    if not offer.buyer:
        return speech.worded(sentence("Quote {number} of {day}")).format(**told)
    text = speech.worded(sentence("Quote {number} of {day} for {buyer}"))
    return text.format(**told, buyer=offer.buyer)


def _notes(offer: Offer, speech: Speech) -> Iterator[str]:
    if not offer.own_words.care:
        yield speech.worded(_CARE)
    yield " ".join(_accepting(offer, speech))
    by_hand = speech.worded(_BY_HAND_ABOUT if offer.size_within_cm is None else _BY_HAND)
    yield f"{by_hand} {speech.worded(_LAW)}" if _binds(offer) else by_hand


def _accepting(offer: Offer, speech: Speech) -> Iterator[str]:
    if offer.number:
        text = speech.worded(
            sentence("To accept, reply to this quote with its number, {number}, by {until}.")
        )
        yield text.format(number=offer.number, until=speech.day(offer.valid_until))
    else:
        yield speech.worded(
            sentence("This quote was not given yet: it has no number, and cannot be accepted.")
        )
    if offer.row(RowCode.WHOLE) is not None:
        yield speech.worded(sentence("Work begins when the payment has come."))
    elif offer.waits_for_payment:
        yield speech.worded(sentence("Work begins when the deposit has come."))


def _binds(offer: Offer) -> bool:
    """Return whether it asks for money in advance, or says itself what may be changed or sent back.

    There the law of the buyer's country has something to say, too.
    """
    return offer.waits_for_payment or offer.change_days is not None or bool(offer.own_words.terms)
