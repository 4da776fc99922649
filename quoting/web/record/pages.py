"""How good my quotes are: what finished orders say, ranges taken over, the accounts."""

from __future__ import annotations

from dataclasses import replace

from flask import Blueprint, abort, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.ground.errors import Refused
from quoting.core.making.track_record import track_record
from quoting.schema.figures import NUMBER
from quoting.schema.notation import RECORD
from quoting.store.workshops import save_workshop
from quoting.web.kept import book_now, moment_now
from quoting.web.record.cases import cases_in
from quoting.web.record.record_views import view_record
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.web.workshop.own_form import own_workshop
from quoting.wording import mistake_sentence

blueprint = Blueprint("track_record", __name__, url_prefix="/orders")

RANGES = ("hours", "yarn")


@blueprint.get("/how-good")
def show(**told: object) -> str:
    """Show what the finished orders say."""
    shop = shop_now()
    record = track_record(cases_in(book_now()), shop.workshop.ranges)
    return render_template(
        "record/show.html",
        here="orders",
        view=view_record(record, shop.speech),
        taken=request.args.get("taken", ""),
        this_year=shop.today().year,
        **told,
    )


@blueprint.post("/how-good/widen")
def widen() -> ResponseReturnValue:
    """Take the factor of a range that was offered over into the workshop, as its next version."""
    key, shop = request.form.get("range", ""), shop_now()
    if key not in RANGES:
        abort(400)
    own = own_workshop(shop)
    try:
        factor = NUMBER.parse(request.form.get("factor", ""), RECORD)
        ranges = replace(own.ranges, **{key: factor})
        workshop = replace(own, ranges=ranges)
        save_workshop(book_now(), workshop, now=moment_now(), based_on=_based_on())
    except ValueError:
        abort(400)
    except Refused as refused:
        said = [mistake_sentence(mistake, shop.speech) for mistake in refused.mistakes]
        return show(said=said), REFUSED
    return redirect(url_for("track_record.show", taken=key), 303)


@blueprint.get("/how-good/widen")
def again() -> ResponseReturnValue:
    """Lead whoever opens this address anew to the page."""
    return redirect(url_for("track_record.show"))


def _based_on() -> int:
    return int(request.form.get("based_on", ""))
