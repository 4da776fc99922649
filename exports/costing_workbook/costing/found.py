"""What other sheets and the checks read of the costing."""

from __future__ import annotations

from dataclasses import dataclass

from exports.costing_workbook.costing.paid_block import PaidRefs
from exports.costing_workbook.costing.price_block import PriceRefs
from exports.costing_workbook.costing.result_block import ResultRefs, Sums
from exports.sale_formulas.price_formula import FactorRefs
from exports.sale_formulas.term_cells import TermRefs


@dataclass(frozen=True, slots=True, kw_only=True)
class Found:
    """The cells of the costing: its terms, its sums, how it is paid, and what follows."""

    terms: TermRefs
    factors: FactorRefs
    sums: Sums
    split: PaidRefs
    result: ResultRefs

    @property
    def paid(self) -> PriceRefs:
        """What the buyer pays."""
        return self.sums.paid
