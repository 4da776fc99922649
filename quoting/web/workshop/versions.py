"""The workshop as it was: its versions, each of which can be brought back."""

from __future__ import annotations

from datetime import datetime

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.ground.errors import Refused
from quoting.schema import load_workshop_text, workshop_text
from quoting.store.workshops import (
    bring_back,
    save_workshop,
    workshop_version,
    workshop_versions,
)
from quoting.web.downloads import download
from quoting.web.kept import book_now, moment_now
from quoting.web.shop import shop_now
from quoting.web.statuses import REFUSED
from quoting.web.workshop.names_in_use import uses_of_lost
from quoting.web.workshop.own_form import own_workshop
from quoting.wording import is_locale, mistake_sentence

blueprint = Blueprint("versions", __name__, url_prefix="/workshop/versions")

TOML = "application/toml"


@blueprint.get("")
def show(**told: object) -> str:
    """List the versions, the latest first."""
    return render_template(
        "workshop/versions.html",
        here="workshop",
        versions=workshop_versions(book_now()),
        moment=_moment,
        **told,
    )


def _moment(moment: datetime) -> str:
    """Return a moment by this computer's clock."""
    here = moment.astimezone()
    return f"{shop_now().speech.day(here.date())}, {here:%H:%M}"


@blueprint.post("/<int:number>/back")
def back(number: int) -> ResponseReturnValue:
    """Bring a version back, as the one from now on, unless an open order needs what it lacks."""
    book = book_now()
    earlier = workshop_version(book, number).workshop
    uses = uses_of_lost(own_workshop(shop_now()), earlier, book)
    if uses:
        return show(uses=uses, wanted=number), REFUSED
    version = bring_back(book, number, now=moment_now())
    return redirect(url_for("versions.show", saved=version.number), 303)


@blueprint.get("/<int:number>/workshop.toml")
def file(number: int) -> ResponseReturnValue:
    """Send a version as a workshop file."""
    kept = workshop_version(book_now(), number)
    text = workshop_text(kept.workshop, kept.workshop.speaks)
    return download(text.encode(), "workshop", "toml", TOML)


@blueprint.post("/file")
def read() -> ResponseReturnValue:
    """Keep the workshop of a file as the next version, or tell every mistake and keep nothing."""
    sent, book, shop = request.files.get("file"), book_now(), shop_now()
    if sent is None or not sent.filename:
        return redirect(url_for("versions.show"), 303)
    try:
        workshop = load_workshop_text(sent.read(), is_locale)
        uses = uses_of_lost(own_workshop(shop), workshop, book)
        if uses:
            return show(uses=uses, file_name=sent.filename), REFUSED
        version = save_workshop(book, workshop, now=moment_now(), based_on=shop.version)
    except Refused as refused:
        said = [(m.path, mistake_sentence(m, shop.speech)) for m in refused.mistakes]
        return show(said=said, file_name=sent.filename), REFUSED
    return redirect(url_for("versions.show", saved=version.number), 303)


@blueprint.get("/file")
@blueprint.get("/<int:number>/back")
def again(number: int = 0) -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the list."""
    del number
    return redirect(url_for("versions.show"))
