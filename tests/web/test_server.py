"""The server itself: what it takes in, and what it says to what is no request."""

from __future__ import annotations

import socket
from collections.abc import Iterator
from threading import Thread

import pytest
from waitress import wasyncore  # type: ignore[import-untyped]

from quoting.web import create_app
from quoting.web.address import LOOPBACK
from quoting.web.security import HEADERS
from quoting.web.server import MOST_BODY, open_server
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_order, sample_workshop


@pytest.fixture(scope="module")
def port() -> Iterator[int]:
    """Serve the pages on a free port."""
    shop = open_shop(sample_workshop(), today=lambda: TODAY).starting_with(sample_order())
    server = open_server(create_app(shop), 0)
    running = Thread(target=server.run, daemon=True)
    running.start()
    yield server.effective_port
    # In the server's own thread: it must not be waiting at a socket that is closed under it.
    server.trigger.pull_trigger(lambda: wasyncore.close_all(server._map))
    running.join()
    server.task_dispatcher.shutdown()


def asked(port: int, request: str) -> str:
    """Return everything that comes back to some bytes."""
    with socket.create_connection((LOOPBACK, port), timeout=30) as connection:
        connection.sendall(request.encode())
        answer = bytearray()
        while some := connection.recv(65536):
            answer += some
    return answer.decode()


def post(length: int) -> str:
    return f"POST /quote HTTP/1.1\r\nHost: localhost\r\nContent-Length: {length}\r\n\r\n"


def test_a_body_too_large_is_refused_before_any_of_it_comes(port: int) -> None:
    assert asked(port, post(MOST_BODY)).startswith("HTTP/1.1 413 ")


@pytest.mark.parametrize(
    "request_",
    [
        post(200_000_000),
        "GET /\x01 HTTP/1.1\r\nbad header\r\n\r\n",
        "POST / HTTP/1.1\r\nTransfer-Encoding: odd\r\n\r\n",
    ],
    ids=["a body", "a header", "an encoding"],
)
def test_the_servers_own_refusals_carry_the_policy_too(port: int, request_: str) -> None:
    head = asked(port, request_).partition("\r\n\r\n")[0]
    assert int(head.split()[1]) >= 400
    for name, value in HEADERS.items():
        assert f"{name}: {value}" in head


def test_its_cookie_bears_its_port(port: int) -> None:
    page = asked(port, "GET / HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n")
    assert f"Set-Cookie: quoting-{port}=" in page
