"""The workshop's yarns: how each is sold, what it costs by length, what is on the shelf."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

from flask import Blueprint, render_template

from quoting.core.ground.measures import CM_PER, CM_PER_YARD
from quoting.core.ground.money import exact
from quoting.core.workshop.categories import HOOK_MM
from quoting.core.workshop.yarns import PutUp, Yarn
from quoting.web.kept import kept_shop
from quoting.web.shop import shop_now
from quoting.web.workshop.own_pages import YARN
from quoting.web.workshop.own_views import page_as_kept

blueprint = Blueprint("yarn", __name__)


@blueprint.get("/yarn")
def show() -> str:
    """Show every yarn with its colours, its put-ups and its stock; with a book, to be changed."""
    follows = yarn_follows()
    if kept_shop() is None:
        return render_template("yarn/show.html", **follows)
    return page_as_kept(YARN, **follows)


def yarn_follows() -> dict[str, Any]:
    """Return what the page needs to tell what follows from the yarns."""
    return {"per_length": _price_per_length, "in_100_g": _metres_in_100_g, "hooks": HOOK_MM}


def _metres_in_100_g(yarn: Yarn) -> float:
    """Return the length of 100 g of a yarn in metres, as shops tell it."""
    return 100 * yarn.metres_per_gram


def _price_per_length(put_up: PutUp) -> Decimal:
    """Return the price of a metre, or of a yard where the maker works in inches."""
    lengths = exact(put_up.length_m) * put_up.pack
    if shop_now().speech.inches:
        lengths = lengths * exact(CM_PER["m"]) / exact(CM_PER_YARD)
    return put_up.price / lengths
