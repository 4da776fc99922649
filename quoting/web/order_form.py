"""The order form: a field for every key of an order file, under the same name."""

from __future__ import annotations

from typing import Any

from werkzeug.datastructures import MultiDict
from wtforms import Form

from quoting.core.design import Corner, StopAt
from quoting.notation import YARN_LENGTH
from quoting.web.fields import (
    Choice,
    Count,
    Day,
    Measure,
    Money,
    Number,
    OneOf,
    PerCent,
    Text,
    Tick,
)
from quoting.web.form_room import lines_with_room
from quoting.web.lines import Lines, Part, line_numbers
from quoting.web.shop import Shop


class StripeForm(Form):
    """So many rows of one colour."""

    colour = Choice("Colour")
    rows = Count("Rows")
    stitch = Choice("Stitch")


class SectionForm(Form):
    """Stripes that repeat."""

    stripes = Lines(StripeForm, "Stripes")
    share = Number("Share of the height")
    repeats = Count("Repeats")


class BandForm(Form):
    """Border rounds of one stitch and colour."""

    stitch = Choice("Stitch")
    colour = Choice("Colour")
    rounds = Count("Rounds")
    row_end_ratio = Number("Stitches per row end")
    corner = OneOf("Corner", Corner)


class ColourForm(Form):
    """A colour of the design that comes from another yarn."""

    name = Text("Name in this design")
    yarn = Choice("Yarn")
    colour = Choice("Its colour there")


class ExtraForm(Form):
    """Something that goes with the blanket."""

    what = Text("What")
    cost = Money("Cost")
    minutes = Number("Minutes")
    colour = Choice("Yarn colour")
    metres = Measure("Length of yarn", YARN_LENGTH)


class HeadForm(Form):
    """Who asks, and for when."""

    title = Text("Title")
    buyer = Text("Buyer")
    for_baby = Tick("For a baby or a child under three")
    quantity = Count("How many")
    wanted_by = Day("Wanted by")
    deliver_to = Text("Country")
    pays_in = Choice("Buyer pays in")
    notes = Text("Notes")


class BlanketForm(Form):
    """The blanket itself."""

    width = Measure("Width")
    height = Measure("Height")
    stitch = Choice("Stitch or pattern")
    yarn = Choice("Yarn")
    first_rows = Lines(StripeForm, "First rows")
    sections = Lines(SectionForm, "Sections")
    last_rows = Lines(StripeForm, "Last rows")
    border = Lines(BandForm, "Border")
    colours = Lines(ColourForm, "Colours from another yarn")
    stop_at = OneOf("The last section may end at a whole", StopAt)
    mix_lots = Tick("A colour may come from several dye lots")
    stitches = Count("Stitches in a row")
    multiple = Count("Stitch repeat: a multiple of")
    plus = Count("plus")


TARGETS = {"given": "A price of my own", "margin": "margin", "markup": "markup"}
"""What the form calls the ways to make a price, by their keys in a file."""


class PriceForm(Form):
    """What is particular to the price of this order."""

    given = Money(TARGETS["given"])
    margin = PerCent(f"or {TARGETS['margin']}, %")
    markup = PerCent(f"or {TARGETS['markup']}, %")
    discount = PerCent("Discount, %")
    rush = PerCent("Rush, % more")


class OrderForm(Form):
    """The whole order."""

    order = Part(HeadForm)
    blanket = Part(BlanketForm)
    extras = Lines(ExtraForm, "Extras")
    price = Part(PriceForm)


def bind_form(shop: Shop, sent: MultiDict[str, str]) -> OrderForm:
    """Return the form with what was sent in it, as far as it has room for its lines."""
    lines, crowded = lines_with_room(line_numbers(sent), shop)
    return OrderForm(sent, meta={"shop": shop, "lines": lines, "crowded": crowded})


def fill_form(shop: Shop, values: dict[str, Any]) -> OrderForm:
    """Return the form with values in it, by the names of its fields."""
    return OrderForm(data=values, meta={"shop": shop, "lines": {}, "crowded": None})
