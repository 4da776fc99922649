"""The application: its limits, its guard, its pages."""

from __future__ import annotations

import secrets

from flask import Flask, request
from flask_wtf.csrf import CSRFProtect

from quoting.places import templates_folder
from quoting.web import filters, turns
from quoting.web.failures import handle_failures
from quoting.web.kept import KeptShop, kept_shop
from quoting.web.orders import calmer
from quoting.web.orders import pages as orders
from quoting.web.security import guard, log
from quoting.web.shop import NoWorkshop, OneShop, Shop, serve_shops, shop_if_any
from quoting.web.sizes import pages as comparing
from quoting.web.workshop import forms_sent as workshop_forms
from quoting.web.workshop import measurements, yarn
from quoting.web.workshop import pages as workshop

MOST_BYTES = 2_000_000
"""Room for ten times the longest form, which is then refused in words, and for any order file."""

OPEN_TO_BEGINNERS = frozenset({None, "first_steps"})
"""Whose pages there are without a workshop: style sheets, and those that begin one."""


def create_app(shop: Shop | KeptShop) -> Flask:
    """Return the pages of one workshop, or of a book."""
    app = Flask(__name__, template_folder=str(templates_folder()))
    app.config.update(
        SESSION_COOKIE_NAME="quoting",
        SECRET_KEY=secrets.token_hex(32),
        SESSION_COOKIE_SAMESITE="Lax",
        SESSION_COOKIE_HTTPONLY=True,
        WTF_CSRF_TIME_LIMIT=None,
        MAX_CONTENT_LENGTH=MOST_BYTES,
        MAX_FORM_MEMORY_SIZE=MOST_BYTES,
        MAX_FORM_PARTS=100,
    )
    serve_shops(app, OneShop(shop) if isinstance(shop, Shop) else shop)
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    guard(app)  # before anything looks for a token, which reads the whole form
    CSRFProtect(app)
    turns.register(app)
    for page in (orders, calmer, comparing, measurements, yarn, workshop, workshop_forms):
        app.register_blueprint(page.blueprint)
    if isinstance(shop, KeptShop):
        register_book(app)
    filters.register(app)
    handle_failures(app)
    return app


def register_book(app: Flask) -> None:
    """Add the pages that there are only with a book, and with them what reads it."""
    from quoting.web.book import list_page, order_pages
    from quoting.web.record import accounts
    from quoting.web.record import pages as track_record
    from quoting.web.workshop import first_steps, own_forms_sent, versions

    for page in (
        list_page,
        order_pages,
        first_steps,
        own_forms_sent,
        versions,
        track_record,
        accounts,
    ):
        app.register_blueprint(page.blueprint)
    app.before_request(_copy_daily)
    app.before_request(_check_workshop)


def _copy_daily() -> None:
    kept = kept_shop()
    failed = "" if kept is None else kept.copy_daily()
    if failed:
        log.warning("The copy of the day could not be made: %s", failed)


def _check_workshop() -> None:
    """Lead whoever has no workshop yet to where one is begun."""
    if request.blueprint not in OPEN_TO_BEGINNERS and shop_if_any() is None:
        raise NoWorkshop
