"""What a buyer answers to a quote, and the stages that an order is put to by a word."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from quoting.core.making.log_lines import Moved
from quoting.core.order.stage import Stage
from quoting.store.log import log_of
from quoting.store.orders import kept_order
from quoting.store.quotes import agreed_quote
from tests.examples import TODAY, sample_workshop
from tests.store.given import put_at
from tests.web.book_pages import BookMaker, maker_with_book

SIZE = {"blanket__width": "80 cm", "blanket__height": "100 cm"}
FIRST = "/quotes/2026-001"
LONG_AFTER = date(2027, 3, 1)


class Calendar:
    """A day that a test turns over."""

    def __init__(self) -> None:
        self.day = TODAY

    def __call__(self) -> date:
        """Return the day."""
        return self.day


@pytest.fixture
def calendar() -> Calendar:
    return Calendar()


@pytest.fixture
def maker(tmp_path: Path, calendar: Calendar) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book, by a calendar of the test."""
    with maker_with_book(tmp_path / "book.db", sample_workshop(), today=calendar) as maker:
        yield maker


@pytest.fixture
def order(maker: BookMaker) -> str:
    """Return the address of an order that was quoted."""
    address = maker.begin(**SIZE)
    maker.give(address)
    return address


def id_of(address: str) -> int:
    return int(address.rsplit("/", 1)[1])


def stage_of(maker: BookMaker, address: str) -> Stage:
    return kept_order(maker.book, id_of(address)).stage


def text_of(maker: BookMaker, address: str) -> str:
    return " ".join(maker.open(address).with_id("main").text.split())


def offered(maker: BookMaker, address: str) -> list[str]:
    """Return the stages that a worktable offers, in their order."""
    buttons = maker.open(address).root.all(lambda node: node.attributes.get("name") == "stage")
    return [button.attributes["value"] or "" for button in buttons]


# -- answers -------------------------------------------------------------------------------------


def test_an_accepted_quote_agrees_the_order(maker: BookMaker, order: str) -> None:
    assert maker.press(f"{FIRST}/accept", FIRST).location == FIRST
    said = text_of(maker, FIRST)
    assert "The order is agreed." in said
    assert "How it stands accepted" in said
    assert stage_of(maker, order) is Stage.AGREED
    agreed = agreed_quote(maker.book, id_of(order))
    assert agreed is not None
    assert str(agreed.number) == "2026-001"


def test_a_quote_that_has_ended_is_accepted_when_it_is_said_once_more(
    maker: BookMaker, order: str, calendar: Calendar
) -> None:
    calendar.day = LONG_AFTER
    assert "How it stands ended on 16 December 2026" in text_of(maker, FIRST)
    asked = maker.press(f"{FIRST}/accept", FIRST)
    assert asked.status_code == 422
    assert "The quote ended on 16 December 2026." in asked.text
    assert "It ended on 16 December 2026: accept all the same" in asked.text
    assert stage_of(maker, order) is Stage.QUOTED
    assert maker.press(f"{FIRST}/accept", FIRST, although_ended="yes").location == FIRST
    assert stage_of(maker, order) is Stage.AGREED


def test_a_quote_holds_through_its_last_day(
    maker: BookMaker, order: str, calendar: Calendar
) -> None:
    calendar.day = date(2026, 12, 16)
    assert "valid until 16 December 2026" in text_of(maker, FIRST)
    maker.press(f"{FIRST}/accept", FIRST)
    assert stage_of(maker, order) is Stage.AGREED


def test_a_quote_that_ended_can_be_given_anew_with_days_of_its_own(
    maker: BookMaker, order: str, calendar: Calendar
) -> None:
    calendar.day = LONG_AFTER
    assert "Give version 2" in text_of(maker, FIRST)
    maker.give(order)
    said = text_of(maker, f"{FIRST}/2")
    assert "valid until 22 March 2027" in said
    assert "2026-001 25 November 2026 ended on 16 December 2026" in said


