"""Versions of the workshop and its file: brought back, given out, read in, refused."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from types import MappingProxyType

import pytest

from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import load_workshop_text, workshop_text
from quoting.store.order_content import OrderContent
from quoting.store.orders import create_order
from tests.examples import sample_workshop
from tests.web.book_pages import BEGINNING
from tests.web.own_maker import OwnMaker, own_maker


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, sample_workshop()) as someone:
        yield someone


def test_an_earlier_version_is_listed_and_brought_back(maker: OwnMaker) -> None:
    maker.open("/workshop")
    maker.press("/workshop", workshop__name="Hollin Edge")
    assert [row[1] for row in maker.open("/workshop/versions").table("Version")[1:]] == [
        "2, now",
        "1",
    ]
    page = maker.press_at("/workshop/versions/1/back", "/workshop/versions")
    assert page.table("Version")[1][1] == "3, 1 brought back, now"
    assert maker.workshop == sample_workshop()


def test_a_version_that_lacks_what_an_open_order_uses_is_not_brought_back(
    maker: OwnMaker,
) -> None:
    maker.open("/yarn")
    maker.press("/yarn", yarns__1__name="fell aran")
    typed = MappingProxyType({"blanket.yarn": ("fell aran",)})
    create_order(maker.book, OrderContent(typed=typed), now=BEGINNING)
    page = maker.press_at("/workshop/versions/1/back", "/workshop/versions")
    assert (maker.status, maker.version) == (422, 2)
    assert "An order without a title : fell aran" in page.with_id("main").text


def test_the_file_goes_out_and_in_without_loss(maker: OwnMaker) -> None:
    text = maker.client.get("/workshop.toml").text
    assert load_workshop_text(text) == sample_workshop()
    maker.give(text.replace("Ottermoor Blankets", "Hollin Edge"))
    assert (maker.status, maker.workshop.name, maker.version) == (200, "Hollin Edge", 2)
    old = maker.client.get("/workshop/versions/1/workshop.toml").text
    assert load_workshop_text(old) == sample_workshop()


def test_a_file_with_mistakes_changes_nothing_and_all_are_told(maker: OwnMaker) -> None:
    text = workshop_text(sample_workshop(), Vocabulary.US)
    bad = text.replace('"GBP"', '"XYZ"').replace('price = "4.60"', 'price = "lots"')
    page = maker.give(bad)
    assert (maker.status, maker.version) == (422, 1)
    assert {row[0] for row in page.table("Place in the file")[1:]} == {
        "workshop.currency",
        "yarns.1.put_ups.1.price",
    }


@pytest.mark.parametrize("address", ["/workshop/versions/file", "/workshop/versions/1/back"])
def test_an_address_that_changes_something_is_not_opened(maker: OwnMaker, address: str) -> None:
    reply = maker.client.get(address)
    assert (reply.status_code, reply.location) == (302, "/workshop/versions")
    assert maker.version == 1


def test_a_form_without_its_token_changes_nothing_and_keeps_what_was_typed(
    maker: OwnMaker,
) -> None:
    fields = maker.open("/workshop").typed("own") | {"workshop.name": "Hollin Edge"}
    del fields["csrf_token"]
    maker.see(maker.client.post("/workshop", data=fields))
    assert (maker.status, maker.version) == (409, 1)
    assert maker.page.typed("own")["workshop.name"] == "Hollin Edge"
