"""One line of the costs as the sheet has it: what it is, how many, at what."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from exports.sheets.cells import Cell, Formula
from exports.sheets.lines import Lines
from quoting.core.price.cost_lines import Line, LineKind

KIND_WORDS = {
    LineKind.YARN: "yarn",
    LineKind.EXTRA: "extra",
    LineKind.PACKAGING: "packaging",
    LineKind.MAKING: "making",
    LineKind.OFFICE: "office",
    LineKind.OVERHEAD: "overhead",
    LineKind.DELIVERY: "delivery",
}
"""What a line of the costs counts as, in the words that sums go by."""


@dataclass(frozen=True, slots=True)
class Charge:
    """One line, and the cells of its quantity and its rate.

    `what` and `detail` are its words where they are not those of its kind; `name` that of the cell
    of its rate. A line that has no rate comes to an `amount`, which the whole list tells.
    """

    line: Line
    quantity: Cell | None
    rate: Cell | None
    name: str = ""
    what: str = ""
    detail: str = ""
    amount: Callable[[Lines], Formula] | None = None
