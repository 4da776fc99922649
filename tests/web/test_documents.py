"""What is made of an order: the buyer's page, the spreadsheet, the order file."""

from dataclasses import replace
from io import BytesIO

import pytest
from openpyxl import load_workbook

from quoting.core.ground.cautions import Reader
from quoting.core.workshop.selling import Deposit, Tax
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema import load_order_text, order_text
from quoting.wording import caution_sentence
from tests.examples import changed_design, sample_order, sample_workshop
from tests.web.conftest import Maker, maker_in
from tests.web.pages import Page
from tests.web.test_worktable import QUOTE, SAY


def test_the_quote_tells_the_buyer_what_she_pays_and_until_when(maker: Maker) -> None:
    page = maker.send("/quote")
    rows = {row[0]: row[-1] for row in _rows(page)}
    assert rows["Total"] == SAY.money(QUOTE.price.total)
    assert rows["Deposit, when you accept"] == SAY.money(QUOTE.price.deposit)
    assert rows["Balance, before it is sent"] == SAY.money(QUOTE.price.balance)
    for words in (QUOTE.number, "Rosalind Quill", SAY.day(QUOTE.valid_until), "dry flat"):
        assert words in page.root.text


def test_a_deposit_of_all_is_one_payment_and_leaves_no_balance() -> None:
    pricing = replace(sample_workshop().pricing, deposit=Deposit(share=1.0))
    page = maker_in(sample_workshop(pricing=pricing)).send("/quote")
    rows = {row[0]: row[-1] for row in _rows(page)}
    assert rows["All of it, when you accept"] == rows["Total"]
    assert not any("Balance" in name or "Deposit" in name for name in rows)


def _rows(page: Page) -> list[list[str]]:
    table = next(page.root.all("table"))
    return [
        [cell.text for cell in row.all(lambda node: node.tag in {"th", "td"})]
        for row in table.all("tr")
    ]


def test_the_quote_keeps_the_makers_costs_to_herself(maker: Maker) -> None:
    text = maker.send("/quote").root.text
    hidden = (QUOTE.price.cost, QUOTE.price.profit, QUOTE.price.earned_per_hour)
    assert not any(SAY.bare_money(amount) in text for amount in hidden)
    assert "14.00" not in text
    assert "margin" not in text.lower()


def test_a_baby_blankets_quote_says_where_it_does_not_belong(maker: Maker) -> None:
    assert "does not belong where an infant sleeps" in maker.send("/quote").root.text


def test_a_cot_blankets_quote_says_so_without_a_tick_in_the_words_of_the_buyers_country(
    maker: Maker,
) -> None:
    form = maker.open().typed()
    del form["order.for_baby"]
    text = Page(maker.client.post("/quote", data=form).text).root.text
    assert "does not belong where an infant sleeps" in text
    assert "the NHS advises" in text
    assert "American" not in text


def test_the_buyer_reads_every_caution_for_her_and_none_for_the_maker(maker: Maker) -> None:
    page = maker.send("/quote")
    told = [node.text for node in page.root.all("p") if node.text.startswith("Please note:")]
    buyers, makers = (
        [caution_sentence(caution, SAY) for caution in QUOTE.cautions if caution.reader is reader]
        for reader in (Reader.BUYER, Reader.MAKER)
    )
    assert told == [f"Please note: {sentence}" for sentence in buyers]
    assert makers
    assert not any(sentence in page.root.text for sentence in makers)


@pytest.mark.parametrize("registered", [True, False])
def test_tax_is_named_only_by_a_registered_maker(registered: bool) -> None:  # noqa: FBT001
    tax = Tax(registered=registered, rate=0.2)
    text = maker_in(sample_workshop(tax=tax)).send("/quote").root.text
    assert ("Tax inside it, 20%" in text) is registered


def test_a_tax_rate_is_said_in_full() -> None:
    tax = Tax(registered=True, rate=0.08875)
    maker = maker_in(sample_workshop(tax=tax))
    assert "Tax inside it, 8.875%" in maker.send("/quote").root.text
    assert "8.875%, included" in maker.open("/workshop").root.text


def test_the_spreadsheet_has_the_figures_of_the_page(maker: Maker) -> None:
    reply = maker.client.post("/workbook", data=maker.open().typed())
    assert reply.headers["Content-Disposition"].startswith('attachment; filename="costing-2026-')
    book = load_workbook(BytesIO(reply.data), data_only=True)
    values = {cell.value for sheet in book for row in sheet.iter_rows() for cell in row}
    for amount in (QUOTE.price.total, QUOTE.price.cost, QUOTE.price.price):
        assert float(amount) in {float(v) for v in values if isinstance(v, int | float)}


def test_an_order_saved_from_the_form_is_the_order_that_was_read_into_it(maker: Maker) -> None:
    saved = maker.client.post("/order-file", data=maker.open().typed())
    assert 'filename="order-cot-blanket-in-moorland-stripes.toml"' in str(saved.headers)
    order = sample_order()
    (section,) = order.design.body.sections
    usual = changed_design(
        order.design, sections=(replace(section, share=None),)
    )  # a share of 1 is blank
    assert load_order_text(saved.data, sample_workshop()) == replace(order, design=usual)


def test_an_order_file_fills_the_form(maker: Maker) -> None:
    text = order_text(sample_order(title="Another"), Vocabulary.UK)
    assert maker.give(text).labelled("Title").attributes["value"] == "Another"


def test_a_bad_order_file_is_told_with_every_place(maker: Maker) -> None:
    text = order_text(sample_order(), Vocabulary.US)
    bad = text.replace('"80 cm"', '"0 cm"').replace('"teal"', '"puce"')
    places = [row[0] for row in maker.give(bad).table("Place in the file")[1:]]
    assert maker.status == 422
    assert places == ["blanket.width", "blanket.sections.1.stripes.1.colour"]


def test_a_name_with_accents_is_saved_under_a_plain_and_a_full_name(maker: Maker) -> None:
    fields = maker.open().typed() | {"order.title": 'Größe "1" / Čárka'}
    named = maker.client.post("/order-file", data=fields).headers["Content-Disposition"]
    assert 'filename="order-groe-1-carka.toml"' in named
    assert "filename*=UTF-8''order-gr%C3%B6%C3%9Fe-1-%C4%8D%C3%A1rka.toml" in named
