"""How long the workbooks take, against a bare write of as many cells.

Run from the project's folder as `python -m tests.benchmarks.workbook`. Both are written by turns in
one process, and the medians are compared: a machine that is busy for a while slows both down.
"""

from __future__ import annotations

import io
import time
from collections.abc import Callable, Sequence
from statistics import median

import openpyxl

from exports.comparison_workbook import comparison_bytes
from exports.costing_workbook import workbook_bytes
from quoting.core.order.resizing import Size
from quoting.core.quote.quote import Quote
from quoting.core.weighing.comparison import Comparison, compare_sizes
from tests.examples import (
    TODAY,
    sample_design,
    sample_order,
    sample_quote,
    sample_workshop,
    section,
)

Sheets = Sequence[Sequence[tuple[object, ...]]]

TURNS = 15
ROWS, COLOURS = 300, ("teal", "rust", "oat")
SIDES_CM = (60, 80, 90)


def main() -> None:
    """Print, for each workbook, the medians and their ratio."""
    long, short, sizes = _long_quote(), sample_quote(), _comparison()
    _say(f"costing, {len(long.plan.rows):,} rows", lambda: workbook_bytes(long))
    _say(f"costing, {len(short.plan.rows):,} rows, the example", lambda: workbook_bytes(short))
    _say(f"comparison of {len(sizes.sizes)} sizes", lambda: comparison_bytes(sizes))


def _long_quote() -> Quote:
    sections = (section(*COLOURS, repeats=ROWS // len(COLOURS)),)
    return sample_quote(sample_order(design=sample_design(stitches=60, sections=sections)))


def _comparison() -> Comparison:
    sizes = [Size(width_cm=side, height_cm=side * 1.25) for side in SIDES_CM]
    return compare_sizes(sample_order(), sample_workshop(), sizes, today=TODAY)


def _say(what: str, written: Callable[[], bytes]) -> None:
    sheets = [list(sheet.values) for sheet in openpyxl.load_workbook(io.BytesIO(written()))]
    cells = sum(value is not None for rows in sheets for row in rows for value in row)
    turns = [(_seconds(written), _seconds(lambda: _plain_write(sheets))) for _ in range(TURNS)]
    ours, plain = (median(times) for times in zip(*turns, strict=True))
    print(f"{what}, {cells:,} cells")
    print(f"workbook {ours:.3f} s, bare write {plain:.3f} s, ratio {ours / plain:.2f}")


def _seconds(write: Callable[[], object]) -> float:
    started = time.perf_counter()
    write()
    return time.perf_counter() - started


def _plain_write(sheets: Sheets) -> None:
    """Write the same values to as many sheets, with no look and no kept values."""
    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    for rows in sheets:
        sheet = book.create_sheet()
        for row in rows:
            sheet.append(row)
    book.save(io.BytesIO())


if __name__ == "__main__":
    main()
