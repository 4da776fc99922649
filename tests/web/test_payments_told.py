"""Payments and extras that may be left out, from what is typed to the pages that tell them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest

from quoting.core.workshop.selling import Deposit, RestDue
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker, maker_with_book
from tests.web.conftest import maker_in
from tests.web.making_pages import agree, put_at, write_line
from tests.web.pages import Page

SHOP = sample_workshop(
    pricing=replace(
        sample_workshop().pricing,
        deposit=Deposit(share=0.3),
        at_half=0.25,
        rest_due=RestDue.ON_DELIVERY,
    )
)


@pytest.fixture
def maker(tmp_path: Path) -> Iterator[BookMaker]:
    with maker_with_book(tmp_path / "book.db", SHOP) as maker:
        yield maker


def beside(page: Page) -> dict[str, str]:
    """Return what stands beside each name of the lists of facts."""
    names, said = ([node.text for node in page.root.all(tag)] for tag in ("dt", "dd"))
    return dict(zip(names, said, strict=True))


def offer_rows(page: Page) -> dict[str, str]:
    table = next(page.root.all("table"))
    rows = [[c.text for c in row.all(lambda n: n.tag in {"th", "td"})] for row in table.all("tr")]
    return {row[0]: row[-1] for row in rows}


def test_the_buyer_reads_three_payments_and_when_each_is_due() -> None:
    """By hand: of 205 three tenths are 61.50, a quarter is 51.25, and 92.25 is left."""
    rows = offer_rows(maker_in(SHOP).send("/quote", price__given="200"))
    assert rows["Deposit, when you accept"] == "£61.50"
    assert rows["Part payment, when half is made"] == "£51.25"
    assert rows["Balance, on delivery"] == "£92.25"


def test_an_extra_that_is_ticked_is_told_with_what_the_order_is_less_without_it() -> None:
    maker = maker_in(SHOP)
    plain = maker.send("/quote").root.text
    assert "Without Gift box" not in plain
    told = maker.send("/quote", extras__1__optional="yes").root.text
    assert "Gift box. Without Gift box: £" in told
    given = maker.send("/quote", extras__1__optional="yes", price__given="200").root.text
    assert "Without Gift box" not in given


def test_the_page_of_an_order_tells_what_is_due_as_the_work_goes_on(maker: BookMaker) -> None:
    address = agree(maker)

    def due() -> dict[str, str]:
        return beside(maker.open(f"{address}/making"))

    agreed = due()
    deposit = agreed["Due now"]
    assert agreed["Deposit"] == f"{deposit}, {deposit} still due"
    assert agreed["Part payment"].endswith(", when half is made")
    assert agreed["Rest"].endswith(", on delivery")
    write_line(maker, address, "payment", amount=deposit)
    assert due()["Deposit"].endswith(", paid")
    assert "Due now" not in due()
    put_at(maker, address, "on-the-hook", "finished")
    half = due()
    assert half["Part payment"] == f"{half['Due now']}, {half['Due now']} still due"
    put_at(maker, address, "handed-over")
    assert due()["Rest"].endswith(" still due")
    assert due()["Due now"] == due()["Still to pay in all"]
