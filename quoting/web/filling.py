"""From an order to what stands in the form, and what stands in it to begin with."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields
from typing import Any

from quoting.core.design import BorderBand, Design, Section, Stripe
from quoting.core.order import Extra, Order
from quoting.core.workshop import Workshop

START_TITLE = "Blanket"


def order_values(order: Order) -> dict[str, Any]:
    """Return an order's values by the names of the form's fields."""
    target = order.terms.target
    return {
        "order": _plain(order, "title buyer for_baby quantity wanted_by deliver_to pays_in notes"),
        "blanket": _blanket(order.design),
        "extras": [_extra(extra) for extra in order.extras],
        "price": {
            "given": target and target.given,
            "margin": target and target.margin,
            "markup": target and target.markup,
            "discount": order.terms.discount or None,
            "rush": order.terms.rush or None,
        },
    }


def start_values(workshop: Workshop) -> dict[str, Any]:
    """Return what an empty form begins with: all but the size."""
    yarn = workshop.yarns[0]
    swatch = next(iter(workshop.swatches), None)
    if swatch is not None:
        yarn = workshop.yarn(swatch.yarn)
    stripe = {"colour": next(iter(yarn.colours)), "rows": 1}
    return {
        "order": {"title": START_TITLE, "quantity": 1},
        "blanket": {
            "yarn": yarn.name,
            "stitch": swatch.stitch if swatch else workshop.timings[0].stitch,
            "sections": [{"stripes": [stripe]}],
        },
    }


def _plain(value: Any, names: str) -> dict[str, Any]:
    return {name: getattr(value, name) for name in names.split()}


def _blanket(design: Design) -> dict[str, Any]:
    values = _plain(design, "stitch yarn stop_at mix_lots stitches multiple plus")
    return values | {
        "width": design.width_cm,
        "height": design.height_cm,
        "first_rows": [_stripe(stripe) for stripe in design.first_rows],
        "last_rows": [_stripe(stripe) for stripe in design.last_rows],
        "sections": section_values(design),
        "border": [_band(band) for band in design.border],
        "colours": [
            {"name": name, "yarn": source.yarn, "colour": source.colour}
            for name, source in design.colours.items()
        ],
    }


def section_values(design: Design) -> list[Mapping[str, Any]]:
    """Return a design's sections by the names of the form's fields."""
    return [_section(section) for section in design.sections]


def _stripe(stripe: Stripe) -> Mapping[str, Any]:
    return _plain(stripe, "colour rows stitch")


def _section(section: Section) -> Mapping[str, Any]:
    """Return a section's values; the usual share is left blank, so that repeats can be typed."""
    stripes = [_stripe(stripe) for stripe in section.stripes]
    share = section.share if section.share != 1 else None
    return {"stripes": stripes, "share": share, "repeats": section.repeats}


def _band(band: BorderBand) -> Mapping[str, Any]:
    return {item.name: getattr(band, item.name) for item in fields(band)}


def _extra(extra: Extra) -> Mapping[str, Any]:
    values = _plain(extra, "what cost colour")
    return values | {"minutes": extra.minutes or None, "metres": extra.yarn_m or None}
