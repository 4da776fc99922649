"""Orders are kept as they were typed, mistakes and all; a later save undoes no earlier one."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import func, update

from quoting.core.ground.codes import MistakeCode
from quoting.core.order.stage import Stage
from quoting.schema.order_shape import ORDER
from quoting.store.book import Book, open_book
from quoting.store.order_content import KeptOrder, OrderContent, Overtaken
from quoting.store.orders import (
    asides_of,
    bring_back_order,
    call_off,
    change_stage,
    copy_order,
    create_order,
    drop_aside,
    kept_order,
    save_order,
)
from quoting.store.tables import ORDER_TEXTS
from tests.schema.values import of_shape
from tests.store.contents import FIGURES, TYPED, half, whole
from tests.store.moments import DESK, NOW, TABLET, later
from tests.store.refusals import refused


def saved(book: Book, order_id: int, content: OrderContent, **how: Any) -> KeptOrder:
    """Return an order as a save that overtakes nobody left it."""
    done = save_order(book, order_id, content, **{"writer": DESK, "now": NOW} | how)
    assert isinstance(done, KeptOrder)
    return done


def overtaken(book: Book, order_id: int, content: OrderContent, **how: Any) -> Overtaken:
    """Return what is told to a save that comes after somebody else's."""
    done = save_order(book, order_id, content, **{"writer": TABLET, "now": NOW} | how)
    assert isinstance(done, Overtaken)
    return done


def test_an_order_comes_back_as_typed_and_as_it_was_read(book: Book) -> None:
    order = create_order(book, whole(), now=NOW, writer=DESK)
    assert kept_order(book, order.id) == order
    assert order.content == whole()
    assert list(order.content.typed) == list(TYPED)
    assert (order.stage, order.revision, order.created_at) == (Stage.ASKED, 1, NOW)


def test_a_half_filled_form_is_kept_too(book: Book) -> None:
    order = create_order(book, OrderContent(typed={"blanket.width": ("eighty",)}), now=NOW)
    assert order.content.typed == {"blanket.width": ("eighty",)}
    assert (order.content.order, order.content.figures) == (None, None)


