"""The spreadsheet of a comparison of sizes, its arithmetic as live formulas."""

from __future__ import annotations

from quoting.core.weighing.comparison import Comparison


def comparison_bytes(comparison: Comparison) -> bytes:
    """Return the spreadsheet of a comparison as the bytes of an Office Open XML workbook.

    The same comparison gives the same bytes; one of which no size could be made says so. The
    spreadsheet library is loaded here, when it is wanted.
    """
    from exports.comparison_workbook.book import write_comparison

    return write_comparison(comparison)
