"""Euro reference rates are fetched only when asked, and never waited for past the deadline."""

from __future__ import annotations

import gzip
import socket
from collections.abc import Iterator
from contextlib import contextmanager
from threading import Event, Thread

import pytest
import requests
import responses

from quoting.core.workshop.euro_rates import EuroRates
from quoting.rates import ADDRESS, MOST_BYTES, fetch_rates
from tests.rates.bank_answers import DAY, RATES, document, why


def test_the_rates_and_their_day_are_read_from_the_answer(bank: responses.RequestsMock) -> None:
    bank.get(ADDRESS, body=document())
    assert fetch_rates() == EuroRates(day=DAY, rates=RATES)


def test_one_fetch_asks_the_bank_once(bank: responses.RequestsMock) -> None:
    bank.get(ADDRESS, body=document())
    fetch_rates()
    assert len(bank.calls) == 1


@pytest.mark.parametrize("status", [204, 304, 404, 500, 503])
def test_an_answer_that_is_not_ok_is_refused(bank: responses.RequestsMock, status: int) -> None:
    bank.get(ADDRESS, body=document(), status=status)
    mistake = why(fetch_rates)
    assert (mistake.code, mistake.facts["read"]) == ("bad-status", status)


ELSEWHERE = ["http://127.0.0.1:1/", "file:///etc/passwd", "", "//", "/"]


@pytest.mark.parametrize("status", [301, 302, 303, 307, 308])
@pytest.mark.parametrize("to", ELSEWHERE)
def test_nobody_is_followed_elsewhere(bank: responses.RequestsMock, status: int, to: str) -> None:
    bank.get(ADDRESS, status=status, headers={"Location": to})
    mistake = why(fetch_rates)
    assert (mistake.code, mistake.facts["read"]) == ("bad-status", status)
    assert len(bank.calls) == 1


@pytest.mark.parametrize("to", ["http://[::1", "http://a:b:c/", "http://\udcff/", "http://*/"])
def test_a_redirection_to_no_address_at_all_is_refused_in_words(
    bank: responses.RequestsMock, to: str
) -> None:
    bank.get(ADDRESS, status=301, headers={"Location": to})
    assert why(fetch_rates).code in {"bad-status", "no-connection"}
    assert len(bank.calls) <= 1


