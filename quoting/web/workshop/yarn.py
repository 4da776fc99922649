"""The workshop's yarns: how each is sold, what it costs by length, what is on the shelf."""

from __future__ import annotations

from decimal import Decimal

from flask import Blueprint, render_template

from quoting.core.ground.measures import CM_PER, CM_PER_YARD, tex
from quoting.core.ground.money import exact
from quoting.core.workshop.categories import HOOK_MM
from quoting.core.workshop.yarns import PutUp
from quoting.web.shop import shop_now

blueprint = Blueprint("yarn", __name__)


@blueprint.get("/yarn")
def show() -> str:
    """Show every yarn with its colours, its put-ups and its stock."""
    return render_template("yarn/show.html", per_length=_price_per_length, tex=tex, hooks=HOOK_MM)


def _price_per_length(put_up: PutUp) -> Decimal:
    """Return the price of a metre, or of a yard where the maker works in inches."""
    lengths = exact(put_up.length_m) * put_up.pack
    if shop_now().speech.inches:
        lengths = lengths * exact(CM_PER["m"]) / exact(CM_PER_YARD)
    return put_up.price / lengths
