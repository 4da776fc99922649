"""What is turned away, and what every answer carries."""

import pytest

from quoting.web import create_app
from quoting.web.security import name_cookie
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_order, sample_workshop
from tests.web.conftest import Maker
from tests.web.pages import Page

SHOP = open_shop(sample_workshop(), today=lambda: TODAY).starting_with(sample_order())


def guarded() -> Maker:
    """Return a maker whose forms carry a token, as a browser's do."""
    return Maker(create_app(SHOP).test_client())


@pytest.mark.parametrize("host", ["evil.example", "127.0.0.1.evil.example", "localhost.", "[::2]"])
def test_only_loopback_names_are_answered(host: str) -> None:
    reply = guarded().client.get("/", headers={"Host": host})
    assert reply.status_code == 400
    assert "answers only at 127.0.0.1" in reply.text


@pytest.mark.parametrize("host", ["localhost", "127.0.0.1:8777", "[::1]:8777", "LOCALHOST:1"])
def test_every_loopback_name_is_answered(host: str) -> None:
    assert guarded().client.get("/", headers={"Host": host}).status_code == 200


@pytest.mark.parametrize("address", ["/", "/quote", "/answer", "/nowhere", "/static/base.css"])
def test_every_answer_carries_a_strict_policy(address: str) -> None:
    with guarded().client.get(address) as reply:
        policy = reply.headers["Content-Security-Policy"]
        assert "default-src 'none'" in policy
        assert "unsafe" not in policy
        assert reply.headers["X-Content-Type-Options"] == "nosniff"


def test_a_form_without_its_token_does_nothing_and_loses_nothing() -> None:
    maker = guarded()
    typed = maker.open().typed() | {"csrf_token": "stale", "order.title": "Typed for an hour"}
    reply = maker.client.post("/quote", data=typed)
    page = Page(reply.text)
    assert reply.status_code == 409
    assert "Once more, please." in page.root.text
    assert page.typed()["order.title"] == "Typed for an hour"
    assert maker.client.post("/quote", data=page.typed()).status_code == 200


OTHER_SITES: list[dict[str, str]] = [
    {"Sec-Fetch-Site": "cross-site"},
    {"Sec-Fetch-Site": "same-site"},
    {"Origin": "http://evil.example"},
    {"Origin": "http://localhost:3000"},
    {"Origin": "null"},
]


@pytest.mark.parametrize("sent", OTHER_SITES, ids=str)
@pytest.mark.parametrize(
    "address", ["/", "/quote", "/sizes", "/calmer", "/near", "/workshop/rates"]
)
def test_what_a_page_of_another_site_sends_is_turned_away_before_any_of_it_is_read(
    monkeypatch: pytest.MonkeyPatch, sent: dict[str, str], address: str
) -> None:
    maker = guarded()
    fields = maker.open().typed()

    def read(*_: object) -> None:
        pytest.fail("the form was read")

    monkeypatch.setattr("quoting.web.orders.pages.bind_form", read)
    monkeypatch.setattr("flask.Request.form", property(read))
    reply = maker.client.post(address, data=fields, headers=sent)
    assert reply.status_code == 403
    assert reply.text == "This was sent by a page of another site, so it was not read.\n"
    assert reply.headers["Content-Security-Policy"]


@pytest.mark.parametrize(
    "sent",
    [
        {"Sec-Fetch-Site": "same-origin", "Origin": "http://localhost"},
        {"Sec-Fetch-Site": "none"},
        {"Origin": "http://localhost"},
        {},
    ],
    ids=str,
)
def test_what_a_page_of_its_own_sends_is_answered(sent: dict[str, str]) -> None:
    maker = guarded()
    fields = maker.open().typed()
    assert maker.client.post("/quote", data=fields, headers=sent).status_code == 200


