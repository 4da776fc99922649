"""A workshop with two squares that were measured, and orders of such and from the centre."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from quoting.core.order.from_centre import FromCentre, RoundStripe
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Layout, MotifJoin
from quoting.core.order.order import Order
from quoting.core.workshop.motifs import Motif, MotifTiming, WeighedMotifs
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.swatches import Reading
from quoting.core.workshop.workshop import Workshop
from quoting.schema import load_order_text, order_text
from quoting.web import create_app
from quoting.web.shop import open_shop
from tests.examples import (
    TODAY,
    WOOL,
    band,
    sample_design,
    sample_order,
    sample_swatch,
    sample_workshop,
    sample_yarn,
)
from tests.web.conftest import Maker
from tests.web.pages import Page

FIVE = ("teal", "rust", "plum", "moss", "oat")

FEN = Motif(
    name="fen square",
    yarn=WOOL,
    counting=Counting.CLUSTERS,
    rounds=5,
    one_side_cm=15,
    weighed=WeighedMotifs(motifs=5, weight_g=60),
    timings=(MotifTiming(motifs=4, minutes=80),),
)
REED = replace(FEN, name="reed square", counting=Counting.SOLID, rounds=3, one_side_cm=9.0)

SLOE = "sloe dk"


def motif_workshop(**changes: Any) -> Workshop:
    """Return the workshop with squares of five and of three rounds, and a yarn besides."""
    tall = sample_swatch(stitch="dc", gauge=Reading(stitches=17, width_cm=10, rows=9, height_cm=10))
    other = sample_yarn(name=SLOE, colours={"sloe": "#2f2a4d"}, stock=())
    return sample_workshop(
        **{
            "yarns": (sample_yarn(), other),
            "motifs": (FEN, REED),
            "swatches": (sample_swatch(), tall),
            **changes,
        }
    )


def squares_body(**changes: Any) -> JoinedSquares:
    """Return squares in two layouts, crocheted together in oat."""
    layouts = (Layout(colours=FIVE, share=2), Layout(colours=FIVE[::-1]))
    join = MotifJoin(method=JoinMethod.SINGLE_CROCHET, colour="oat")
    return replace(JoinedSquares(motif=FEN.name, layouts=layouts, join=join), **changes)


def centre_body(**changes: Any) -> FromCentre:
    """Return a solid piece in two rounds of teal and one of oat."""
    stripes = (RoundStripe(colour="teal", rounds=2), RoundStripe(colour="oat"))
    return replace(FromCentre(counting=Counting.SOLID, stripes=stripes), **changes)


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
