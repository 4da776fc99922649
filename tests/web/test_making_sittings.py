"""What was done of an order, written down in one go: rows, time, yarn, ends."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import Path

import pytest

from quoting.core.making.log_lines import Doing, EndsWoven, RowsReached, Session, YarnUsed
from quoting.core.order.stage import Stage
from quoting.store.orders import kept_order
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.making_pages import DAY, SIZE, agree, lines_of, number_of, tell
from tests.web.pages import Page

ON = date(2026, 11, 24)


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker whose workshop is in her book."""
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


@pytest.fixture
def address(maker: BookMaker) -> str:
    """Return an order that is agreed."""
    return agree(maker)


@pytest.fixture(scope="module")
def untouched(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[BookMaker, str]]:
    """Return a maker with an order that is agreed and of which nothing is written down."""
    with maker_with_book(tmp_path_factory.mktemp("book") / "book.db", sample_workshop()) as maker:
        yield maker, agree(maker)


def test_an_order_that_is_not_agreed_yet_says_so_and_leads_back(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    page = maker.open(f"{address}/making")
    assert "Once it is agreed" in page.root.text
    assert any(link.attributes["href"] == address for link in page.root.all("a"))
    assert maker.open("/orders/99/making").headings == ["There is no such page."]
    assert maker.status == 404
    for beyond in ("", "/making", "/took", "/forget", "/making/1"):
        assert maker.client.get(f"/orders/{10**25}{beyond}").status_code == 404


def test_the_order_leads_to_its_making_once_it_is_agreed(maker: BookMaker, address: str) -> None:
    links = [link.attributes.get("href") for link in maker.open(address).root.all("a")]
    assert f"{address}/making" in links


def test_rows_and_minutes_are_written_down_as_a_session(maker: BookMaker, address: str) -> None:
    reply = tell(maker, address, rows="12", minutes="50.5", day=DAY)
    assert (reply.status_code, reply.location) == (303, f"{address}/making")
    session = Session(day=ON, doing=Doing.AT_THE_HOOK, minutes=50.5, first_row=1, last_row=12)
    assert lines_of(maker, address) == [session]
    page = maker.open(f"{address}/making")
    assert page.labelled("Rows done").attributes["value"] == "12"
    assert "At the hook, 51 min, rows 1 to 12" in page.root.text
    assert "12 of " in page.root.text


def test_the_next_session_goes_on_from_the_row_where_she_is(maker: BookMaker, address: str) -> None:
    tell(maker, address, rows="12", minutes="50")
    tell(maker, address, rows="20", minutes="30")
    (_, second) = lines_of(maker, address)
    assert isinstance(second, Session)
    assert (second.first_row, second.last_row) == (13, 20)


def test_times_of_the_day_stand_for_minutes(maker: BookMaker, address: str) -> None:
    tell(maker, address, rows="8", begun="9:10", ended="10:05", day=DAY)
    (session,) = lines_of(maker, address)
    assert isinstance(session, Session)
    assert session.minutes == 55
    assert session.started is not None
    assert f"{session.started.astimezone():%H:%M}" == "09:10"


def test_a_time_on_a_day_at_the_edge_of_the_calendar_is_taken_as_minutes(
    maker: BookMaker, address: str
) -> None:
    reply = tell(maker, address, begun="0:00", ended="0:30", day="0001-01-01")
    assert reply.status_code == 303
    (session,) = lines_of(maker, address)
    assert isinstance(session, Session)
    assert (session.minutes, session.started) == (30, None)


def test_yarn_and_ends_are_told_with_the_rows(maker: BookMaker, address: str) -> None:
    page = maker.open(f"{address}/making")
    typed = page.typed("sitting")
    colours = {typed[f"used.{n}.colour"]: n for n in (1, 2) if f"used.{n}.colour" in typed}
    first, number = next(iter(colours.items()))
    ball = typed[f"used.{number}.ball_g"]
    reply = tell(maker, address, rows="20", ends="4", **{f"used__{number}__amount": "1"})
    assert reply.status_code == 303
    reached, used, woven = lines_of(maker, address)
    assert isinstance(reached, RowsReached)
    assert isinstance(used, YarnUsed)
    assert (used.colour, used.balls, used.ball_g) == (first, 1, float(ball))
    assert used.rows == 20
    assert isinstance(woven, EndsWoven)
    again = maker.open(f"{address}/making").root.text
    assert "than planned up to row 20" in again
    assert "buy" in again or "does for the" in again


@pytest.mark.parametrize(
    ("amount", "beside", "used"),
    [
        ("70 g", "", {"grams": 70}),
        ("70", "", {"grams": 70}),
        ("0.07 kg", "", {"grams": 70}),
        ("2 oz", "", {"grams": pytest.approx(56.699, abs=0.001)}),
        ("70 g", "100", {"grams": 70}),
        ("2 skeins", "100", {"balls": 2, "ball_g": 100}),
        ("1 skein", "50", {"balls": 1, "ball_g": 50}),
        ("0.8 skeins", "100", {"grams": 80}),
    ],
)
def test_yarn_is_told_with_the_unit_that_is_typed(
    maker: BookMaker, address: str, amount: str, beside: str, used: dict[str, object]
) -> None:
    """An ounce is 28.349523125 g exactly (NIST Handbook 44)."""
    told = {"used.1.amount": amount, "used.1.ball_g": beside}
    assert tell(maker, address, rows="4", **told).status_code == 303
    _, line = lines_of(maker, address)
    assert isinstance(line, YarnUsed)
    assert {name: getattr(line, name) for name in used} == used


@pytest.mark.parametrize(
    ("amount", "beside", "said"),
    [
        ("some", "", "cannot be read as a number"),
        ("70 cm", "", "no unit that is known"),
        ("70 cm", "100", "no unit that is known"),
        ("2 skeins", "", "no unit that is known"),
        ("g", "", "cannot be read as a number"),
        ("-70 g", "", "is too small"),
    ],
)
def test_what_is_no_weight_is_told_beside_the_yarn(
    untouched: tuple[BookMaker, str], amount: str, beside: str, said: str
) -> None:
    maker, address = untouched
    told = {"used.1.amount": amount, "used.1.ball_g": beside}
    reply = tell(maker, address, rows="4", **told)
    assert reply.status_code == 422
    assert said in Page(reply.text).said_of("used.1.amount")
    assert Page(reply.text).typed("sitting").items() >= told.items()
    assert lines_of(maker, address) == []


def test_the_first_rows_of_an_agreed_order_offer_to_put_it_on_the_hook(
    maker: BookMaker, address: str
) -> None:
    assert "Put it on the hook" not in maker.open(f"{address}/making").root.text
    tell(maker, address, rows="3")
    assert "Put it on the hook" in maker.open(f"{address}/making").root.text
    maker.press(f"{address}/making/hook", f"{address}/making")
    assert kept_order(maker.book, number_of(address)).stage is Stage.ON_THE_HOOK
    page = maker.open(f"{address}/making").root.text
    assert "Put it on the hook" not in page
    assert "From agreed to on the hook" in page


@pytest.mark.parametrize(
    ("typed", "beside", "said"),
    [
        ({"minutes": "0"}, "minutes", "must be more than 0"),
        ({"minutes": "2400"}, "minutes", "the most that will do is 1,440"),
        ({"minutes": "ages"}, "minutes", "cannot be read as a number"),
        ({"begun": "10:05", "ended": "9:10"}, "ended", "not after it began"),
        ({"begun": "10:75", "ended": "11:10"}, "begun", "a time of the day such as 9:10"),
        ({"rows": "9999"}, "rows", "more than there is to make: the order has "),
        ({"rows": "1.5"}, "rows", "a whole number"),
        ({}, "rows", "nothing to write down yet"),
        ({"rows": "4", "day": "2031-01-01"}, "day", "still to come"),
        ({"rows": "4", "day": ""}, "day", "must be given"),
        ({"rows": "4", "used.1.amount": "9000", "used.1.ball_g": ""}, "used.1.amount", "there is"),
        ({"ends": "99999"}, "ends", "more ends than there can be"),
    ],
)
def test_what_cannot_be_is_told_beside_its_field_and_kept_as_typed(
    untouched: tuple[BookMaker, str], typed: dict[str, str], beside: str, said: str
) -> None:
    maker, address = untouched
    reply = tell(maker, address, **typed)
    assert reply.status_code == 422
    page = Page(reply.text)
    assert said in page.said_of(beside)
    kept = page.typed("sitting")
    assert {name: kept[name] for name in typed} == typed
    assert lines_of(maker, address) == []


@pytest.mark.parametrize(
    "typed",
    [
        {"rows": ("9999", "more than there is"), "minutes": ("abc", "cannot be read")},
        {"ends": ("99999", "more ends than"), "rows": ("1.5", "a whole number")},
        {"day": ("2031-01-01", "still to come"), "minutes": ("2400", "the most that will do")},
    ],
    ids=" ".join,
)
def test_what_there_cannot_be_is_told_together_with_what_cannot_be_read(
    untouched: tuple[BookMaker, str], typed: dict[str, tuple[str, str]]
) -> None:
    maker, address = untouched
    written = {"rows": "4"} | {name: text for name, (text, _) in typed.items()}
    reply = tell(maker, address, **written)
    assert reply.status_code == 422
    page = Page(reply.text)
    for name, (_, said) in typed.items():
        assert said in page.said_of(name)


def test_blank_fields_that_were_none_are_not_told_beside_a_mistake(
    untouched: tuple[BookMaker, str],
) -> None:
    maker, address = untouched
    page = Page(tell(maker, address, minutes="ages").text)
    assert "nothing to write down" not in page.root.text


def test_fewer_rows_are_asked_about_and_taken_where_some_were_pulled_back(
    maker: BookMaker, address: str
) -> None:
    tell(maker, address, rows="12")
    refused = Page(tell(maker, address, rows="9", minutes="10").text)
    assert "12 are written down as done already, and " in refused.said_of("rows")
    assert refused.labelled("Some rows were pulled back")
    tell(maker, address, refused, pulled_back="yes")
    assert maker.open(f"{address}/making").labelled("Rows done").attributes["value"] == "9"


def test_a_page_that_was_sent_twice_writes_once(maker: BookMaker, address: str) -> None:
    page = maker.open(f"{address}/making")
    tell(maker, address, page, rows="12", minutes="50")
    second = tell(maker, address, page, rows="12", minutes="50")
    assert second.status_code == 422
    assert "Something was written down for this order" in Page(second.text).root.text
    assert len(lines_of(maker, address)) == 1


def test_a_form_from_before_a_restart_keeps_what_was_typed(maker: BookMaker, address: str) -> None:
    fields = maker.open(f"{address}/making").typed("sitting") | {"rows": "12", "minutes": "50"}
    reply = maker.client.post(f"{address}/making", data=fields | {"csrf_token": "stale"})
    assert reply.status_code == 409
    page = Page(reply.text)
    assert "Once more, please" in page.root.text
    assert page.typed("sitting")["minutes"] == "50"
    tell(maker, address, page)
    assert len(lines_of(maker, address)) == 1
