"""The frame of every page: its title, its places, and that what points somewhere finds it."""

from __future__ import annotations

from dataclasses import replace

import pytest

from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import TODAY
from tests.web.conftest import Maker, maker_in
from tests.web.rich_workshop import rich

ADDRESSES = ("/", "/blank", "/sizes", "/measurements", "/yarn", "/workshop")


@pytest.mark.parametrize("address", ADDRESSES)
def test_every_page_names_the_workshop_its_places_and_where_one_is(address: str) -> None:
    page = maker_in(rich()).open(address)
    (nav,) = page.root.all("nav")
    links = {a.text: a.attributes for a in nav.all("a")}
    assert list(links) == ["Orders", "Sizes", "Measurements", "Yarn", "Workshop"]
    here = [name for name, attributes in links.items() if "aria-current" in attributes]
    places = {"/": "Orders", "/blank": "Orders"}
    assert here == [places.get(address, address.strip("/").capitalize())]
    title = next(page.root.all("title")).text
    assert title.endswith("– Ottermoor Blankets")
    maker = next(n for n in page.root.all("p") if n.attributes.get("class") == "maker")
    assert maker.text == "Ottermoor Blankets"
    skip = next(page.root.all("a"))
    assert skip.attributes["href"] == f"#{page.with_id('main').attributes['id']}"


@pytest.mark.parametrize("address", ADDRESSES)
def test_whatever_a_part_of_a_page_points_to_is_there(address: str) -> None:
    page = maker_in(rich()).open(address)
    ids = [n.attributes["id"] for n in page.root.all(lambda n: "id" in n.attributes)]
    assert len(ids) == len(set(ids))
    for name in ("for", "aria-labelledby", "aria-describedby", "list", "form"):
        for node in page.root.all(lambda n, name=name: name in n.attributes):
            missing = set(node.attributes[name].split()) - set(ids)
            assert not missing, (name, node.attributes[name])


@pytest.mark.parametrize("address", ADDRESSES)
def test_every_field_that_is_seen_has_a_name_that_is_said(address: str) -> None:
    page = maker_in(rich()).open(address)
    labelled = {n.attributes["for"] for n in page.root.all("label")}
    for field in page.root.all(lambda n: n.tag in {"input", "select", "textarea"}):
        if field.attributes.get("type") == "hidden":
            continue
        named = field.attributes.get("id") in labelled or "aria-label" in field.attributes
        assert named, field.attributes


@pytest.mark.parametrize("address", ADDRESSES)
def test_every_form_that_is_sent_carries_its_token(address: str) -> None:
    for form in maker_in(rich()).open(address).root.all("form"):
        if form.attributes.get("method") == "post":
            names = [field.attributes.get("name") for field in form.all("input")]
            assert names.count("csrf_token") == 1


@pytest.mark.parametrize("address", ["/measurements", "/yarn", "/workshop"])
def test_a_page_of_the_workshop_says_which_file_it_is_read_from(address: str, maker: Maker) -> None:
    page = maker.open(address)
    assert next(n.text for n in page.root.all("code")) == "workshop.toml"
    assert page.headings[0] == address.strip("/").capitalize()


def test_who_works_with_the_demos_measurements_is_told_how_to_begin_with_her_own() -> None:
    shop = replace(open_shop(rich(), today=lambda: TODAY), borrowed=True)
    page = Maker(create_app(shop).test_client()).open()
    (banner,) = page.root.all("aside")
    assert "start it without --demo" in banner.text
    assert not list(maker_in(rich()).open().root.all("aside"))