@pytest.mark.parametrize(
    ("mode", "into", "status"),
    [("navigate", "document", 200), ("navigate", "iframe", 403), ("no-cors", "image", 403)],
)
def test_a_link_elsewhere_leads_here_and_nothing_else_does(
    mode: str, into: str, status: int
) -> None:
    sent = {"Sec-Fetch-Site": "cross-site", "Sec-Fetch-Mode": mode, "Sec-Fetch-Dest": into}
    assert guarded().client.get("/", headers=sent).status_code == status


def test_a_foreign_name_is_not_told_whose_workshop_this_is() -> None:
    reply = guarded().client.get("/nowhere", headers={"Host": "evil.example"})
    assert reply.status_code == 400
    assert reply.text == "This page answers only at 127.0.0.1 and localhost.\n"


def test_what_is_turned_away_leaves_a_line_in_the_log_without_a_word_of_it(
    caplog: pytest.LogCaptureFixture,
) -> None:
    maker = guarded()
    fields = maker.open().typed() | {"order.buyer": "Rosalind Quill", "csrf_token": "stale"}
    maker.client.post("/quote", data=fields, headers={"Host": "evil.example"})
    maker.client.post("/quote?Quill", data=fields, headers={"Origin": "null"})
    maker.client.post("/quote", data=fields)
    said = [record.getMessage() for record in caplog.records if record.name == "quoting.web"]
    assert len(said) == 3
    assert all("orders.quote" in line for line in said)
    assert "127.0.0.1" in said[0]
    assert "another site" in said[1]
    assert "token" in said[2]
    assert not [line for line in said if "Quill" in line or "stale" in line or "evil" in line]


def test_a_way_of_asking_that_is_not_served_names_those_that_are() -> None:
    reply = guarded().client.get("/workbook")
    assert reply.status_code == 405
    assert "POST" in reply.headers["Allow"]


def test_the_buyers_page_is_kept_nowhere_and_a_form_only_for_going_back() -> None:
    maker = guarded()
    fields = maker.open().typed()
    kept = {
        address: maker.client.post(address, data=fields).headers["Cache-Control"]
        for address in ("/quote", "/answer", "/workbook", "/")
    }
    assert kept.pop("/") == "private, no-cache"
    assert all("no-store" in how for how in kept.values())


def test_two_programs_on_one_computer_do_not_take_each_others_cookies() -> None:
    names = set()
    for port in (8777, 8778):
        app = create_app(SHOP)
        name_cookie(app, port)
        names.add(app.test_client().get("/").headers["Set-Cookie"].partition("=")[0])
    assert names == {"quoting-8777", "quoting-8778"}


@pytest.mark.parametrize(("address", "status"), [("/nowhere", 404), ("/workbook", 405)])
def test_a_failure_has_a_page_in_words(address: str, status: int) -> None:
    maker = guarded()
    page = maker.open(address)
    assert maker.status == status
    assert page.headings[0].endswith(".")


def test_the_session_cookie_is_for_this_site_alone() -> None:
    cookie = guarded().client.get("/").headers["Set-Cookie"]
    assert "HttpOnly" in cookie
    assert "SameSite=Lax" in cookie


def test_words_of_the_order_are_shown_as_words_and_not_as_markup() -> None:
    maker = guarded()
    bad = "<script>alert(1)</script>"
    colours = {"blanket.yarn": bad, "order.title": bad, "order.notes": bad, "extras.1.what": bad}
    for address in ("/", "/answer", "/quote"):
        page = Page(maker.client.post(address, data=maker.open().typed() | colours).text)
        assert all(not node.text for node in page.root.all("script"))


def test_a_file_from_a_page_from_before_a_restart_is_asked_for_again_without_any_form() -> None:
    maker = guarded()
    reply = maker.client.post("/read", data={"csrf_token": "stale"}, follow_redirects=True)
    page = Page(reply.text)
    assert page.headings == ["Choose the file once more, please"]
    assert not [node for node in page.root.all("form") if node.attributes.get("id") == "order"]
    assert not list(page.root.all("script"))
