"""From the form to an order: every mistake in it at once, each at its place."""

from __future__ import annotations

from collections.abc import Mapping
from decimal import Decimal
from types import MappingProxyType

from quoting.core.design import BorderBand, ColourSource, Corner, Design, Section, StopAt, Stripe
from quoting.core.errors import Refused
from quoting.core.order import Extra, Order, Terms, check_order
from quoting.core.terms import Target
from quoting.core.workshop import Workshop
from quoting.web.drafts import Notes, Sheet
from quoting.web.order_form import OrderForm


def read_order(form: OrderForm, workshop: Workshop) -> Order:
    """Return the order that the form says. Errors: one refusal with every mistake."""
    notes = Notes()
    order = _order(Sheet(form, notes))
    try:
        check_order(order, workshop)
    except Refused as refused:
        notes.keep(refused.mistakes)
    notes.done()
    return order


def _order(sheet: Sheet) -> Order:
    head = sheet.part("order")
    return sheet.build(
        Order,
        title=head.need("title", "-"),
        buyer=head.may("buyer", ""),
        for_baby=head.may("for_baby"),
        quantity=head.may("quantity", 1),
        wanted_by=head.may("wanted_by"),
        deliver_to=head.may("deliver_to"),
        pays_in=head.may("pays_in"),
        notes=head.may("notes", ""),
        design=_design(sheet.part("blanket")),
        extras=tuple(_extra(line) for line in sheet.lines("extras")),
        terms=_terms(sheet.part("price")),
    )


def _design(sheet: Sheet) -> Design:
    return sheet.build(
        Design,
        width_cm=sheet.need("width", 1.0),
        height_cm=sheet.need("height", 1.0),
        stitch=sheet.need("stitch", "-"),
        yarn=sheet.need("yarn", "-"),
        stitches=sheet.may("stitches"),
        multiple=sheet.may("multiple"),
        plus=sheet.may("plus"),
        stop_at=sheet.may("stop_at", StopAt.REPEAT),
        mix_lots=sheet.may("mix_lots"),
        first_rows=_stripes(sheet, "first_rows"),
        sections=tuple(_section(line) for line in sheet.lines("sections")),
        last_rows=_stripes(sheet, "last_rows"),
        border=tuple(_band(line) for line in sheet.lines("border")),
        colours=_colours(sheet),
    )


def _stripes(sheet: Sheet, name: str) -> tuple[Stripe, ...]:
    return tuple(
        line.build(
            Stripe,
            colour=line.need("colour", "-"),
            rows=line.need("rows", 1),
            stitch=line.may("stitch"),
        )
        for line in sheet.lines(name)
    )


def _section(sheet: Sheet) -> Section:
    return sheet.build(
        Section,
        stripes=_stripes(sheet, "stripes"),
        share=sheet.may("share"),
        repeats=sheet.may("repeats"),
    )


def _band(sheet: Sheet) -> BorderBand:
    return sheet.build(
        BorderBand,
        stitch=sheet.need("stitch", "-"),
        colour=sheet.need("colour", "-"),
        rounds=sheet.may("rounds", 1),
        row_end_ratio=sheet.may("row_end_ratio"),
        corner=sheet.may("corner", Corner.CHAIN),
    )


def _extra(sheet: Sheet) -> Extra:
    return sheet.build(
        Extra,
        what=sheet.need("what", "-"),
        cost=sheet.may("cost", Decimal(0)),
        minutes=sheet.may("minutes", 0.0),
        colour=sheet.may("colour"),
        yarn_m=sheet.may("metres", 0.0),
    )


def _terms(sheet: Sheet) -> Terms:
    wishes = {name: sheet.may(name) for name in ("margin", "markup", "given")}
    wished = any(wish is not None for wish in wishes.values())
    return sheet.build(
        Terms,
        target=sheet.build(Target, **wishes) if wished else None,
        discount=sheet.may("discount", 0.0),
        rush=sheet.may("rush", 0.0),
    )


def _colours(sheet: Sheet) -> Mapping[str, ColourSource]:
    found: dict[str, ColourSource] = {}
    for line in sheet.lines("colours"):
        name, yarn, colour = (line.need(part, None) for part in ("name", "yarn", "colour"))
        if name is None:
            continue
        if name in found:
            line.wrong("name", "given-twice", read=name)
        if yarn is None or colour is None:
            sheet.notes.close(f"blanket.colours.{name}")
        found[name] = ColourSource(yarn=yarn or "-", colour=colour or "-")
    return MappingProxyType(found)
