"""The days of the queue beside a spreadsheet's own WORKDAY.INTL.

The function counts working days past a day, with holidays and a week of no days off: ISO/IEC 29500
and OASIS OpenFormula 1.2 (WORKDAY), as LibreOffice reckons it. A day of work is one of its days.
"""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path
from random import Random

import openpyxl
from openpyxl.workbook import Workbook

from quoting.core.workshop.queue import AgreedOrder, queue_orders
from quoting.core.workshop.workshop import Workshop
from tests.core.agreed_orders import TODAY, agreed, working
from tests.workbook.recalculation import recalculated, saved

HOURS_A_DAY = 2
ARRIVES, AFTER_MAKING = 6, 4


def some_queue(random: Random) -> tuple[list[AgreedOrder], Workshop]:
    """Return a dozen orders, and a calendar with days off among theirs."""
    off = tuple(TODAY + timedelta(days=random.randrange(1, 150)) for _ in range(40))
    workshop = working(
        HOURS_A_DAY,
        hours_promised=random.randrange(0, 30),
        days_off=off,
        yarn_arrives_days=ARRIVES,
        drying_days=1,
        post_days=AFTER_MAKING - 1,
    )
    orders = [
        agreed(
            number,
            random.randrange(1, 120) / 4,
            yarn_bought=True,
            agreed_on=TODAY + timedelta(days=random.randrange(-9, 40)),
        )
        for number in range(12)
    ]
    return orders, workshop


def sheet_of(orders: list[AgreedOrder], workshop: Workshop) -> Workbook:
    """Return a sheet in which each order's last day follows from the one above it.

    Columns: agreed on, hours, last day of making, with the buyer; days off in F.
    """
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    off = sorted(set(workshop.calendar.days_off))
    for row, day in enumerate(off, 1):
        sheet.cell(row, 6, day)
    days_off = f"$F$1:$F${len(off)}"
    sheet["A1"], sheet["B1"] = TODAY, workshop.calendar.hours_promised
    for row, order in enumerate([None, *orders], 1):
        begin = "A1"
        if order is not None:
            sheet.cell(row, 1, order.agreed_on)
            sheet.cell(row, 2, order.hours)
            begin = f"MAX(C{row - 1},A{row}+{ARRIVES})"
        days = f"ROUNDUP(B{row}/{HOURS_A_DAY},0)"
        worked = f'WORKDAY.INTL({begin},{days},"0000000",{days_off})'
        sheet.cell(row, 3, f"=IF({days}=0,{begin},{worked})").number_format = "yyyy-mm-dd"
        sheet.cell(row, 4, f"=C{row}+{AFTER_MAKING}").number_format = "yyyy-mm-dd"
    return book


def test_a_spreadsheet_lays_the_same_days(tmp_path: Path) -> None:
    random = Random(11)
    queues = [some_queue(random) for _ in range(8)]
    files = {f"queue {at}": saved(sheet_of(*queue)) for at, queue in enumerate(queues)}
    anew = recalculated(files, tmp_path)
    for name, (orders, workshop) in zip(files, queues, strict=True):
        rows = anew[name].worksheets[0].iter_rows(min_row=2, min_col=3, max_col=4, values_only=True)
        found = [(made.date(), ready.date()) for made, ready in rows if made]
        turns = queue_orders(orders, workshop, today=TODAY).turns
        assert [(turn.made_by, turn.ready_by) for turn in turns] == found
