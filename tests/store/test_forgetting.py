"""A buyer who is forgotten leaves the book to the last byte; figures, days and colours stay."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from sqlalchemy import select

from quoting.core.ground.codes import MistakeCode
from quoting.store.book import Book, open_book
from quoting.store.forgetting import buyer_of, forget_buyer
from quoting.store.log import log_of
from quoting.store.name_words import FORGOTTEN
from quoting.store.order_content import OrderContent
from quoting.store.order_list import OrderQuery, list_orders
from quoting.store.orders import asides_of, create_order, kept_order, save_order
from quoting.store.papers import make_paper, papers_of
from quoting.store.quotes import quotes_of
from quoting.store.tables import METADATA
from tests.store.hers_everywhere import NAME, PRIVATE, all_texts, content_of, filled, forget
from tests.store.made_papers import bill
from tests.store.moments import DESK, NOW, later
from tests.store.refusals import refused


def test_no_value_in_the_book_has_a_word_of_the_name_or_of_what_was_noted(book: Book) -> None:
    order_id = filled(book)
    assert [word for word in PRIVATE if word in " ".join(all_texts(book)).lower()]
    assert forget(book, order_id)
    after = " ".join(all_texts(book)).lower()
    assert not [word for word in PRIVATE if word in after]


def test_no_byte_of_the_file_has_a_word_of_the_name(path: Path) -> None:
    with open_book(str(path), now=NOW) as book:
        order_id = filled(book)
        assert forget(book, order_id)
        beside = [file for file in path.parent.iterdir() if file.name.startswith(path.name)]
        for file in beside:
            held = file.read_bytes().lower()
            assert not [word for word in PRIVATE if word.encode() in held], file.name
    held = path.read_bytes().lower()
    assert not [word for word in PRIVATE if word.encode() in held]


def test_the_order_and_its_quote_are_the_same_but_for_her(book: Book) -> None:
    order_id = filled(book)
    order, (quote,), log = (
        kept_order(book, order_id),
        quotes_of(book, order_id),
        log_of(book, order_id),
    )
    forget(book, order_id)
    now, (given,) = kept_order(book, order_id), quotes_of(book, order_id)
    title = f"Cot blanket for {FORGOTTEN}"
    assert order.content.order is not None
    tag, box = order.content.order.extras
    extras = (replace(tag, what=f"name tag {FORGOTTEN}"), box)
    hers = {"buyer": FORGOTTEN, "title": title, "notes": "", "extras": extras}
    assert now.content.order == replace(order.content.order, **hers)
    assert now.content.figures == order.content.figures
    assert (now.content.title, now.content.buyer) == (title, FORGOTTEN)
    assert now.content.typed["blanket.colours"] == ("oat", "teal")
    assert given.frozen.order == replace(quote.frozen.order, **hers)
    (less,) = quote.frozen.offer.left_out
    names = {"buyer": FORGOTTEN, "title": title, "extras": tuple(e.what for e in extras)}
    names |= {"left_out": (replace(less, what=extras[0].what),)}
    assert given.frozen.offer == replace(quote.frozen.offer, **names)
    assert given.frozen.results["price"]["total"] == quote.frozen.results["price"]["total"]
    assert given.number == quote.number
    assert given.frozen.day == quote.frozen.day
    assert "<b>284.00</b>" in given.frozen.page
    assert f"2026-001 of 25 November 2026 for {FORGOTTEN}" in given.frozen.page
    assert [entry.at for entry in log_of(book, order_id)] == [entry.at for entry in log]
    assert log_of(book, order_id)[-1] == log[-1]


def test_a_paper_is_the_same_but_for_her(book: Book) -> None:
    order_id = filled(book)
    (before,) = papers_of(book, order_id)
    forget(book, order_id)
    (after,) = papers_of(book, order_id)
    title = f"Cot blanket for {FORGOTTEN}"
    head = replace(before.facts.head, buyer=FORGOTTEN, title=title)
    assert after == replace(before, facts=replace(before.facts, head=head))


def test_a_spelling_that_only_a_paper_has_is_forgotten_too(book: Book) -> None:
    order_id = create_order(book, content_of(NAME, "Zephyrin’s"), now=NOW).id
    paper = bill()
    head = replace(paper.head, buyer="Zephyrin", title="For Zephyrin")
    make_paper(book, order_id, replace(paper, head=head), seen=0, now=NOW)
    forget(book, order_id)
    assert "ephyrin" not in " ".join(all_texts(book))


def test_what_the_quote_was_given_of_is_still_known_to_be_unchanged(book: Book) -> None:
    order_id = filled(book)
    forget(book, order_id)
    order, (quote,) = kept_order(book, order_id), quotes_of(book, order_id)
    assert quote.revision == order.revision
    assert quote.frozen.order == order.content.order


def test_a_page_that_is_still_open_brings_nothing_back_in_silence(book: Book) -> None:
    order_id = filled(book)
    before = kept_order(book, order_id)
    forget(book, order_id)
    save_order(
        book, order_id, before.content, revision=before.revision, writer=DESK, now=later(days=1)
    )
    assert kept_order(book, order_id).content.buyer == FORGOTTEN
    assert DESK in {aside.writer for aside in asides_of(book, order_id)}


def test_who_is_forgotten_is_not_found_any_more(book: Book) -> None:
    order_id = filled(book)
    for words in ("Zephyrine", "uckermann"):
        assert list_orders(book, OrderQuery(words=words)).found == 1
    forget(book, order_id)
    for words in ("Zephyrine", "uckermann"):
        assert list_orders(book, OrderQuery(words=words)).found == 0


def test_one_order_alone_or_all_of_hers(book: Book) -> None:
    first = filled(book)
    hers = create_order(book, content_of("zephyrine UCKERMANN", "Her second"), now=NOW).id
    others = create_order(book, content_of("Zephyrine Oak", "Another's"), now=NOW).id
    buyer = buyer_of(book, first)
    assert (buyer.name, [order.id for order in buyer.orders]) == (NAME, [first, hers])
    assert [order.quotes for order in buyer.orders] == [1, 0]
    assert buyer.orders[0].title_without == f"Cot blanket for {FORGOTTEN}"
    forget(book, first)
    assert kept_order(book, hers).content.buyer == "zephyrine UCKERMANN"
    assert buyer_of(book, first).orders == ()
    third = create_order(book, content_of(NAME, "Her third"), now=NOW).id
    forget(book, third, everywhere=True)
    assert {kept_order(book, each).content.buyer for each in (hers, third)} == {FORGOTTEN}
    assert kept_order(book, others).content.buyer == "Zephyrine Oak"


def test_a_name_that_was_spelled_otherwise_when_the_quote_was_given_goes_with_it(
    book: Book,
) -> None:
    order_id = filled(book, "Zephyrin Ukermann", "For Zephyrin Ukermann")
    revision = kept_order(book, order_id).revision
    content = content_of(NAME, "Zephyrin’s blanket")
    save_order(book, order_id, content, revision=revision, writer=DESK, now=later(days=1))
    forget(book, order_id)
    assert "ephyrin" not in " ".join(all_texts(book))
    assert kept_order(book, order_id).content.title == f"{FORGOTTEN} blanket"


def test_colours_and_figures_that_are_called_as_she_was_stay(book: Book) -> None:
    """Teal Oat is the buyer, and `teal` and `oat` are colours of the sample's yarn."""
    order_id = filled(book, "Teal Oat", "Teal stripes for Teal Oat")
    (before,) = quotes_of(book, order_id)
    forget(book, order_id)
    (quote,) = quotes_of(book, order_id)
    order = kept_order(book, order_id)
    assert order.content.order is not None
    assert quote.frozen.order.design == before.frozen.order.design == order.content.order.design
    assert quote.frozen.offer.colours == before.frozen.offer.colours
    assert quote.frozen.results["yarn"] == before.frozen.results["yarn"]
    assert quote.frozen.results["price"]["cost"] == before.frozen.results["price"]["cost"]
    assert quote.frozen.reckoned_again().price.total == before.frozen.reckoned_again().price.total
    assert order.content.typed["blanket.colours"] == ("oat", "teal")
    assert "<td>teal</td>" in quote.frozen.page
    assert order.content.title == f"{FORGOTTEN} stripes for {FORGOTTEN}"


def test_an_order_without_a_buyer_has_nobody_to_forget(book: Book) -> None:
    order_id = create_order(book, OrderContent(title="Half typed"), now=NOW).id
    assert buyer_of(book, order_id).orders == ()
    assert refused(lambda: forget(book, order_id)) == MistakeCode.NO_BUYER
    assert refused(lambda: forget(book, 99)) == MistakeCode.ORDER_MISSING


def test_what_fails_forgets_nothing(book: Book) -> None:
    order_id = filled(book)

    def fail(offer: object, language: str) -> dict[str, str]:
        raise ZeroDivisionError(offer, language)

    with pytest.raises(ZeroDivisionError):
        forget_buyer(book, order_id, everywhere=True, told=fail)
    assert kept_order(book, order_id).content.buyer == NAME
    assert len(asides_of(book, order_id)) == 1


def test_while_somebody_else_writes_the_file_is_not_said_to_be_swept(path: Path) -> None:
    with open_book(str(path), now=NOW, wait_s=0.05) as book:
        order_id = filled(book)
        with book.reading() as reader:
            reader.execute(select(METADATA.tables["orders"])).all()
            assert not forget(book, order_id)
        assert kept_order(book, order_id).content.buyer == FORGOTTEN
