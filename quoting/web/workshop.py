"""What the maker decided: pay, price, fees, tax, delivery, calendar; and a file to begin with."""

from __future__ import annotations

from flask import Blueprint, Response, render_template

from quoting.places import demo_workshop
from quoting.web.downloads import download

blueprint = Blueprint("workshop", __name__)


@blueprint.get("/workshop")
def show() -> str:
    """Show what the workshop file says of everything that is not measured."""
    return render_template("workshop/show.html")


@blueprint.get("/workshop.toml")
def starter() -> Response:
    """Send the demo's workshop file, for a maker to put her own figures into."""
    return download(demo_workshop().read_bytes(), "workshop", "toml", "application/toml")
