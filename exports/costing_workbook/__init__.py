"""The costing spreadsheet of a quote, its arithmetic as live formulas."""

from __future__ import annotations

from exports.costing_workbook.actuals.known import NOTHING_KNOWN, Actuals, actuals_of
from quoting.core.quote.quote import Quote

__all__ = ["Actuals", "actuals_of", "workbook_bytes"]


def workbook_bytes(quote: Quote, actuals: Actuals = NOTHING_KNOWN) -> bytes:
    """Return the spreadsheet of a quote as the bytes of an Office Open XML workbook.

    What is known of what it really took is filled in. The same gives the same bytes. The
    spreadsheet library is loaded here, when it is wanted.
    """
    from exports.costing_workbook.book import write_book

    return write_book(quote, actuals)
