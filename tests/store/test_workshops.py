"""The workshop is kept in versions: nothing is overwritten, and any of them can be brought back."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from quoting.core.ground.codes import MistakeCode
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import Stock
from quoting.places import demo_workshop
from quoting.schema import load_workshop
from quoting.schema.workshop_shape import WORKSHOP
from quoting.store.book import Book, open_book
from quoting.store.shelf import Lot, lots_on_shelf, weigh_lot
from quoting.store.workshops import (
    bring_back,
    current_workshop,
    save_workshop,
    workshop_on,
    workshop_version,
    workshop_versions,
)
from tests.examples import WOOL, sample_workshop, sample_yarn
from tests.schema.values import of_shape
from tests.store.moments import NOW, later
from tests.store.refusals import refused
from tests.web.rich_workshop import rich

WORKSHOPS = {
    "of the examples": sample_workshop(),
    "of the demo": load_workshop(demo_workshop()),
    "with everything in it": rich(),
}


def workshop_in(book: Book) -> Workshop:
    """Return the workshop of a book that has one."""
    kept = current_workshop(book)
    assert kept is not None
    return kept.workshop


def with_stock(*stock: Stock) -> Workshop:
    """Return a workshop with these on the shelf."""
    return sample_workshop(yarns=(sample_yarn(stock=stock),))


def test_a_new_book_has_no_workshop(book: Book) -> None:
    assert current_workshop(book) is None
    assert workshop_versions(book) == ()
    assert workshop_on(book, NOW) is None


@pytest.mark.parametrize("workshop", WORKSHOPS.values(), ids=WORKSHOPS.keys())
def test_a_workshop_comes_back_the_same(book: Book, workshop: Workshop) -> None:
    save_workshop(book, workshop, now=NOW)
    assert workshop_in(book) == workshop


@given(data=st.data())
@settings(max_examples=15, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_workshop_comes_back_the_same(book: Book, data: st.DataObject) -> None:
    workshop = data.draw(of_shape(WORKSHOP))
    saved = save_workshop(book, workshop, now=NOW)
    assert workshop_in(book) == workshop
    assert workshop_version(book, saved.number).workshop == workshop


def test_a_price_keeps_every_digit_and_a_float_its_last_bit(book: Book) -> None:
    pay = replace(sample_workshop().pay, making_per_hour=Decimal("14.1234567890123456"))
    save_workshop(book, sample_workshop(pay=pay, hours_per_week=0.1 + 0.2), now=NOW)
    kept = workshop_in(book)
    assert str(kept.pay.making_per_hour) == "14.1234567890123456"
    assert kept.hours_per_week == 0.1 + 0.2


def test_colours_stay_in_the_order_that_the_maker_gave_them(book: Book) -> None:
    colours = dict(reversed(sample_yarn().colours.items()))
    save_workshop(book, sample_workshop(), now=NOW)
    save_workshop(book, sample_workshop(yarns=(sample_yarn(colours=colours),)), now=NOW)
    assert list(workshop_in(book).yarns[0].colours) == list(colours)


def test_a_save_that_changes_something_is_a_further_version(book: Book) -> None:
    first = save_workshop(book, sample_workshop(), now=NOW)
    second = save_workshop(book, sample_workshop(hours_per_week=9), now=later(days=2))
    assert (first.number, second.number) == (1, 2)
    assert workshop_versions(book) == (second, first)
    assert workshop_version(book, 1).workshop == sample_workshop()


def test_a_save_that_changes_nothing_is_no_version(book: Book) -> None:
    first = save_workshop(book, sample_workshop(), now=NOW)
    assert save_workshop(book, sample_workshop(), now=later(days=1)) == first
    assert len(workshop_versions(book)) == 1


def test_the_workshop_can_be_seen_as_it_was_on_a_day(book: Book) -> None:
    save_workshop(book, sample_workshop(), now=NOW)
    save_workshop(book, sample_workshop(hours_per_week=9), now=later(days=2))
    assert workshop_on(book, later(days=-1)) is None
    for days, hours in ((0, 12), (1, 12), (2, 9), (300, 9)):
        kept = workshop_on(book, later(days=days))
        assert kept is not None
        assert kept.workshop.hours_per_week == hours


def test_an_earlier_version_that_is_brought_back_is_a_new_one_that_says_so(book: Book) -> None:
    save_workshop(book, sample_workshop(), now=NOW)
    save_workshop(book, with_stock(), now=later(days=1))
    again = bring_back(book, 1, now=later(days=2))
    assert (again.number, again.brought_back) == (3, 1)
    assert workshop_in(book) == sample_workshop()
    assert len(workshop_versions(book)) == 3


def test_a_version_that_there_is_not_is_told(book: Book) -> None:
    for ask in (lambda: workshop_version(book, 1), lambda: bring_back(book, 1, now=NOW)):
        assert refused(ask) == MistakeCode.VERSION_MISSING


def test_a_change_of_a_version_that_is_no_longer_the_latest_undoes_nothing(book: Book) -> None:
    save_workshop(book, sample_workshop(), now=NOW)
    save_workshop(book, sample_workshop(hours_per_week=9), now=NOW, based_on=1)
    stale = sample_workshop(name="Otter Moor")
    ask: Any = lambda: save_workshop(book, stale, now=NOW, based_on=1)  # noqa: E731
    assert refused(ask) == MistakeCode.WORKSHOP_OVERTAKEN
    assert workshop_in(book).hours_per_week == 9
    save_workshop(book, stale, now=NOW, based_on=2)
    assert workshop_in(book) == stale


def test_a_book_that_is_opened_again_has_what_was_saved(address: str) -> None:
    with open_book(address, now=NOW) as first:
        save_workshop(first, sample_workshop(), now=NOW)
    with open_book(address, now=later(days=1)) as again:
        assert workshop_in(again) == sample_workshop()
        assert [version.saved_at for version in workshop_versions(again)] == [NOW]


def test_a_lot_keeps_its_number_however_often_the_workshop_is_saved(book: Book) -> None:
    oat, teal = Stock(colour="oat", weight_g=60, lot="771"), Stock(colour="teal", weight_g=88)
    save_workshop(book, with_stock(oat), now=NOW)
    (first,) = lots_on_shelf(book)
    assert first == Lot(id=first.id, yarn=WOOL, colour="oat", lot="771", grams=60)
    save_workshop(book, with_stock(teal, replace(oat, weight_g=45)), now=NOW)
    assert [(lot.colour, lot.grams) for lot in lots_on_shelf(book)] == [("teal", 88), ("oat", 45)]
    assert lots_on_shelf(book)[1].id == first.id


def test_a_lot_that_is_weighed_is_in_the_workshop_of_now_and_in_no_earlier_version(
    book: Book,
) -> None:
    save_workshop(book, sample_workshop(), now=NOW)
    (lot,) = lots_on_shelf(book)
    weigh_lot(book, lot.id, 22.5)
    assert workshop_in(book).yarns[0].stock[0].weight_g == 22.5
    assert workshop_version(book, 1).workshop.yarns[0].stock[0].weight_g == 60
    assert save_workshop(book, workshop_in(book), now=NOW).number == 1


def test_two_part_balls_of_one_lot_are_two_lots(book: Book) -> None:
    ball = Stock(colour="oat", weight_g=60, lot="771")
    save_workshop(book, with_stock(ball, ball), now=NOW)
    before = {lot.id for lot in lots_on_shelf(book)}
    save_workshop(book, with_stock(ball, replace(ball, weight_g=10)), now=NOW)
    assert {lot.id for lot in lots_on_shelf(book)} == before
    assert len(before) == 2
    assert [stock.weight_g for stock in workshop_in(book).yarns[0].stock] == [60, 10]


def test_a_lot_that_is_gone_or_weighs_nothing_is_told(book: Book) -> None:
    assert refused(lambda: weigh_lot(book, 7, 20)) == MistakeCode.LOT_MISSING
    assert refused(lambda: weigh_lot(book, 7, 0)) == MistakeCode.NOT_ABOVE