@pytest.mark.parametrize("name", ["REQUESTS_CA_BUNDLE", "CURL_CA_BUNDLE"])
def test_certificates_that_are_not_where_they_are_said_to_be_are_no_connection(
    monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    monkeypatch.setenv(name, "/nowhere/certificates.pem")
    assert why(lambda: fetch_rates("https://127.0.0.1:9/")).code == "no-connection"


@pytest.mark.parametrize("proxy", ["http://[::1", "odd://x", "http://127.0.0.1:99999", "%"])
def test_a_proxy_that_is_none_is_no_connection(monkeypatch: pytest.MonkeyPatch, proxy: str) -> None:
    monkeypatch.setenv("HTTPS_PROXY", proxy)
    monkeypatch.setenv("https_proxy", proxy)
    assert why(lambda: fetch_rates("https://bank.invalid/")).code == "no-connection"


@pytest.mark.parametrize("fault", [OSError("x"), ValueError("x"), UnicodeError("x")], ids=repr)
def test_every_other_failure_is_one_sentence_too(
    bank: responses.RequestsMock, fault: Exception
) -> None:
    bank.get(ADDRESS, body=fault)
    assert why(fetch_rates).code == "no-connection"


def test_with_the_network_cut_fetching_says_so(bank: responses.RequestsMock) -> None:
    bank.get(ADDRESS, body=requests.ConnectionError("no route to host"))
    assert why(fetch_rates).code == "no-connection"


@pytest.mark.parametrize(
    "answer",
    [requests.ConnectTimeout("slow"), requests.ReadTimeout("slow")],
    ids=["to connect", "to answer"],
)
def test_a_server_too_slow_is_refused(
    bank: responses.RequestsMock, answer: requests.Timeout
) -> None:
    bank.get(ADDRESS, body=answer)
    assert why(fetch_rates).code == "too-slow"


def test_an_answer_of_the_most_bytes_is_read_and_one_byte_more_is_refused(
    bank: responses.RequestsMock,
) -> None:
    plain = document()
    bank.get(ADDRESS, body=plain + b" " * (MOST_BYTES - len(plain)))
    assert fetch_rates().day == DAY
    bank.reset()
    bank.get(ADDRESS, body=plain + b" " * (MOST_BYTES - len(plain) + 1))
    mistake = why(fetch_rates)
    assert (mistake.code, mistake.facts["limit"]) == ("too-much", MOST_BYTES)


def test_a_small_answer_that_unpacks_to_a_huge_one_is_refused(
    bank: responses.RequestsMock,
) -> None:
    packed = gzip.compress(document() + b" " * 5_000_000)
    assert len(packed) < MOST_BYTES
    bank.get(ADDRESS, body=packed, headers={"Content-Encoding": "gzip"})
    assert why(fetch_rates).code == "too-much"


def test_an_accident_of_another_kind_is_not_swallowed(bank: responses.RequestsMock) -> None:
    bank.get(ADDRESS, body=ZeroDivisionError("not the network's doing"))
    with pytest.raises(ZeroDivisionError):
        fetch_rates()


@contextmanager
def dribbling_server(head: bytes, drop: bytes) -> Iterator[str]:
    """Serve one caller on the loopback: `head` at once, then `drop` again and again for ever."""
    stop = Event()

    def serve(listener: socket.socket) -> None:
        caller, _ = listener.accept()
        with caller:
            try:
                caller.sendall(head)
                while not stop.wait(0.02):
                    caller.sendall(drop)
            except OSError:
                return

    with socket.create_server(("127.0.0.1", 0)) as listener:
        thread = Thread(target=serve, args=(listener,), daemon=True)
        thread.start()
        try:
            yield f"http://127.0.0.1:{listener.getsockname()[1]}/"
        finally:
            stop.set()
            thread.join(5)


STATUS = b"HTTP/1.1 200 OK\r\n"


@pytest.mark.parametrize(
    ("head", "drop"),
    [
        (b"", b"H"),
        (STATUS, b"X-More: 1\r\n"),
        (STATUS + b"X-Long: ", b"y"),
        (STATUS + b"Transfer-Encoding: chunked\r\n\r\n1;", b"z"),
        (STATUS + b"Transfer-Encoding: chunked\r\n\r\n", b"1\r\n \r\n"),
        (STATUS + b"Content-Length: 90000\r\n\r\n", b" "),
        (STATUS + b"Content-Length: 90000\r\n\r\n", b""),
    ],
    ids=["status", "headers", "one header", "chunk size", "chunks", "body", "silence"],
)
def test_a_server_that_dribbles_its_answer_is_left_at_the_deadline(
    head: bytes, drop: bytes
) -> None:
    with dribbling_server(head, drop) as address:
        mistake = why(lambda: fetch_rates(address, seconds=0.3))
    assert (mistake.code, mistake.facts["limit"]) == ("too-slow", 0.3)


def test_a_server_that_ends_in_the_middle_is_refused() -> None:
    half = document()[:200]
    head = STATUS + b"Content-Length: 90000\r\n\r\n" + half
    listener = socket.create_server(("127.0.0.1", 0))

    def serve() -> None:
        with listener, listener.accept()[0] as caller:
            caller.recv(4096)
            caller.sendall(head)

    thread = Thread(target=serve, daemon=True)
    thread.start()
    mistake = why(lambda: fetch_rates(f"http://127.0.0.1:{listener.getsockname()[1]}/"))
    thread.join(5)
    assert mistake.code == "no-connection"


def test_a_port_that_nobody_listens_on_is_no_connection() -> None:
    with socket.create_server(("127.0.0.1", 0)) as listener:
        port = listener.getsockname()[1]
    assert why(lambda: fetch_rates(f"http://127.0.0.1:{port}/")).code == "no-connection"
