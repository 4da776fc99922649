"""The guide of a kept order is by its agreed quote; that of the worktable by what is typed."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from quoting.core.workshop.habits import Habits
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import TODAY, sample_order, sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.conftest import Maker
from tests.web.making_pages import SIZE, agree, put_at
from tests.web.pages import Page


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    with maker_with_book(tmp_path / "book.db", sample_workshop()) as maker:
        yield maker


def steps(page: Page) -> list[list[str]]:
    return page.table("What to work")


def test_an_order_that_is_asked_is_guided_as_it_stands(maker: BookMaker) -> None:
    address = maker.begin(**SIZE)
    assert "chain 102" in steps(maker.open(f"{address}/guide"))[1][1]
    maker.save(address, blanket__width="60 cm")
    assert "chain 77" in steps(maker.open(f"{address}/guide"))[1][1]


def test_an_order_that_is_made_is_guided_by_its_agreed_quote(maker: BookMaker) -> None:
    address = agree(maker)
    maker.save(address, blanket__width="60 cm")
    assert "chain 102" in steps(maker.open(f"{address}/guide"))[1][1]


def test_an_order_that_is_not_whole_has_no_guide_and_says_so(maker: BookMaker) -> None:
    address = maker.begin()
    assert "cannot be worked out" in maker.open(f"{address}/guide").root.text


def test_the_pages_of_an_order_lead_to_its_guide_and_to_its_row(maker: BookMaker) -> None:
    address = agree(maker)
    put_at(maker, address, "on-the-hook")
    for start in (address, f"{address}/making"):
        links = {node.attributes.get("href") for node in maker.open(start).root.all("a")}
        assert {f"{address}/guide", f"{address}/guide/row"} <= links


def test_every_step_and_every_end_has_a_box_to_tick_on_paper(maker: BookMaker) -> None:
    page = maker.open(f"{agree(maker)}/guide")
    assert all(row[0] == "☐" for row in steps(page)[1:])
    assert all(row[0] == "☐" for row in page.table("Which")[1:])


@pytest.mark.parametrize(("left_handed", "edge"), [(False, "right-hand"), (True, "left-hand")])
def test_the_worktable_has_a_guide_without_a_book_for_either_hand(
    left_handed: bool,  # noqa: FBT001
    edge: str,
) -> None:
    workshop = sample_workshop(habits=Habits(left_handed=left_handed))
    shop = open_shop(workshop, today=lambda: TODAY).starting_with(sample_order())
    maker = Maker(create_app(shop).test_client())
    typed = maker.open("/").typed()
    page = Page(maker.client.post("/guide", data=typed).text)
    assert f"begins at the {edge} edge" in page.root.text
    assert "34 times" in page.root.text
    wrong = maker.client.post("/guide", data=typed | {"blanket.width": "wide"})
    assert wrong.status_code == 422
    assert maker.client.get("/guide").status_code == 302
