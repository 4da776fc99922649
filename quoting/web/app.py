"""The application: its limits, its guard, its pages."""

from __future__ import annotations

import secrets

from flask import Flask
from flask_wtf.csrf import CSRFProtect

from quoting.places import templates_folder
from quoting.web import filters, turns
from quoting.web.failures import handle_failures
from quoting.web.orders import calmer
from quoting.web.orders import pages as orders
from quoting.web.security import guard
from quoting.web.shop import Shop
from quoting.web.sizes import pages as comparing
from quoting.web.workshop import forms_sent as workshop_forms
from quoting.web.workshop import measurements, yarn
from quoting.web.workshop import pages as workshop

MOST_BYTES = 2_000_000
"""Room for ten times the longest form, which is then refused in words, and for any order file."""


def create_app(shop: Shop) -> Flask:
    """Return the pages of one workshop."""
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
        SHOP=shop,
    )
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    guard(app)  # before anything looks for a token, which reads the whole form
    CSRFProtect(app)
    turns.register(app)
    for page in (orders, calmer, comparing, measurements, yarn, workshop, workshop_forms):
        app.register_blueprint(page.blueprint)
    filters.register(app)
    handle_failures(app)
    return app
