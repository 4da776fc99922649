"""Everything that a workshop file can say is entered on a page, and comes to the same."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from decimal import Decimal
from pathlib import Path

import pytest

from quoting.core.workshop.calendar import WorkingCalendar
from quoting.core.workshop.selling import Delivery, DeliveryBand, RestDue
from quoting.core.workshop.timings import Timing
from quoting.core.workshop.workshop import Workshop
from quoting.places import demo_workshop
from quoting.schema import load_workshop
from quoting.schema.notation import FILE
from quoting.schema.workshop_shape import WORKSHOP
from quoting.web.forms.lines import Lines, Part, fields_by_place
from quoting.web.shop import open_shop
from quoting.web.workshop.own_form import bind_workshop, is_own_name, sent_workshop
from quoting.web.workshop.own_pages import OWN_PAGES
from tests.examples import SMALL, TODAY, sample_workshop, sample_yarn
from tests.web.own_maker import OwnMaker, own_maker
from tests.web.pages import Page
from tests.web.rich_workshop import rich

NOT_FOR_A_WORKSHOP = {"price.given"}
"""A price is given for one order; a workshop that gives one is refused."""


def full() -> Workshop:
    """Return a workshop that has at least one line of every list."""
    band = DeliveryBand(to="GB", up_to_g=2000, charged=Decimal(5), paid=Decimal(4))
    plain = rich()
    calendar = replace(plain.calendar, days_off=(TODAY,))
    pricing = replace(plain.pricing, at_half=0.2, rest_due=RestDue.ON_DELIVERY)
    delivery = replace(plain.delivery, bands=(band,))
    return replace(plain, delivery=delivery, calendar=calendar, pricing=pricing)


def names_on(page: Page) -> set[str]:
    named = page.root.all(lambda node: "name" in node.attributes and node.tag != "meta")
    return {node.attributes["name"] for node in named}


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[OwnMaker]:
    with own_maker(tmp_path, full()) as someone:
        yield someone


def test_every_key_of_the_workshop_stands_on_one_page(maker: OwnMaker) -> None:
    shop = open_shop(full(), today=lambda: TODAY)
    form = bind_workshop(sent_workshop(full(), shop), shop)
    fields = dict(fields_by_place(form))
    lists = {name: field for name, field in fields.items() if isinstance(field, Lines)}
    shown = {name.rpartition(".")[2] for name, field in lists.items() if field.entries}
    assert shown == {name.rpartition(".")[2] for name in lists}, "a list without lines has no keys"
    keys = {name for name, field in fields.items() if not isinstance(field, Lines | Part)}
    pages = {page.name: names_on(maker.open(f"/{page.name}")) & keys for page in OWN_PAGES}
    assert set.union(*pages.values()) == keys - NOT_FOR_A_WORKSHOP
    assert sum(map(len, pages.values())) == len(keys - NOT_FOR_A_WORKSHOP)


def enter(maker: OwnMaker, workshop: Workshop) -> None:
    """Type a workshop into the pages, line by line, and save each page."""
    shop = open_shop(maker.workshop, today=lambda: TODAY)
    sent = sent_workshop(workshop, shop).items()
    wanted = {name: text for name, text in sent if not name.endswith(".was")}
    for page in (OWN_PAGES[2], OWN_PAGES[1], OWN_PAGES[0]):
        own = {name: text for name, text in wanted.items() if page.has(name)}
        address = f"/{page.name}"
        maker.open(address)
        for name in own:
            add_lines(maker, address, name)
        there = set(maker.page.typed("own")) | names_on(maker.page)
        assert set(own) <= there, set(own) - there
        blank = {n: "" for n in maker.page.typed("own") if page.has(n) and not n.endswith("was")}
        maker.press(address, **blank | own)
        assert maker.status == 200, [n.text for n in maker.page.root.all("li")]


def add_lines(maker: OwnMaker, address: str, name: str) -> None:
    """Press the buttons that add the lines a field stands in."""
    parts = name.split(".")
    for position, part in enumerate(parts):
        line = ".".join(parts[: position + 1])
        while part.isdigit() and not any(n.startswith(f"{line}.") for n in names_on(maker.page)):
            maker.press(address, f"add {'.'.join(parts[:position])}")
            assert maker.status == 200


@pytest.mark.parametrize("workshop", [load_workshop(demo_workshop()), full()], ids=["demo", "full"])
def test_a_workshop_entered_on_the_pages_is_the_one_of_its_file(
    tmp_path: Path, workshop: Workshop
) -> None:
    plain = sample_yarn(colours={"oat": "#d9c9a3"}, put_ups=(SMALL,), stock=())
    timing = Timing(stitch="sc", stitches=10, minutes=1)
    bare = {"swatches": (), "timings": (timing,), "fees": (), "patterns": (), "exchange": {}}
    another = sample_workshop(name="Another", yarns=(plain,), **bare)
    another = replace(another, delivery=Delivery(), calendar=WorkingCalendar())
    with own_maker(tmp_path, another) as maker:
        enter(maker, workshop)
        assert WORKSHOP.write(maker.workshop, FILE) == WORKSHOP.write(workshop, FILE)
        assert maker.workshop == workshop


def test_a_page_that_is_saved_as_it_is_makes_no_version(maker: OwnMaker) -> None:
    for page in OWN_PAGES:
        maker.open(f"/{page.name}")
        maker.press(f"/{page.name}")
        assert (maker.status, maker.version) == (200, 1)


def test_names_that_others_go_by_are_told_apart() -> None:
    assert is_own_name("yarns.1.colours.2.name")
    assert not is_own_name("fees.1.name")
