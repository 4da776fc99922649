"""The door of the pages: who is outside sees nothing, who is inside everything."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.store.door import Standing, remove_passphrase, set_passphrase, standing_of
from quoting.web import create_app
from quoting.web.address import Address
from quoting.web.kept import KeptShop
from tests.examples import TODAY
from tests.web.book_pages import BookMaker
from tests.web.door_pages import RIGHT, WRONG, maker_at_the_door, sign_in, sign_out
from tests.web.pages import Page

PRIVATE = ("Ottermoor", "Quill", "moorland", "moor aran")
HOUSE = Address(listens_at="192.168.1.20", names=frozenset({"192.168.1.20"}), shown="192.168.1.20")


@pytest.fixture(autouse=True)
def _quick(monkeypatch: pytest.MonkeyPatch) -> None:
    """Take little time for each passphrase, of which there are many here."""
    monkeypatch.setattr("quoting.store.passphrases.SCRYPT", "scrypt:256:8:1")


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    """Return a maker in front of the door of her book."""
    with maker_at_the_door(tmp_path / "book.db") as maker:
        yield maker


def addresses(maker: BookMaker) -> list[tuple[str, str]]:
    """Return every address of the pages, with the way it is asked."""
    rules = maker.client.application.url_map.iter_rules()
    return [
        (method, rule.rule.replace("<int:order_id>", "1").split("<")[0])
        for rule in rules
        if rule.endpoint != "static" and not rule.endpoint.startswith("door.")
        for method in sorted((rule.methods or set()) - {"HEAD", "OPTIONS"})
    ]


def test_from_outside_every_page_leads_to_the_sign_in_and_none_says_a_word(
    maker: BookMaker,
) -> None:
    asked = addresses(maker)
    assert len(asked) > 40
    for method, address in asked:
        reply = maker.client.open(address, method=method, data={"order.title": "a"})
        if method == "GET":
            assert (reply.status_code, reply.location.split("?")[0]) == (303, "/door"), address
        else:
            assert reply.status_code == 403, address
        assert not [word for word in PRIVATE if word in reply.text], address


@pytest.mark.parametrize("address", ["/nowhere", "/orders/1/save", "/door/out"])
def test_what_is_no_page_says_no_more_from_outside(maker: BookMaker, address: str) -> None:
    reply = maker.client.get(address)
    assert reply.location.startswith("/door?to=")


def test_nothing_that_is_sent_from_outside_is_read(
    maker: BookMaker, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("flask.Request.form", property(lambda _: pytest.fail("was read")))
    reply = maker.client.post("/orders/1/save", data={"order.title": "Foreign"})
    assert reply.status_code == 403
    assert "Nothing was saved just now." in reply.text


def test_the_sign_in_page_has_its_styles_and_does_not_say_whose_book_this_is(
    maker: BookMaker,
) -> None:
    page = maker.open("/door")
    assert page.headings == ["Sign in"]
    assert "Ottermoor" not in page.root.text
    sheets = [node.attributes["href"] for node in page.root.all("link")]
    for sheet in sheets[1:]:
        with maker.client.get(sheet) as reply:
            assert reply.status_code == 200


@pytest.mark.parametrize(
    ("asked", "leads_to"),
    [
        ("/orders?words=moor&page=2", "/orders?words=moor&page=2"),
        ("", "/"),
        ("orders", "/"),
        ("//evil.example/a", "/"),
        ("/\\evil.example", "/"),
        ("/\t/evil.example", "/"),
        ("https://evil.example/", "/"),
        ("javascript:alert(1)", "/"),
    ],
)
def test_who_has_signed_in_comes_to_the_page_that_was_asked_and_to_no_other_computers(
    maker: BookMaker, asked: str, leads_to: str
) -> None:
    assert sign_in(maker, to=asked).location == leads_to
    assert maker.client.get("/door", query_string={"to": asked}).location == leads_to


def test_the_page_that_was_asked_for_is_carried_through_the_sign_in(maker: BookMaker) -> None:
    page = Page(maker.client.get("/orders?words=moor", follow_redirects=True).text)
    wanted = page.root.all(lambda node: node.attributes.get("name") == "to")
    assert next(wanted).attributes["value"] == "/orders?words=moor"


def test_who_is_inside_sees_the_pages_and_the_way_out_on_each(maker: BookMaker) -> None:
    assert sign_in(maker).status_code == 303
    for address in ("/orders", "/sizes", "/measurements", "/yarn", "/workshop", "/nowhere"):
        page = maker.open(address)
        assert "Ottermoor Blankets" in page.root.text
        assert next(node.text for node in page.root.all("button")) == "Sign out"


def test_who_went_out_is_outside_and_her_old_cookie_is_nobodys(maker: BookMaker) -> None:
    sign_in(maker)
    cookie = maker.client.get_cookie("quoting-door")
    assert cookie is not None
    assert sign_out(maker).location == "/door"
    assert maker.client.get_cookie("quoting-door") is None
    maker.client.set_cookie("quoting-door", cookie.value)
    assert maker.client.get("/orders").location.startswith("/door")
    assert standing_of(maker.book, cookie.value, now=maker.clock()) is Standing.OUTSIDE


def test_who_is_inside_stays_so_when_the_program_is_started_again(maker: BookMaker) -> None:
    sign_in(maker)
    cookie = maker.client.get_cookie("quoting-door")
    assert cookie is not None
    again = create_app(KeptShop(book=maker.book, now=maker.clock, today=lambda: TODAY))
    client = again.test_client()
    assert client.get("/orders").status_code == 303
    client.set_cookie("quoting-door", cookie.value)
    assert client.get("/orders").status_code == 200


def test_to_go_out_takes_the_token_of_a_form(maker: BookMaker) -> None:
    sign_in(maker)
    assert maker.client.post("/door/out").status_code == 409
    assert maker.client.get("/door/out").status_code == 405
    assert maker.client.get("/orders").status_code == 200


def test_the_sign_in_form_takes_its_token_and_is_shown_again_without_it(maker: BookMaker) -> None:
    reply = maker.client.post("/door", data={"passphrase": RIGHT, "to": "/yarn"})
    assert reply.status_code == 409
    page = Page(reply.text)
    assert page.headings == ["Sign in"]
    fields = page.typed("sign-in") | {"passphrase": RIGHT}
    assert maker.client.post("/door", data=fields).location == "/yarn"


def test_the_token_of_the_forms_is_another_inside_than_it_was_outside(maker: BookMaker) -> None:
    before = maker.token("/door")
    sign_in(maker)
    reply = maker.client.post("/orders/new", data={"csrf_token": before})
    assert reply.status_code == 409


def test_the_cookie_is_for_this_site_alone_and_no_script_can_read_it(maker: BookMaker) -> None:
    (cookie,) = [c for c in sign_in(maker).headers.getlist("Set-Cookie") if "door" in c]
    assert "HttpOnly" in cookie
    assert "SameSite=Lax" in cookie
    assert "Path=/" in cookie
    assert "Max-Age=2592000" in cookie
    assert "Secure" not in cookie


def test_behind_tls_the_cookies_go_only_through_it(tmp_path: Path) -> None:
    """The name's prefix is the open standard's (RFC 6265bis, 4.1.3.2): no other host can set it."""
    behind = Address(
        names=frozenset({"blankets.example"}), shown="blankets.example", behind_tls=True
    )
    secure = {
        "base_url": "https://blankets.example",
        "headers": {"Referer": "https://blankets.example/door"},
    }
    with maker_at_the_door(tmp_path / "book.db", behind) as maker:
        page = Page(maker.client.get("/door", **secure).text)
        fields = page.typed("sign-in") | {"passphrase": RIGHT}
        reply = maker.client.post("/door", data=fields, **secure)
        cookies = reply.headers.getlist("Set-Cookie")
        assert reply.status_code == 303
        assert all("Secure" in cookie for cookie in cookies)
        assert any(cookie.startswith("__Host-quoting-door=") for cookie in cookies)
        assert maker.client.get("/orders", **secure).status_code == 200
        assert maker.client.get("/orders").status_code == 400


def test_a_wrong_passphrase_is_told_beside_its_field_and_is_not_shown_again(
    maker: BookMaker,
) -> None:
    reply = sign_in(maker, WRONG, to="/yarn")
    assert reply.status_code == 422
    page = Page(reply.text)
    assert (
        "not the passphrase. The next is looked at in 1 second"
        in page.with_id("passphrase.says").text
    )
    assert page.typed("sign-in")["to"] == "/yarn"
    assert WRONG not in reply.text
    assert maker.client.get("/orders").status_code == 303


def test_who_tries_too_soon_is_told_how_long_to_wait(maker: BookMaker) -> None:
    for _ in range(9):
        sign_in(maker, WRONG)
    reply = sign_in(maker)
    assert reply.status_code == 429
    assert int(reply.headers["Retry-After"]) > 60
    assert "it was not looked at. Try again in" in reply.text
    assert "minute" in reply.text


def test_a_passphrase_that_is_set_meanwhile_shows_everybody_out(maker: BookMaker) -> None:
    sign_in(maker)
    set_passphrase(maker.book, "four kettles on a sill", maker="", now=maker.clock())
    assert maker.client.get("/orders").status_code == 303


def test_where_none_is_asked_the_door_leads_on(maker: BookMaker) -> None:
    remove_passphrase(maker.book)
    assert maker.client.get("/door?to=/yarn").location == "/yarn"
    assert "Sign out" not in maker.open("/orders").root.text
    assert maker.press("/door/out", "/orders").location == "/door"
    assert sign_out(maker).status_code == 303
    assert maker.press("/door", "/orders", passphrase=RIGHT).location == "/"


def test_beyond_this_computer_nothing_is_shown_once_no_passphrase_is_asked(tmp_path: Path) -> None:
    with maker_at_the_door(tmp_path / "book.db", HOUSE) as maker:
        remove_passphrase(maker.book)
        reply = maker.client.get("/orders", base_url="http://192.168.1.20:8777")
    assert reply.status_code == 403
    assert reply.text == "This page is not shown to others while it has no passphrase.\n"


def test_a_book_that_fails_is_told_outside_without_a_word_of_it(
    maker: BookMaker, monkeypatch: pytest.MonkeyPatch
) -> None:
    maker.book.close()
    monkeypatch.setattr("quoting.web.door.watch.standing_of", lambda *_, **__: 1 / 0)
    app = create_app(KeptShop(book=maker.book, now=maker.clock, today=lambda: TODAY))
    reply = app.test_client().get("/orders")
    assert reply.status_code == 500
    assert "Ottermoor" not in reply.text


def test_with_a_passphrase_no_page_is_kept_by_the_browser(maker: BookMaker) -> None:
    assert maker.client.get("/door").headers["Cache-Control"] == "private, no-store"
    sign_in(maker)
    address = maker.begin(order__title="Moorland")
    fields = maker.open(address).typed()
    replies = [
        maker.client.get("/orders"),
        maker.client.post(address, data=fields),
        maker.client.post(f"{address}/save", data=fields),
        maker.client.get("/nowhere"),
    ]
    assert {reply.headers["Cache-Control"] for reply in replies} == {"private, no-store"}
    with maker.client.get("/static/base.css") as sheet:
        assert sheet.headers["Cache-Control"] != "private, no-store"


def test_without_one_a_page_made_by_a_form_is_still_kept_for_going_back(maker: BookMaker) -> None:
    remove_passphrase(maker.book)
    address = maker.begin(order__title="Moorland")
    reply = maker.client.post(address, data=maker.open(address).typed())
    assert reply.headers["Cache-Control"] == "private, no-cache"
