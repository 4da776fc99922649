"""The pages: an order form with its answer beside it, the buyer's quote, what was measured."""

from quoting.web.app import create_app

__all__ = ["create_app"]
