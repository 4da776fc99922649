"""The costing spreadsheet of a quote, its arithmetic as live formulas."""

from __future__ import annotations

from quoting.core.quote.quote import Quote


def workbook_bytes(quote: Quote) -> bytes:
    """Return the spreadsheet of a quote as the bytes of an Office Open XML workbook.

    The same quote gives the same bytes. The spreadsheet library is loaded here, when it is wanted.
    """
    from exports.costing_workbook.book import write_book

    return write_book(quote)
