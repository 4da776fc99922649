"""What the maker decided: pay, price, fees, tax, delivery, calendar; and a file to begin with."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response, render_template

from quoting.core.workshop.euro_rates import is_old
from quoting.places import demo_workshop
from quoting.web.downloads import download
from quoting.web.shop import shop_now
from quoting.web.workshop.pay_form import PayAnswer, blank_pay

blueprint = Blueprint("workshop", __name__)


@blueprint.get("/workshop")
def show() -> str:
    """Show what the workshop file says of everything that is not measured."""
    return workshop_page()


def workshop_page(*, pay: PayAnswer | None = None, **told: Any) -> str:
    """Return the page, with the answer of the pay form and what became of fetching rates."""
    shop = shop_now()
    return render_template(
        "workshop/show.html",
        here="workshop",
        pay=pay or blank_pay(shop),
        old=shop.rates is not None and is_old(shop.rates.day, shop.today()),
        to_come=shop.rates is not None and shop.rates.day > shop.today(),
        **told,
    )


@blueprint.get("/workshop.toml")
def starter() -> Response:
    """Send the demo's workshop file, for a maker to put her own figures into."""
    return download(demo_workshop().read_bytes(), "workshop", "toml", "application/toml")
