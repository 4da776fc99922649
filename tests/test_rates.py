"""Euro reference rates: fetched only when asked, kept, and refused whenever anything is odd."""

from __future__ import annotations

import gzip
import json
import socket
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import date
from decimal import Decimal
from pathlib import Path
from threading import Event, Thread

import pytest
import requests
import responses
from hypothesis import given
from hypothesis import strategies as st

from quoting.core.errors import Mistake, Refused
from quoting.core.euro_rates import EuroRates
from quoting.rates import ADDRESS, MOST_BYTES, fetch_rates, keep_rates, kept_rates, read_rates

DAY = date(2017, 3, 8)
RATES = {"USD": Decimal("1.0556"), "JPY": Decimal("120.65"), "GBP": Decimal("0.86753")}
NAMESPACES = (
    'xmlns:gesmes="http://www.gesmes.org/xml/2002-08-01" '
    'xmlns="http://www.ecb.int/vocabulary/2002-08-01/eurofxref"'
)


def document(
    rates: dict[str, str] | None = None,
    *,
    day: str = "2017-03-08",
    before: str = "",
    more: str = "",
) -> bytes:
    """Return a document of the European Central Bank's form."""
    listed = rates if rates is not None else {code: str(rate) for code, rate in RATES.items()}
    cubes = "".join(f'<Cube currency="{code}" rate="{rate}"/>' for code, rate in listed.items())
    return (
        f'<?xml version="1.0" encoding="UTF-8"?>{before}<gesmes:Envelope {NAMESPACES}>'
        "<gesmes:subject>Reference rates</gesmes:subject>"
        f'<Cube><Cube time="{day}">{cubes}</Cube>{more}</Cube></gesmes:Envelope>'
    ).encode()


def why(call: Callable[[], object]) -> Mistake:
    """Return the one mistake that a call is refused for."""
    with pytest.raises(Refused) as caught:
        call()
    (mistake,) = caught.value.mistakes
    return mistake


@pytest.fixture
def bank() -> Iterator[responses.RequestsMock]:
    """Stand in for the network: only what a test adds is answered."""
    with responses.RequestsMock() as mock:
        yield mock


def test_the_rates_and_their_day_are_read_from_the_answer(bank: responses.RequestsMock) -> None:
    bank.get(ADDRESS, body=document())
    assert fetch_rates() == EuroRates(day=DAY, rates=RATES)


def test_one_fetch_asks_the_bank_once(bank: responses.RequestsMock) -> None:
    bank.get(ADDRESS, body=document())
    fetch_rates()
    assert len(bank.calls) == 1


def test_reading_kept_rates_asks_nobody(bank: responses.RequestsMock, tmp_path: Path) -> None:
    keep_rates(EuroRates(day=DAY, rates=RATES), tmp_path / "rates.json")
    assert kept_rates(tmp_path / "rates.json") is not None
    assert len(bank.calls) == 0


@pytest.mark.parametrize("status", [204, 304, 404, 500, 503])
def test_an_answer_that_is_not_ok_is_refused(bank: responses.RequestsMock, status: int) -> None:
    bank.get(ADDRESS, body=document(), status=status)
    mistake = why(fetch_rates)
    assert (mistake.code, mistake.facts["read"]) == ("bad-status", status)


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


ENTITIES = "".join(f'<!ENTITY e{n} "{f"&e{n - 1};" * 10}">' for n in range(1, 10))
BOMB = f'<!DOCTYPE Envelope [<!ENTITY e0 "0123456789">{ENTITIES}]>'


@pytest.mark.parametrize(
    "content",
    [
        document(before=BOMB, rates={"USD": "1.0556&e9;"}),
        document(before=BOMB),
        document(before='<!DOCTYPE Envelope [<!ENTITY rate "1.0556">]>', rates={"USD": "&rate;"}),
        document(before='<!DOCTYPE Envelope SYSTEM "http://127.0.0.1:9/eurofxref.dtd">'),
        document(before='<!DOCTYPE x [<!ENTITY own SYSTEM "file:///etc/hostname">]>'),
        document(before="<!DOCTYPE Envelope>"),
    ],
    ids=["entity bomb", "bomb unused", "entity", "outside DTD", "outside file", "bare DTD"],
)
def test_a_document_type_definition_is_refused_and_never_followed(
    bank: responses.RequestsMock, content: bytes
) -> None:
    assert why(lambda: read_rates(content)).code == "not-rates"
    assert len(bank.calls) == 0


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"not xml",
        b"<html><body>Down for maintenance</body></html>",
        document()[:-20],
        document().replace(b"UTF-8", b"no-such-encoding"),
        document().replace(b"eurofxref", b"another"),
        document(rates={}),
        document(rates={"USD": "many"}),
        document(rates={"USD": "0"}),
        document(rates={"USD": "-1.05"}),
        document(rates={"USD": "NaN"}),
        document(rates={"USD": "sNaN"}),
        document(rates={"USD": "Infinity"}),
        document(rates={"USD": "1E-999999"}),
        document(rates={"USD": "1E+999999"}),
        document(rates={"USD": "0.0009"}),
        document(rates={"USD": "1000001"}),
        document(rates={"USD": ""}),
        document(day="yesterday"),
        document(day=""),
        document(more='<Cube time="2017-03-07"><Cube currency="USD" rate="1.0576"/></Cube>'),
        document(rates={"ATS": "13.7603"}),
        b"<a>" * 30_000,
        b"<a>" * 14_000 + b"</a>" * 14_000,
        b"\xff\xfe" + document(),
        b"\x00" * 50,
    ],
    ids=lambda content: repr(content[:8]) + str(len(content)),
)
def test_anything_but_one_day_of_rates_is_refused(content: bytes) -> None:
    assert why(lambda: read_rates(content)) == Mistake("rates", "not-rates")


