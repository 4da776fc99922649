"""An order of many kinds on the worktable, and its answer as a person reads it."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

from quoting.core.order.in_rows import Stripe
from quoting.core.order.order import Order
from quoting.core.quote.quote import Quote, quote_order
from quoting.core.workshop.exchange import ExchangeRate
from quoting.core.workshop.selling import Deposit, Tax
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.core.workshop.yarns import PutUp
from quoting.schema import load_order_text, order_text
from quoting.wording import speech_of
from tests.examples import (
    TODAY,
    band,
    sample_design,
    sample_order,
    sample_workshop,
    sample_yarn,
    section,
)
from tests.web.conftest import maker_in
from tests.web.pages import Node, Page

SMALL = PutUp(weight_g=40, length_m=80, price=sample_yarn().put_ups[0].price)
EURO = ExchangeRate(currency="EUR", rate=Decimal("1.17"), day=TODAY, cushion=0.02)


def shop() -> Workshop:
    """Return a workshop with small balls, a tax inside the price, and a rate of exchange."""
    plain = sample_workshop()
    return replace(
        plain,
        yarns=(sample_yarn(put_ups=(SMALL,)),),
        tax=Tax(registered=True, rate=0.2),
        exchange={"EUR": EURO},
        pricing=replace(plain.pricing, deposit=Deposit(share=0.3)),
    )


def mixed_order(workshop: Workshop) -> Order:
    """Return an order of two sections, three kinds of stitch and a border of two colours."""
    tall = Stripe(colour="plum", rows=2, stitch="dc")
    two = section("teal", "rust", repeats=6)
    design = sample_design(
        width_cm=61,
        height_cm=75,
        sections=(replace(section("oat"), stripes=(tall, Stripe(colour="oat", rows=3))), two),
        border=(band(rounds=2), band(colour="teal")),
    )
    order = sample_order(design=design, pays_in="EUR")
    return load_order_text(order_text(order, Vocabulary.US), workshop)


SHOP = shop()
QUOTE: Quote = quote_order(mixed_order(SHOP), SHOP, today=TODAY)
SAY = speech_of(SHOP)


def answered() -> Page:
    """Return the page with that order on it."""
    return maker_in(SHOP).give(order_text(mixed_order(SHOP), Vocabulary.US))


def plain(text: object) -> str:
    """Return a text with plain spaces."""
    return " ".join(str(text).split())


def part(page: Page, name: str) -> Node:
    """Return the section that a heading names."""
    (found,) = page.root.all(lambda n: n.attributes.get("aria-labelledby") == f"h-{name}")
    return found


def columns(page: Page, heading: str) -> dict[str, list[str]]:
    """Return a table by its headings."""
    head, *rows = page.table(heading)
    return {name: [row[at] for row in rows] for at, name in enumerate(head)}


def told(page: Page, name: str) -> list[str]:
    """Return what is to be heeded in a section."""
    return [n.text for n in part(page, name).all("p") if n.attributes.get("class") == "caution"]
