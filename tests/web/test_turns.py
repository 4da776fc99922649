"""Large orders are worked out one at a time, and small ones never wait for them."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from threading import Thread

import pytest
from werkzeug.exceptions import TooManyRequests

from quoting.web import turns
from quoting.web.turns import MOST_WAITING, Turns
from tests.web.conftest import Maker
from tests.web.pages import Page


@contextmanager
def busy(maker: Maker) -> Iterator[Turns]:
    """Hold the turn, as an order does that is being worked out."""
    held: Turns = maker.client.application.extensions["turns"]
    held.take()
    yield held
    held.give_back()


def test_one_large_order_has_the_turn_and_the_next_gets_it_afterwards() -> None:
    taken = Turns()
    taken.take()
    order: list[str] = []

    def next_one() -> None:
        taken.take()
        order.append("next")
        taken.give_back()

    waiting = Thread(target=next_one)
    waiting.start()
    order.append("first")
    taken.give_back()
    waiting.join(10)
    assert order == ["first", "next"]


def test_only_so_many_wait_and_any_more_are_asked_to_come_again(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr(turns, "SECONDS", 5)
    taken = Turns()
    taken.take()
    waiting = [Thread(target=taken.take) for _ in range(MOST_WAITING)]
    for one in waiting:
        one.start()
    while taken._places.acquire(blocking=False):  # until all of them stand there
        taken._places.release()
    with pytest.raises(TooManyRequests):
        taken.take()
    for one in waiting:
        taken.give_back()
        one.join(0.01)
    for one in waiting:
        one.join(10)


def test_whoever_waits_too_long_is_asked_to_come_again(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(turns, "SECONDS", 0.01)
    taken = Turns()
    taken.take()
    for _ in range(MOST_WAITING + 1):  # nobody who went away keeps a place
        with pytest.raises(TooManyRequests):
            taken.take()


@pytest.mark.parametrize("address", ["/", "/answer", "/quote", "/order-file"])
def test_a_small_order_is_answered_while_a_large_one_is_worked_out(
    maker: Maker, address: str
) -> None:
    fields = maker.open().typed()
    with busy(maker):
        assert maker.client.post(address, data=fields).status_code == 200


@pytest.mark.parametrize(
    ("address", "typed"),
    [
        ("/quote", {"order.quantity": "300"}),
        ("/answer", {"order.quantity": "300"}),
        ("/calmer", {}),
        ("/near", {}),
        ("/workbook", {}),
    ],
)
def test_a_large_order_waits_and_is_told_so_in_words(
    maker: Maker, monkeypatch: pytest.MonkeyPatch, address: str, typed: dict[str, str]
) -> None:
    monkeypatch.setattr(turns, "SECONDS", 0.01)
    fields = maker.open().typed() | typed
    with busy(maker):
        reply = maker.client.post(address, data=fields)
    assert reply.status_code == 429
    assert reply.headers["Retry-After"]
    assert "large orders are being worked out" in Page(reply.text).headings[0]


def test_the_turn_is_given_back_with_the_answer_and_after_a_fault(
    maker: Maker, monkeypatch: pytest.MonkeyPatch
) -> None:
    fields = maker.open().typed() | {"order.quantity": "300"}
    assert maker.client.post("/quote", data=fields).status_code == 200

    def broken(*_: object, **__: object) -> None:
        raise ZeroDivisionError

    monkeypatch.setattr("quoting.web.orders.order_answer.quote_order", broken)
    assert maker.client.post("/quote", data=fields).status_code == 500
    with busy(maker):
        pass


def test_many_sizes_wait_and_few_do_not(maker: Maker, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(turns, "SECONDS", 0.01)
    few = maker.open("/sizes").typed()
    many = few | {f"own.{number}.size": f"{60 + number} x 100" for number in range(1, 40)}
    with busy(maker):
        assert maker.client.post("/sizes", data=few).status_code == 200
        assert maker.client.post("/sizes", data=many).status_code == 429
        assert maker.client.post("/sizes", data=few | {"budget": "300"}).status_code == 429