@given(st.binary(max_size=300))
def test_no_bytes_do_worse_than_be_refused(content: bytes) -> None:
    assert why(lambda: read_rates(content)).code == "not-rates"


@given(st.integers(0, len(document()) - 1), st.binary(min_size=1, max_size=3))
def test_a_damaged_document_is_read_or_refused(at: int, damage: bytes) -> None:
    whole = document()
    damaged = whole[:at] + damage + whole[at + len(damage) :]
    try:
        rates = read_rates(damaged).rates
    except Refused:
        assert why(lambda: read_rates(damaged)).code == "not-rates"
    else:
        assert min(rates.values()) > 0


def test_the_dearest_and_the_cheapest_currency_that_are_read_have_a_cross_rate() -> None:
    read = read_rates(document(rates={"USD": "0.001", "JPY": "1000000"}))
    assert read.between("USD", "JPY").rate == 10**9
    assert read.between("JPY", "USD").rate > 0


def test_a_currency_that_is_none_any_more_is_left_out() -> None:
    read = read_rates(document(rates={"USD": "1.0556", "ATS": "13.7603"}))
    assert read.rates == {"USD": Decimal("1.0556")}


amounts = st.decimals("0.001", "999999", places=6)


@given(st.dictionaries(st.sampled_from(["USD", "JPY", "GBP", "CHF"]), amounts, min_size=1))
def test_kept_rates_come_back_to_the_last_digit(
    tmp_path_factory: pytest.TempPathFactory, rates: dict[str, Decimal]
) -> None:
    path = tmp_path_factory.mktemp("kept") / "deep" / "rates.json"
    kept = EuroRates(day=DAY, rates=rates)
    keep_rates(kept, path)
    assert kept_rates(path) == kept


def test_newer_rates_take_the_place_of_older_ones_and_leave_no_scraps(tmp_path: Path) -> None:
    path = tmp_path / "rates.json"
    for day in (date(2017, 3, 7), DAY):
        keep_rates(EuroRates(day=day, rates=RATES), path)
    kept = kept_rates(path)
    assert kept is not None
    assert kept.day == DAY
    assert [file.name for file in tmp_path.iterdir()] == ["rates.json"]


@pytest.mark.parametrize(
    "text",
    [
        "",
        "[]",
        "null",
        "{}",
        '{"day": "2017-03-08"}',
        '{"day": "2017-03-08", "rates": []}',
        '{"day": "2017-03-08", "rates": {}}',
        '{"day": "2017-03-08", "rates": {"USD": 0}}',
        '{"day": "2017-03-08", "rates": {"USD": NaN}}',
        '{"day": "2017-03-08", "rates": {"USD": null}}',
        '{"day": "8 March", "rates": {"USD": "1.0556"}}',
        "[" * 100_000,
    ],
    ids=lambda text: text[:50],
)
def test_kept_rates_that_cannot_be_read_are_as_good_as_none(tmp_path: Path, text: str) -> None:
    path = tmp_path / "rates.json"
    path.write_text(text, encoding="utf-8")
    assert kept_rates(path) is None


def test_where_nothing_was_kept_there_are_no_rates(tmp_path: Path) -> None:
    assert kept_rates(tmp_path / "rates.json") is None
    assert kept_rates(tmp_path) is None


def test_kept_bytes_that_are_no_text_are_as_good_as_none(tmp_path: Path) -> None:
    path = tmp_path / "rates.json"
    path.write_bytes(b"\xff\xfe\x00")
    assert kept_rates(path) is None


def test_the_kept_file_says_the_day_it_is_of(tmp_path: Path) -> None:
    path = tmp_path / "rates.json"
    keep_rates(EuroRates(day=DAY, rates=RATES), path)
    assert json.loads(path.read_text(encoding="utf-8"))["day"] == "2017-03-08"
