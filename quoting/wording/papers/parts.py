"""What the papers of an order have in common: whose they are, their names, and what they repeat."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from quoting.core.papers.batch import BatchRecord
from quoting.core.papers.head import PaperHead
from quoting.wording.catalogues import ENGLISH, language_of, sentence
from quoting.wording.cautions import caution_sentence
from quoting.wording.locales import known_locale, locale_of, sheet_of
from quoting.wording.paper import Block, Facts, Paper, SaidFact, Words
from quoting.wording.speech import Speech

_CARE = sentence("Wash as the yarn’s label says, by itself the first time, and dry flat.")


def buyers_speech(head: PaperHead) -> Speech:
    """Return how a paper speaks to its buyer.

    Where a language has no data for a country (`de_FR`), it is said as in any.
    """
    locale = known_locale(head.locale)
    return _speech(head, locale, language_of(locale))


def makers_speech(batch: BatchRecord) -> Speech:
    """Return how a batch record speaks to its maker."""
    return _speech(batch.head, batch.makers_locale, ENGLISH)


def _speech(head: PaperHead, locale: str, language: str) -> Speech:
    return Speech(
        locale=str(locale_of(locale)),
        units=head.units,
        vocabulary=head.speaks,
        currency=head.currency,
        language=language,
    )


def paper_of(
    head: PaperHead, speech: Speech, title: str, blocks: Iterable[Block], *, heading: str = ""
) -> Paper:
    """Return a paper under a title, with its maker's address over its blocks."""
    contact = (head.contact,) if head.contact else ()
    return Paper(
        language=speech.language,
        sheet=sheet_of(speech.locale),
        name=title if title == head.title else f"{title} – {head.title}",
        maker=head.maker,
        address=(*head.address.splitlines(), *contact),
        title=title,
        heading=heading,
        blocks=tuple(blocks),
    )


def titled(head: PaperHead, speech: Speech, plain: str, cancelling: str) -> str:
    """Return the title of a paper, or that of one that cancels another."""
    text = cancelling if head.cancels else plain
    return speech.worded(text).format(number=head.number, cancelled=head.cancels)


def cancelled_words(head: PaperHead, speech: Speech, text: str) -> Iterator[Words]:
    """Yield what a paper that cancels another says before it repeats what that one said."""
    if head.cancels:
        said = speech.worded(text).format(cancelled=head.cancels)
        yield Words(texts=(said,), warning=speech.worded(sentence("Please note:")))


def order_facts(head: PaperHead, speech: Speech) -> Iterator[SaidFact]:
    """Yield what an order is of, by which quote, and for whom."""
    yield SaidFact(name=speech.worded(sentence("Order")), text=head.title)
    if head.quote:
        of_day = speech.worded(sentence("{number} of {day}"))
        text = of_day.format(number=head.quote, day=speech.day(head.quoted_on))
        yield SaidFact(name=speech.worded(sentence("Quote")), text=text)
    if head.buyer:
        yield SaidFact(name=speech.worded(sentence("For")), text=head.buyer)


def fibres(batch: BatchRecord, speech: Speech) -> Facts:
    """Return what each yarn is made of, as its maker typed it."""
    unknown = speech.worded(sentence("not known"))
    return Facts(
        heading=speech.worded(sentence("Fibres")),
        facts=tuple(SaidFact(name=yarn.name, text=yarn.fibre or unknown) for yarn in batch.yarns),
    )


def care(batch: BatchRecord, speech: Speech) -> Words:
    """Return how it is cared for: in the maker's own words, or as is usual."""
    heading = speech.worded(sentence("Care"))
    if batch.care:
        return Words(heading=heading, texts=(batch.care,), as_typed=True)
    return Words(heading=heading, texts=(speech.worded(_CARE),))


def cautions(batch: BatchRecord, speech: Speech) -> Iterator[Words]:
    """Yield what whoever has it is to be told, if anything, as the offer had it."""
    texts = tuple(caution_sentence(caution, speech) for caution in batch.cautions)
    if texts:
        yield Words(texts=texts, warning=speech.worded(sentence("Please note:")))