def test_a_declined_quote_calls_the_order_off_and_it_can_come_back(
    maker: BookMaker, order: str
) -> None:
    maker.press(f"{FIRST}/decline", FIRST)
    assert stage_of(maker, order) is Stage.CALLED_OFF
    said = text_of(maker, FIRST)
    assert "This quote was declined." in said
    assert "Accepted" not in said
    maker.press(f"{order}/bring-back", FIRST)
    assert stage_of(maker, order) is Stage.QUOTED


def test_another_version_that_is_accepted_takes_the_place_of_the_first(
    maker: BookMaker, order: str
) -> None:
    maker.press(f"{FIRST}/accept", FIRST)
    maker.give(order, blanket__width="90 cm")
    assert "this one would take its place" in text_of(maker, f"{FIRST}/2")
    maker.press(f"{FIRST}/2/accept", f"{FIRST}/2")
    assert "How it stands accepted" in text_of(maker, f"{FIRST}/2")
    lines = [entry.line for entry in log_of(maker.book, id_of(order))]
    assert lines[-1] == Moved(
        stage=Stage.AGREED,
        before=Stage.AGREED,
        quote="2026-001/2",
        why="in the place of 2026-001",
    )


def test_an_answer_that_comes_too_late_is_told_with_the_way_on(
    maker: BookMaker, order: str
) -> None:
    put_at(maker.book, id_of(order), Stage.FINISHED)
    for deed in ("accept", "decline"):
        late = maker.press(f"{FIRST}/{deed}", FIRST)
        assert late.status_code == 422
        assert f'href="{order}"' in late.text


def test_an_answer_needs_the_token_of_its_page(maker: BookMaker, order: str) -> None:
    assert maker.client.post(f"{FIRST}/accept").status_code == 409
    assert stage_of(maker, order) is Stage.QUOTED


# -- stages --------------------------------------------------------------------------------------


def test_a_worktable_offers_the_steps_that_are_allowed_and_no_others(maker: BookMaker) -> None:
    steps = {
        Stage.ASKED: ["called-off"],
        Stage.QUOTED: ["asked", "called-off"],
        Stage.AGREED: ["on-the-hook", "quoted", "called-off"],
        Stage.ON_THE_HOOK: ["finished", "agreed", "called-off"],
        Stage.FINISHED: ["handed-over", "on-the-hook", "called-off"],
        Stage.HANDED_OVER: ["finished", "called-off"],
        Stage.CALLED_OFF: [],
    }
    for stage, values in steps.items():
        address = maker.begin(**SIZE)
        put_at(maker.book, id_of(address), stage)
        assert offered(maker, address) == values


def test_an_order_goes_to_the_hook_and_is_handed_over_and_back_by_one(
    maker: BookMaker, order: str
) -> None:
    maker.press(f"{FIRST}/accept", FIRST)
    for stage in ("on-the-hook", "finished", "handed-over", "finished"):
        assert maker.press(f"{order}/stage", order, stage=stage).location == order
        assert stage_of(maker, order).value == stage


@pytest.mark.parametrize("stage", ["quoted", "agreed", "finished"])
def test_an_order_that_was_not_quoted_is_told_to_be_given_a_quote_first(
    maker: BookMaker, stage: str
) -> None:
    address = maker.begin(**SIZE)
    skipped = maker.press(f"{address}/stage", address, stage=stage)
    assert skipped.status_code == 422
    assert "Give a quote first" in skipped.text
    assert f'href="{address}"' in skipped.text
    assert stage_of(maker, address) is Stage.ASKED


def test_an_order_that_was_quoted_is_sent_to_its_quote_to_be_agreed(
    maker: BookMaker, order: str
) -> None:
    skipped = maker.press(f"{order}/stage", order, stage="agreed")
    assert skipped.status_code == 422
    assert f'<a href="{FIRST}">To quote 2026-001</a>' in skipped.text


def test_a_step_that_is_skipped_is_told(maker: BookMaker, order: str) -> None:
    maker.press(f"{FIRST}/accept", FIRST)
    skipped = maker.press(f"{order}/stage", order, stage="handed-over")
    assert skipped.status_code == 422
    assert "one stage at a time" in skipped.text
