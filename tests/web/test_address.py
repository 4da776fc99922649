"""Where the pages answer: at the names they were started with, whatever a request claims."""

from __future__ import annotations

import socket
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from threading import Thread

import pytest
from flask import Response, request
from waitress import wasyncore  # type: ignore[import-untyped]

from quoting.web import create_app
from quoting.web.address import AT_HOME, Address
from quoting.web.kept import KeptShop
from quoting.web.server import open_server
from tests.examples import TODAY
from tests.web.door_pages import RIGHT, maker_at_the_door

SECOND = Address(listens_at="127.0.0.2", names=frozenset({"127.0.0.2"}), shown="127.0.0.2")
HOUSE = Address(listens_at="192.168.1.20", names=frozenset({"192.168.1.20"}), shown="192.168.1.20")
EVERYWHERE = Address(
    listens_at="0.0.0.0", names=AT_HOME.names | {"loft", "loft.local"}, any_number=True
)
BEHIND = Address(names=frozenset({"blankets.example"}), shown="blankets.example", behind_tls=True)


@pytest.mark.parametrize(
    ("address", "host", "answers"),
    [
        (AT_HOME, "localhost:8777", True),
        (AT_HOME, "[::1]:8777", True),
        (AT_HOME, "192.168.1.20:8777", False),
        (HOUSE, "192.168.1.20:8777", True),
        (HOUSE, "192.168.1.20", True),
        (HOUSE, "192.168.1.21:8777", False),
        (HOUSE, "localhost:8777", False),
        (HOUSE, "evil.example:8777", False),
        (HOUSE, "192.168.1.20.evil.example", False),
        (EVERYWHERE, "192.168.1.20:8777", True),
        (EVERYWHERE, "[fe80::1]:8777", True),
        (EVERYWHERE, "LOFT.local:8777", True),
        (EVERYWHERE, "evil.example", False),
        (EVERYWHERE, "", False),
        (EVERYWHERE, "127.1", False),
        (BEHIND, "blankets.example", True),
        (BEHIND, "localhost:8777", False),
    ],
)
def test_each_answers_to_its_own_names(address: Address, host: str, answers: bool) -> None:  # noqa: FBT001 - a column of the table above
    assert address.answers_to(host) is answers


@pytest.mark.parametrize(
    ("address", "beyond"),
    [(AT_HOME, False), (SECOND, False), (HOUSE, True), (EVERYWHERE, True), (BEHIND, True)],
)
def test_what_is_not_on_the_loopback_is_beyond_this_computer(
    address: Address,
    beyond: bool,  # noqa: FBT001 - a column of the table above
) -> None:
    assert address.is_beyond is beyond


def test_the_address_to_open_has_the_port_unless_a_proxy_has_it() -> None:
    urls = [address.url(8123) for address in (AT_HOME, HOUSE, EVERYWHERE, BEHIND)]
    assert urls == [
        "http://127.0.0.1:8123/",
        "http://192.168.1.20:8123/",
        "http://127.0.0.1:8123/",
        "https://blankets.example/",
    ]


@contextmanager
def served(file: Path, address: Address) -> Iterator[int]:
    """Serve a book with a passphrase, and yield the port."""
    with maker_at_the_door(file) as maker:
        shop = KeptShop(book=maker.book, now=maker.clock, today=lambda: TODAY)
        app = create_app(shop, address)

        @app.after_request
        def seen(response: Response) -> Response:
            response.headers["Seen"] = f"{request.remote_addr} {request.scheme} {request.host}"
            return response

        server = open_server(app, 0)
        running = Thread(target=server.run, daemon=True)
        running.start()
        try:
            yield server.effective_port
        finally:
            # In the server's own thread: it must not wait at a socket that is closed under it.
            server.trigger.pull_trigger(lambda: wasyncore.close_all(server._map))
            running.join()
            server.task_dispatcher.shutdown()


def said_to(at: str, port: int, path: str, *headers: str) -> str:
    """Return everything that comes back to a request."""
    lines = (f"GET {path} HTTP/1.1", *headers, "Connection: close")
    with socket.create_connection((at, port), timeout=30) as connection:
        connection.sendall("".join(f"{line}\r\n" for line in (*lines, "")).encode())
        answer = bytearray()
        while some := connection.recv(65536):
            answer += some
    return answer.decode()


def test_a_server_at_another_address_answers_there_by_its_name_and_asks_for_the_passphrase(
    tmp_path: Path,
) -> None:
    with served(tmp_path / "book.db", SECOND) as port:
        host = f"Host: 127.0.0.2:{port}"
        door = said_to("127.0.0.2", port, "/door", host)
        assert "303" in said_to("127.0.0.2", port, "/orders", host).splitlines()[0]
        assert "Sign in" in door
        assert f"Set-Cookie: quoting-{port}=" in door
        foreign = said_to("127.0.0.2", port, "/door", "Host: evil.example")
        assert "400" in foreign.splitlines()[0]
        assert "only to the one it was started with" in foreign
        with pytest.raises(OSError, match=r".*"):
            said_to("127.0.0.1", port, "/door", host)
        assert RIGHT not in door


def test_what_a_proxy_says_of_who_asks_is_not_believed(tmp_path: Path) -> None:
    said = (
        "X-Forwarded-For: 203.0.113.9",
        "X-Forwarded-Proto: https",
        "X-Forwarded-Host: evil.example",
        "X-Forwarded-Port: 1",
        "Forwarded: for=203.0.113.9;host=evil.example;proto=https",
    )
    with served(tmp_path / "book.db", SECOND) as port:
        host = f"127.0.0.2:{port}"
        answer = said_to("127.0.0.2", port, "/door", f"Host: {host}", *said)
        assert f"Seen: 127.0.0.1 http {host}\r\n" in answer
        foreign = said_to(
            "127.0.0.2", port, "/door", "Host: evil.example", f"X-Forwarded-Host: {host}"
        )
        assert "400" in foreign.splitlines()[0]


def test_behind_a_proxy_the_pages_know_that_tls_is_spoken(tmp_path: Path) -> None:
    with served(tmp_path / "book.db", BEHIND) as port:
        answer = said_to("127.0.0.1", port, "/door", "Host: blankets.example")
        assert "Seen: 127.0.0.1 https blankets.example\r\n" in answer
        assert "; Secure;" in next(line for line in answer.splitlines() if "Set-Cookie" in line)
