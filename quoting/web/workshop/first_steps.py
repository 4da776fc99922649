"""First steps: what a book without a workshop shows, and a workshop file read into a book."""

from __future__ import annotations

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from quoting.core.ground.errors import Refused
from quoting.schema import load_workshop_text
from quoting.store.workshops import save_workshop
from quoting.web.kept import book_now, moment_now
from quoting.web.orders.pages import REFUSED
from quoting.web.shop import shop_if_any
from quoting.wording import FILE_SPEECH, is_locale, mistake_sentence

blueprint = Blueprint("first_steps", __name__, url_prefix="/first-steps")


@blueprint.get("")
def show() -> ResponseReturnValue:
    """Say that no figures are entered yet, and how they can be."""
    if shop_if_any() is not None:
        return redirect(url_for("workshop.show"))
    return render_template("first_steps/show.html")


@blueprint.post("/read")
def read() -> ResponseReturnValue:
    """Keep the workshop of a file, or show every mistake of the file."""
    sent = request.files.get("file")
    if sent is None or not sent.filename:
        return redirect(url_for("first_steps.show"), 303)
    try:
        workshop = load_workshop_text(sent.read(), is_locale)
    except Refused as refused:
        said = [(m.path, mistake_sentence(m, FILE_SPEECH)) for m in refused.mistakes]
        page = render_template("first_steps/show.html", name=sent.filename, said=said)
        return page, REFUSED
    save_workshop(book_now(), workshop, now=moment_now())
    return redirect(url_for("workshop.show"), 303)


@blueprint.get("/read")
def again() -> ResponseReturnValue:
    """Lead whoever opens such an address anew to the page itself."""
    return redirect(url_for("first_steps.show"))
