"""What becomes of a page of the workshop that was sent: kept, or what is in the way of it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from quoting.core.ground.errors import Refused
from quoting.store.book import Book
from quoting.store.renames import Renames
from quoting.store.workshops import save_workshop, workshop_version
from quoting.web.forms.sent import Sent, line_numbers
from quoting.web.shop import Shop
from quoting.web.workshop.names_in_use import uses_of_lost
from quoting.web.workshop.own_answer import OwnAnswer, field_words, say_mistakes, shown
from quoting.web.workshop.own_form import (
    differences,
    of_page,
    own_workshop,
    read_sent_workshop,
    sent_workshop,
    whole_sent,
)
from quoting.web.workshop.own_pages import OwnPage
from quoting.web.workshop.renaming import WAS, renames


def kept_or_told(
    page: OwnPage, sent: Sent, shop: Shop, book: Book, *, based_on: int, now: datetime
) -> OwnAnswer:
    """Keep what was sent as the workshop's next version, or say why not; nothing typed is lost."""
    answer = shown(page, sent, shop)
    current = shop.version
    assert current is not None, "the workshop is of a book"  # noqa: S101
    if based_on != current:
        elsewhere = tuple(_changed_since(page, based_on, shop, book))
        if elsewhere:
            told = tuple((field_words(name, answer.form), text) for name, text in elsewhere)
            return replace(answer, changed_elsewhere=told)
    whole = whole_sent(page, sent, own_workshop(shop), shop)
    try:
        workshop = read_sent_workshop(whole, shop)
        new_names = renames_in(whole)
        uses = uses_of_lost(own_workshop(shop), workshop, book, new_names)
        if uses:
            return replace(answer, uses=uses)
        version = save_workshop(book, workshop, now=now, based_on=current, renames=new_names)
    except Refused as refused:
        return replace(answer, said=say_mistakes(answer.form, page, refused.mistakes, shop))
    return replace(answer, version=version)


def renames_in(sent: Sent) -> Renames:
    """Return what has another name in a workshop's form than the one that is kept."""
    colours = {
        (yarn, old): new
        for number in line_numbers(sent).get("yarns", [])
        if (yarn := sent.get(f"yarns.{number}.{WAS}") or "")
        for old, new in renames(sent, f"yarns.{number}.colours").items()
    }
    of_lists = {name: renames(sent, name) for name in ("yarns", "patterns", "motifs")}
    return Renames(colours=colours, **of_lists)


def _changed_since(
    page: OwnPage, based_on: int, shop: Shop, book: Book
) -> Iterable[tuple[str, str]]:
    """Return what of a page is otherwise now than in the version that a form began from."""
    now = of_page(page, sent_workshop(own_workshop(shop), shop))
    try:
        before = workshop_version(book, based_on).workshop
    except Refused:  # the form names no version that there is
        return now.items()
    return differences(of_page(page, sent_workshop(before, shop)), now)
