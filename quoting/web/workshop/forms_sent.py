"""What the Workshop page does: fetch the day's reference rates, reckon the hourly pay."""

from __future__ import annotations

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.ground.errors import Refused
from quoting.rates import fetch_rates, keep_rates
from quoting.web.shop import Shop, look_again, shop_now, shops_now
from quoting.web.statuses import REFUSED
from quoting.web.workshop.pages import workshop_page
from quoting.web.workshop.pay_form import answer_pay
from quoting.wording import mistake_sentence

blueprint = Blueprint("workshop_forms", __name__, url_prefix="/workshop")

NOT_DONE = 502


@blueprint.post("/rates")
def rates() -> ResponseReturnValue:
    """Fetch the day's reference rates. Nothing else on any page uses the network."""
    shop = shop_now()
    try:
        fetched = fetch_rates()
    except Refused as refused:
        told = mistake_sentence(refused.mistakes[0], shop.speech)
        return workshop_page(rates_failed=told), NOT_DONE
    shops_now().take_rates(fetched)
    look_again()
    day = shop.speech.day(fetched.day)
    told = f"Fetched: the reference rates of {day}, {len(fetched.rates)} currencies."
    return workshop_page(rates_told=told, rates_failed=_keep(shop_now()))


@blueprint.get("/rates")
@blueprint.get("/pay")
def again() -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the page itself."""
    return redirect(url_for("workshop.show"))


def _keep(shop: Shop) -> str:
    """Keep the rates for the next start; return why that could not be done, or nothing."""
    if shop.rates is None or shop.rates_file is None:
        return ""
    try:
        keep_rates(shop.rates, shop.rates_file)
    except OSError as error:
        reason = error.strerror or error
        return f"They serve until the program ends, but could not be kept: {reason}."
    return ""


@blueprint.post("/pay")
def pay() -> ResponseReturnValue:
    """Reckon what an hour must carry from what is wanted of a year."""
    answer = answer_pay(request.form, shop_now())
    page = workshop_page(pay=answer)
    return (page, REFUSED) if answer.said else page


def resume() -> str:
    """Return the page with all that was typed, when it comes from before a restart."""
    typed = answer_pay(request.form, shop_now()) if "income" in request.form else None
    return workshop_page(pay=typed, stale=True)
