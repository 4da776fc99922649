"""A workshop with two squares that were measured, and orders of such and from the centre."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from quoting.core.order.from_centre import FromCentre
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, MotifJoin
from quoting.core.order.order import Order
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.workshop import Workshop
from quoting.schema import load_order_text, order_text
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests import motif_examples
from tests.examples import TODAY, band, sample_design, sample_order, sample_yarn
from tests.motif_examples import FIVE, sample_motif
from tests.web.conftest import Maker
from tests.web.pages import Page

FEN = sample_motif()
REED = replace(FEN, name="reed square", counting=Counting.SOLID, rounds=3, one_side_cm=9.0)

SLOE = "sloe dk"


def motif_workshop(**changes: Any) -> Workshop:
    """Return the workshop with squares of five and of three rounds, and a yarn besides."""
    other = sample_yarn(name=SLOE, colours={"sloe": "#2f2a4d"}, stock=())
    yarns = (sample_yarn(), other)
    return motif_examples.motif_workshop(FEN, REED, **{"yarns": yarns, **changes})


def squares_body(**changes: Any) -> JoinedSquares:
    """Return squares in two layouts, crocheted together in oat."""
    layouts = (Layout(colours=FIVE, share=2), Layout(colours=FIVE[::-1]))
    join = MotifJoin(method=JoinMethod.SINGLE_CROCHET, colour="oat")
    return replace(JoinedSquares(motif=FEN.name, layouts=layouts, join=join), **changes)


def order_of(body: FromCentre | JoinedSquares, **changes: Any) -> Order:
    """Return an order of a body, 60 by 75 cm unless told otherwise, as a file gives it."""
    size = {"width_cm": 60, "height_cm": 75}
    border = (band(rounds=2),)
    design = sample_design(**{"stitch": "dc", "border": border, **size, **changes})
    order = sample_order(design=replace(design, body=body), deliver_to="GB")
    return load_order_text(order_text(order, Vocabulary.US), motif_workshop())


class MotifMaker(Maker):
    """A maker who has squares, an order on her form."""

    def __init__(self, order: Order, workshop: Workshop | None = None) -> None:
        shop = open_shop(workshop or motif_workshop(), today=lambda: TODAY)
        super().__init__(create_app(shop.starting_with(order)).test_client())

    def sends(self, page: Page, address: str = "/", **typed: str) -> Page:
        """Send a page's form with what is typed into it (`__` for a dot)."""
        fields = page.typed() | {name.replace("__", "."): text for name, text in typed.items()}
        reply = self.client.post(address, data=fields)
        self.status = reply.status_code
        return Page(reply.text)

    def file_of(self, page: Page) -> str:
        """Return the order file that a page's form is saved as."""
        return self.client.post("/order-file", data=page.typed()).text


def text_of(page: Page, name: str) -> str:
    """Return the words of a section of the answer."""
    (found,) = page.root.all(lambda n: n.attributes.get("aria-labelledby") == f"h-{name}")
    return found.text


def form_sends_its_file(order: Order) -> None:
    """Hold that a form with an order is saved as the order's file, and that both say its price."""
    maker = MotifMaker(order)
    page = maker.open()
    assert page.with_id("mistakes").text == ""
    assert load_order_text(maker.file_of(page), motif_workshop()) == order
    said = maker.give(order_text(order, Vocabulary.US))
    assert said.figure("Price") == page.figure("Price")
