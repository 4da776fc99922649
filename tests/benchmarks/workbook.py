"""How long the workbook of a blanket of 3,000 rows takes, against a bare write of as many cells.

Run from the project's folder as `python -m tests.benchmarks.workbook`.
"""

from __future__ import annotations

import io
import time

import openpyxl

from exports.costing_workbook import workbook_bytes
from tests.examples import sample_design, sample_order, sample_quote, section

REPEATS = 999


def main() -> None:
    """Print both times and their ratio, from one run of each."""
    design = sample_design(stitches=60, sections=(section("teal", "rust", "oat", repeats=REPEATS),))
    quote = sample_quote(sample_order(design=design))
    started = time.perf_counter()
    content = workbook_bytes(quote)
    ours = time.perf_counter() - started
    sheets = [list(s.values) for s in openpyxl.load_workbook(io.BytesIO(content))]
    started = time.perf_counter()
    _plain_write(sheets)
    plain = time.perf_counter() - started
    cells = sum(value is not None for rows in sheets for row in rows for value in row)
    print(f"{len(quote.plan.rows):,} rows, {cells:,} cells")
    print(f"workbook {ours:.2f} s, bare write {plain:.2f} s, ratio {ours / plain:.2f}")


def _plain_write(sheets: list[list[tuple[object, ...]]]) -> None:
    """Write the same values to as many sheets, with no look and no kept values."""
    book = openpyxl.Workbook()
    for rows in sheets:
        sheet = book.create_sheet()
        for row in rows:
            sheet.append(row)
    book.save(io.BytesIO())


if __name__ == "__main__":
    main()