@given(data=st.data())
@settings(max_examples=15, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_order_comes_back_the_same(book: Book, data: st.DataObject) -> None:
    order = data.draw(of_shape(ORDER))
    assert create_order(book, whole(order=order), now=NOW).content.order == order


@given(
    typed=st.dictionaries(
        st.text(max_size=20), st.lists(st.text(max_size=40), max_size=3).map(tuple), max_size=4
    )
)
@settings(max_examples=30, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_whatever_was_typed_comes_back(book: Book, typed: dict[str, tuple[str, ...]]) -> None:
    title = next((text for texts in typed.values() for text in texts), "")
    kept = create_order(book, OrderContent(typed=typed, title=title), now=NOW)
    assert kept_order(book, kept.id).content.typed == typed


def test_a_sign_that_no_database_takes_is_kept_where_it_was_typed(book: Book) -> None:
    typed = {"order.title": ("a\0b\ud800",)}
    order = create_order(book, OrderContent(typed=typed, title="a\0b\ud800"), now=NOW)
    assert order.content.typed == typed
    assert order.content.title == "a b"


@pytest.mark.parametrize("price", ["0.10", "123456789012345678.12", "1E+3", "-0.00", "14"])
def test_an_amount_keeps_every_digit(book: Book, price: str) -> None:
    figures = replace(FIGURES, price=Decimal(price), earned_per_hour=Decimal(price))
    kept = create_order(book, whole(figures=figures), now=NOW).content.figures
    assert kept is not None
    assert (str(kept.price), str(kept.earned_per_hour)) == (price, price)


def test_a_moment_is_kept_in_utc_to_the_microsecond(book: Book) -> None:
    moment = datetime.fromisoformat("2026-10-25T02:30:00.000001+02:00")
    order = create_order(book, half(), now=moment)
    assert order.created_at == moment
    assert order.created_at.tzinfo is UTC


def test_a_moment_without_a_zone_is_none(book: Book) -> None:
    with pytest.raises(Exception, match="zone"):
        create_order(book, half(), now=NOW.replace(tzinfo=None))


def test_each_save_is_the_next_revision(book: Book) -> None:
    order = create_order(book, half("A blan"), now=NOW, writer=DESK)
    again = saved(book, order.id, half("A blanket"), revision=1, now=later(minutes=1))
    assert (again.revision, again.content.title) == (2, "A blanket")
    assert (again.created_at, again.changed_at) == (NOW, later(minutes=1))


def test_what_is_saved_twice_alike_is_one_revision(book: Book) -> None:
    order = create_order(book, whole(), now=NOW, writer=DESK)
    assert saved(book, order.id, whole(), revision=1, writer=TABLET) == order


def test_an_order_that_is_no_longer_whole_has_no_figures_left(book: Book) -> None:
    order = create_order(book, whole(), now=NOW, writer=DESK)
    again = saved(book, order.id, half("Cot blanket"), revision=1)
    assert (again.content.order, again.content.figures) == (None, None)


def test_a_save_after_somebody_elses_is_told_and_neither_is_lost(book: Book) -> None:
    order = create_order(book, half("Blanket"), now=NOW, writer=DESK)
    saved(book, order.id, half("Cot blanket"), revision=1)
    told = overtaken(book, order.id, half("Pram blanket"), revision=1, now=later(minutes=3))
    assert told.kept == kept_order(book, order.id)
    assert told.kept.content.title == "Cot blanket"
    assert told.aside.typed == {"order.title": ("Pram blanket",)}
    assert asides_of(book, order.id) == (told.aside,)


def test_what_is_typed_on_is_set_aside_in_place_of_the_earlier(book: Book) -> None:
    order = create_order(book, half("Blanket"), now=NOW, writer=DESK)
    saved(book, order.id, half("Cot blanket"), revision=1)
    overtaken(book, order.id, half("Pram"), revision=1)
    last = overtaken(book, order.id, half("Pram blanket"), revision=1)
    third = overtaken(book, order.id, half("Rug"), revision=1, writer="phone", now=later(hours=1))
    assert asides_of(book, order.id) == (third.aside, last.aside)


def test_once_it_is_saved_over_the_latest_nothing_is_aside(book: Book) -> None:
    order = create_order(book, half("Blanket"), now=NOW, writer=DESK)
    saved(book, order.id, half("Cot blanket"), revision=1)
    told = overtaken(book, order.id, half("Pram blanket"), revision=1)
    saved(book, order.id, half("Pram blanket"), revision=told.kept.revision, writer=TABLET)
    assert kept_order(book, order.id).content.title == "Pram blanket"
    assert asides_of(book, order.id) == ()


def test_what_was_set_aside_can_be_thrown_away(book: Book) -> None:
    order = create_order(book, half("Blanket"), now=NOW, writer=DESK)
    saved(book, order.id, half("Cot blanket"), revision=1)
    overtaken(book, order.id, half("Pram blanket"), revision=1)
    drop_aside(book, order.id, TABLET)
    assert asides_of(book, order.id) == ()


def test_a_page_whose_answer_was_lost_on_the_way_overtakes_only_itself(book: Book) -> None:
    order = create_order(book, half(), now=NOW, writer=TABLET)
    saved(book, order.id, half("Cot"), revision=1)
    assert saved(book, order.id, half("Cot blanket"), revision=1).revision == 3


def test_a_change_of_stage_is_no_change_of_what_was_typed(book: Book) -> None:
    order = create_order(book, half("Blanket"), now=NOW, writer=DESK, stage=Stage.AGREED)
    moved = change_stage(book, order.id, Stage.ON_THE_HOOK, now=later(hours=1))
    assert (moved.stage, moved.revision, moved.content) == (Stage.ON_THE_HOOK, 1, order.content)
    assert saved(book, order.id, half("Cot"), revision=1, writer=TABLET).stage is moved.stage


@pytest.mark.parametrize("stage", [stage for stage in Stage if stage is not Stage.CALLED_OFF])
def test_an_order_that_was_called_off_comes_back_to_its_stage(book: Book, stage: Stage) -> None:
    order = create_order(book, half(), now=NOW, stage=stage)
    assert call_off(book, order.id, now=NOW).stage_before is stage
    assert call_off(book, order.id, now=NOW).stage_before is stage
    again = bring_back_order(book, order.id, now=NOW)
    assert (again.stage, again.stage_before) == (stage, None)
    assert bring_back_order(book, order.id, now=NOW) == again


def test_a_copy_is_an_order_of_its_own(book: Book) -> None:
    first = create_order(book, whole(), now=NOW, stage=Stage.FINISHED)
    copy = copy_order(book, first.id, now=later(days=1))
    assert copy.id != first.id
    assert (copy.content, copy.stage, copy.created_at) == (whole(), Stage.ASKED, later(days=1))
    saved(book, copy.id, half("Another"), revision=1)
    assert kept_order(book, first.id) == first


def test_a_record_that_is_beyond_the_limits_of_today_leaves_what_was_typed(book: Book) -> None:
    order = create_order(book, whole(), now=NOW)
    with book.writing() as connection:
        connection.execute(
            update(ORDER_TEXTS).values(record=func.replace(ORDER_TEXTS.c.record, "80", "80000"))
        )
    kept = kept_order(book, order.id).content
    assert (kept.order, kept.typed, kept.figures) == (None, TYPED, FIGURES)


def test_an_order_that_there_is_not_is_told(book: Book) -> None:
    ways: list[Any] = [
        lambda: kept_order(book, 9),
        lambda: save_order(book, 9, half(), revision=1, writer=DESK, now=NOW),
        lambda: copy_order(book, 9, now=NOW),
        lambda: call_off(book, 9, now=NOW),
        lambda: bring_back_order(book, 9, now=NOW),
    ]
    assert {refused(way) for way in ways} == {MistakeCode.ORDER_MISSING}


def test_two_who_have_the_book_open_see_each_others_saves(address: str) -> None:
    with open_book(address, now=NOW) as one, open_book(address, now=NOW) as other:
        order = create_order(one, half("Blanket"), now=NOW, writer=DESK)
        saved(other, order.id, half("Cot blanket"), revision=1, writer=TABLET)
        assert kept_order(one, order.id).content.title == "Cot blanket"


def test_the_stages_that_may_still_need_work_are_open() -> None:
    assert [stage.value for stage in Stage if stage.is_open] == [
        "asked", "quoted", "agreed", "on-the-hook",
    ]  # fmt: skip
