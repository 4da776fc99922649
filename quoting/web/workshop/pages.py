"""What the maker decided: pay, price, fees, tax, delivery, calendar; and all of it as a file."""

from __future__ import annotations

from typing import Any

from flask import Blueprint, Response, render_template

from quoting.core.workshop.euro_rates import is_old
from quoting.schema import workshop_text
from quoting.web.downloads import download
from quoting.web.kept import kept_shop
from quoting.web.shop import shop_now
from quoting.web.workshop.own_form import own_workshop
from quoting.web.workshop.own_pages import WORKSHOP
from quoting.web.workshop.own_views import page_as_kept
from quoting.web.workshop.pay_form import PayAnswer, blank_pay

blueprint = Blueprint("workshop", __name__)


@blueprint.get("/workshop")
def show() -> str:
    """Show what the workshop file says of everything that is not measured."""
    return workshop_page()


def workshop_page(*, pay: PayAnswer | None = None, **told: Any) -> str:
    """Return the page, with the answer of the pay form and what became of fetching rates."""
    follows = workshop_follows() | ({"pay": pay} if pay else {}) | told
    if kept_shop() is None:
        return render_template("workshop/show.html", here="workshop", **follows)
    return page_as_kept(WORKSHOP, **follows)


def workshop_follows() -> dict[str, Any]:
    """Return what the page has besides its fields: the form of a year, how old rates are."""
    shop = shop_now()
    return {
        "pay": blank_pay(shop),
        "old": shop.rates is not None and is_old(shop.rates.day, shop.today()),
        "to_come": shop.rates is not None and shop.rates.day > shop.today(),
    }


@blueprint.get("/workshop.toml")
def as_file() -> Response:
    """Send the workshop that is served as a file, whether a book keeps it or a file has it."""
    own = own_workshop(shop_now())
    text = workshop_text(own, own.speaks)
    return download(text.encode(), "workshop", "toml", "application/toml")
