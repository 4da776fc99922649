"""Forgetting the buyer of an order: what will go and what stays, then the deed."""

from __future__ import annotations

from flask import Blueprint, redirect, render_template, request, url_for
from flask.typing import ResponseReturnValue

from quoting.files.security_log import SecurityEvent, tell_event
from quoting.store.backups import DAYS_KEPT, copies_folder
from quoting.store.forgetting import buyer_of, forget_buyer
from quoting.store.name_words import FORGOTTEN
from quoting.web.kept import book_now
from quoting.wording import people_texts

blueprint = Blueprint("forgetting", __name__, url_prefix="/orders/<int:order_id>/forget")

ALL = "all"


@blueprint.get("")
def show(order_id: int) -> str:
    """Show whom an order is of, what would go, and what would stay."""
    buyer = buyer_of(book_now(), order_id)
    return render_template("book/forget.html", here="orders", buyer=buyer, **_places(order_id))


@blueprint.post("")
def forget(order_id: int) -> ResponseReturnValue:
    """Forget the buyer in this order, or in all of hers, and lead to what is left to do."""
    everywhere = request.form.get("which") == ALL
    swept = forget_buyer(book_now(), order_id, everywhere=everywhere, told=people_texts)
    tell_event(SecurityEvent.BUYER_FORGOTTEN, request.remote_addr)
    traces = None if swept else "yes"
    return redirect(url_for("forgetting.done", order_id=order_id, traces=traces), 303)


@blueprint.get("/done")
def done(order_id: int) -> ResponseReturnValue:
    """Say that it is done, and what else there may be of her; where it is not, lead to it."""
    if buyer_of(book_now(), order_id).name != FORGOTTEN:
        return redirect(url_for("forgetting.show", order_id=order_id))
    traces = "traces" in request.args
    return render_template("book/forgotten.html", here="orders", traces=traces, **_places(order_id))


def _places(order_id: int) -> dict[str, object]:
    """Return where copies of the book are, and how many days have one; none of a server's."""
    path = book_now().path
    copies = "" if path is None else copies_folder(path).name
    return {"order_id": order_id, "copies": copies, "days_kept": DAYS_KEPT}
