"""The application: its limits, its guard, its pages."""

from __future__ import annotations

import secrets

from flask import Flask, request
from flask_wtf.csrf import CSRFProtect

from quoting.places import templates_folder
from quoting.web import filters, turns
from quoting.web.address import AT_HOME, Address, serve_at
from quoting.web.failures import handle_failures
from quoting.web.guide import pages as guide
from quoting.web.kept import KeptShop, kept_shop
from quoting.web.orders import calmer, near, to_send
from quoting.web.orders import pages as orders
from quoting.web.security import guard, log
from quoting.web.shop import NoWorkshop, OneShop, Shop, serve_shops, shop_if_any
from quoting.web.shopping import of_worktable
from quoting.web.sizes import pages as comparing
from quoting.web.workshop import forms_sent as workshop_forms
from quoting.web.workshop import measurements, yarn
from quoting.web.workshop import pages as workshop

MOST_BYTES = 2_000_000
"""Room for ten times the longest form, which is then refused in words, and for any order file."""

OPEN_TO_BEGINNERS = frozenset({None, "first_steps", "door"})
"""Whose pages there are without a workshop: style sheets, those that begin one, and the door."""


def create_app(shop: Shop | KeptShop, address: Address = AT_HOME) -> Flask:
    """Return the pages of one workshop, or of a book, which answer at an address."""
    app = Flask(__name__, template_folder=str(templates_folder()))
    app.config.update(
        SESSION_COOKIE_NAME="quoting",
        DOOR_COOKIE_NAME="__Host-quoting-door" if address.behind_tls else "quoting-door",
        SECRET_KEY=secrets.token_hex(32),
        SESSION_COOKIE_SAMESITE="Lax",
        SESSION_COOKIE_HTTPONLY=True,
        SESSION_COOKIE_SECURE=address.behind_tls,
        WTF_CSRF_TIME_LIMIT=None,
        MAX_CONTENT_LENGTH=MOST_BYTES,
        MAX_FORM_MEMORY_SIZE=MOST_BYTES,
        MAX_FORM_PARTS=100,
    )
    serve_shops(app, OneShop(shop) if isinstance(shop, Shop) else shop)
    serve_at(app, address)
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    guard(app)  # before anything looks for a token, which reads the whole form
    if isinstance(shop, KeptShop):
        from quoting.web.door import watch  # which reads the book

        watch.watch(app)  # before a form without its token is shown again, and with it an order
    CSRFProtect(app)
    turns.register(app)
    of_order = (orders, to_send, guide, calmer, near)
    for page in (*of_order, comparing, measurements, yarn, workshop, workshop_forms):
        app.register_blueprint(page.blueprint)
    app.register_blueprint(of_worktable.blueprint)
    if isinstance(shop, KeptShop):
        register_book(app)
    filters.register(app)
    handle_failures(app)
    return app


def register_book(app: Flask) -> None:
    """Add the pages that there are only with a book, and with them what reads it."""
    from quoting.web.book import forgetting, giving, list_page, order_pages, quote_pages, weeks_page
    from quoting.web.book.number_in_address import NumberInAddress, RowInAddress
    from quoting.web.door import pages as door
    from quoting.web.guide import paper_pages, row_pages
    from quoting.web.making import corrections, took_pages
    from quoting.web.making import pages as making
    from quoting.web.papers import pages as papers
    from quoting.web.papers import printed
    from quoting.web.record import accounts
    from quoting.web.record import pages as track_record
    from quoting.web.shopping import pages as shopping
    from quoting.web.workshop import first_steps, own_forms_sent, versions

    app.url_map.converters |= {"given": NumberInAddress, "int": RowInAddress}
    of_orders = (list_page, order_pages, giving, quote_pages, weeks_page, forgetting, shopping)
    of_making = (making, corrections, took_pages, papers, printed, track_record, accounts)
    of_guides = (paper_pages, row_pages)
    for page in (*of_orders, *of_making, *of_guides, first_steps, own_forms_sent, versions, door):
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
