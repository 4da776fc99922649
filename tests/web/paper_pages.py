"""A maker at the papers of an order of hers."""

from __future__ import annotations

from typing import Any

from quoting.core.workshop.own_words import OwnWords
from quoting.core.workshop.workshop import Workshop
from tests.examples import sample_workshop
from tests.web.book_pages import BookMaker
from tests.web.making_pages import DAY, write_line
from tests.web.pages import Page

OWN = OwnWords(contact="hello@ottermoor.example", address="Otter Lane\nOttermoor", care="By hand.")


def shop(**changes: Any) -> Workshop:
    """Return the workshop of the scenario, whose maker says some things herself."""
    return sample_workshop(**({"own_words": OWN} | changes))


def pay(maker: BookMaker, address: str, amount: str) -> None:
    """Write money down."""
    assert write_line(maker, address, "payment", amount=amount, day=DAY).status_code == 303


def papers(maker: BookMaker, address: str) -> Page:
    """Open the papers of an order."""
    return maker.open(f"{address}/papers")


def write(
    maker: BookMaker,
    address: str,
    kind: str,
    start: Page | None = None,
    **typed: str,
) -> str:
    """Press the button of a form of the page, and return where it leads.

    Of several receipts that can be written it is the first.
    """
    page = start or papers(maker, address)
    form = receipt_forms(page)[0] if kind == "receipt" else kind
    fields = page.typed(form) | {f"{kind}.{name}": text for name, text in typed.items()}
    reply = maker.client.post(f"{address}/papers/{kind}", data=fields)
    assert reply.status_code == 303, reply.text
    return str(reply.location)


def receipt_forms(page: Page) -> list[str]:
    """Return the names of the forms that write a receipt."""
    names = (str(form.attributes.get("id", "")) for form in page.root.all("form"))
    return [name for name in names if name.startswith("receipt-")]


def words(page: Page) -> str:
    """Return what a page says, its spaces as one."""
    return " ".join(page.root.text.split())


def amounts(page: Page) -> dict[str, str]:
    """Return the amounts of a paper by their names."""
    rows = [list(row.all(lambda n: n.tag in {"th", "td"})) for row in page.root.all("tr")]
    told = [[" ".join(cell.text.split()) for cell in row] for row in rows]
    return {row[0]: row[1] for row in told if len(row) == 2}
