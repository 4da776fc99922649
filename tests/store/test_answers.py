"""A quote is accepted or declined, and the order's log says so."""

from __future__ import annotations

from datetime import date, timedelta
from functools import partial

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.making.log_lines import Moved
from quoting.core.order.stage import Stage
from quoting.store.answers import DECLINED, accept_quote, decline_quote
from quoting.store.book import Book
from quoting.store.log import log_of
from quoting.store.orders import bring_back_order, call_off, change_stage, create_order, kept_order
from quoting.store.quotes import agreed_quote, quote_lines
from quoting.store.workshops import save_workshop
from tests.examples import sample_workshop
from tests.store.contents import whole
from tests.store.given import DAY, give, put_at
from tests.store.moments import DESK, NOW, later
from tests.store.refusals import refused


@pytest.fixture
def order_id(book: Book) -> int:
    """Return an order in a book with a workshop."""
    save_workshop(book, sample_workshop(), now=NOW)
    return create_order(book, whole(), now=NOW, writer=DESK).id


def moves(book: Book, order_id: int) -> list[Moved]:
    return [entry.line for entry in log_of(book, order_id) if isinstance(entry.line, Moved)]


def stage_of(book: Book, order_id: int) -> Stage:
    return kept_order(book, order_id).stage


def ended(day: date) -> date:
    return day + timedelta(days=1)


def test_to_give_a_quote_is_to_have_quoted_the_order(book: Book, order_id: int) -> None:
    give(book, order_id)
    assert stage_of(book, order_id) is Stage.QUOTED
    assert moves(book, order_id) == [
        Moved(stage=Stage.QUOTED, before=Stage.ASKED, quote="2026-001")
    ]


def test_a_further_version_is_written_down_and_moves_nothing(book: Book, order_id: int) -> None:
    put_at(book, order_id, Stage.ON_THE_HOOK)
    give(book, order_id, title="Cot blanket with a border")
    assert moves(book, order_id)[-1] == Moved(
        stage=Stage.ON_THE_HOOK, before=Stage.ON_THE_HOOK, quote="2026-001/2"
    )


def test_what_is_given_again_after_it_was_taken_back_is_the_same_quote(
    book: Book, order_id: int
) -> None:
    first = give(book, order_id)
    change_stage(book, order_id, Stage.ASKED, now=NOW)
    assert give(book, order_id) == first
    assert stage_of(book, order_id) is Stage.QUOTED


@pytest.mark.parametrize("stage", [Stage.FINISHED, Stage.HANDED_OVER, Stage.CALLED_OFF])
def test_no_quote_is_given_of_an_order_without_work_to_do(
    book: Book, order_id: int, stage: Stage
) -> None:
    put_at(book, order_id, stage)
    late = partial(give, book, order_id, title="Another")
    assert refused(late) == MistakeCode.STAGE_CLOSED


def test_an_accepted_quote_is_what_the_order_is_agreed_by(book: Book, order_id: int) -> None:
    quote = give(book, order_id)
    accept_quote(book, quote.number, day=quote.frozen.valid_until, now=later(days=2))
    assert stage_of(book, order_id) is Stage.AGREED
    assert agreed_quote(book, order_id) == quote
    assert moves(book, order_id)[-1] == Moved(
        stage=Stage.AGREED, before=Stage.QUOTED, quote="2026-001"
    )


def test_a_quote_that_is_accepted_twice_is_accepted_once(book: Book, order_id: int) -> None:
    quote = give(book, order_id)
    for _ in range(2):
        accept_quote(book, quote.number, day=DAY, now=NOW)
    assert len(moves(book, order_id)) == 2


def test_a_quote_that_has_ended_is_accepted_only_all_the_same(book: Book, order_id: int) -> None:
    quote = give(book, order_id)
    late = partial(
        accept_quote, book, quote.number, day=ended(quote.frozen.valid_until), now=later(days=40)
    )
    assert refused(late) == MistakeCode.QUOTE_ENDED
    assert agreed_quote(book, order_id) is None
    late(although_ended=True)
    assert agreed_quote(book, order_id) == quote


def test_another_version_takes_the_place_of_the_one_agreed_by(book: Book, order_id: int) -> None:
    put_at(book, order_id, Stage.ON_THE_HOOK)
    second = give(book, order_id, title="Cot blanket with a border")
    accept_quote(book, second.number, day=DAY, now=NOW)
    assert agreed_quote(book, order_id) == second
    assert [(str(line.number), line.is_agreed) for line in quote_lines(book, order_id)] == [
        ("2026-001/2", True),
        ("2026-001", False),
    ]
    assert moves(book, order_id)[-1] == Moved(
        stage=Stage.ON_THE_HOOK,
        before=Stage.ON_THE_HOOK,
        quote="2026-001/2",
        why="in the place of 2026-001",
    )


def test_a_declined_quote_calls_the_order_off_and_it_comes_back_quoted(
    book: Book, order_id: int
) -> None:
    quote = give(book, order_id)
    for _ in range(2):
        decline_quote(book, quote.number, now=NOW)
    assert stage_of(book, order_id) is Stage.CALLED_OFF
    assert moves(book, order_id)[1:] == [
        Moved(stage=Stage.CALLED_OFF, before=Stage.QUOTED, quote="2026-001", why=DECLINED)
    ]
    assert bring_back_order(book, order_id, now=NOW).stage is Stage.QUOTED


def test_what_was_agreed_is_not_declined_any_more(book: Book, order_id: int) -> None:
    put_at(book, order_id, Stage.AGREED)
    number = quote_lines(book, order_id)[0].number
    assert refused(lambda: decline_quote(book, number, now=NOW)) == MistakeCode.STAGE_SKIPPED


def test_an_order_that_is_put_back_to_quoted_is_agreed_no_longer(book: Book, order_id: int) -> None:
    put_at(book, order_id, Stage.AGREED)
    change_stage(book, order_id, Stage.QUOTED, now=NOW)
    assert agreed_quote(book, order_id) is None


def test_an_agreement_outlasts_a_call_off(book: Book, order_id: int) -> None:
    put_at(book, order_id, Stage.AGREED)
    call_off(book, order_id, now=NOW)
    bring_back_order(book, order_id, now=NOW)
    assert agreed_quote(book, order_id) is not None
    assert stage_of(book, order_id) is Stage.AGREED


def test_every_change_of_stage_is_in_the_log(book: Book, order_id: int) -> None:
    put_at(book, order_id, Stage.HANDED_OVER)
    change_stage(book, order_id, Stage.FINISHED, now=NOW)
    call_off(book, order_id, now=NOW)
    bring_back_order(book, order_id, now=NOW)
    stages = [Stage.ASKED, *(move.stage for move in moves(book, order_id))]
    assert stages == [
        *list(Stage)[:-1],
        Stage.FINISHED,
        Stage.CALLED_OFF,
        Stage.FINISHED,
    ]
    assert [move.before for move in moves(book, order_id)] == stages[:-1]


def test_a_stage_that_is_skipped_is_refused_and_leaves_no_line(book: Book, order_id: int) -> None:
    skip = partial(change_stage, book, order_id, Stage.FINISHED, now=NOW)
    assert refused(skip) == MistakeCode.STAGE_TAKES_QUOTE
    assert moves(book, order_id) == []
