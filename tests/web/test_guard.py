"""What is turned away, and what every answer carries."""

import pytest

from quoting.web import create_app
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
