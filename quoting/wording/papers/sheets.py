"""What is printed of each kind of paper: the paper itself, and what goes with the blanket."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from quoting.core.papers.batch import BatchRecord
from quoting.core.papers.bill import Bill
from quoting.core.papers.head import PaperKind
from quoting.core.papers.receipt import Receipt
from quoting.core.papers.series import PaperFacts
from quoting.wording.paper import Paper
from quoting.wording.papers.batch_record import batch_record_paper
from quoting.wording.papers.bill import bill_paper
from quoting.wording.papers.care_card import care_card_paper
from quoting.wording.papers.label import label_paper
from quoting.wording.papers.receipt import receipt_paper


class Sheet(StrEnum):
    """What is printed, by its word in an address."""

    RECEIPT = "receipt"
    BILL = "bill"
    BATCH = "batch"
    CARE_CARD = "care-card"
    LABEL = "label"

    @property
    def kind(self) -> PaperKind:
        """The kind of paper that it is printed from, whose number it bears."""
        return PaperKind.BATCH if self in _OF_BATCH else PaperKind(self.value)

    @property
    def goes_along(self) -> bool:
        """Whether it goes with the blanket, so that nothing that was cancelled has one."""
        return self in _OF_BATCH


_OF_BATCH = (Sheet.CARE_CARD, Sheet.LABEL)

_NAMES: Mapping[Sheet, str] = MappingProxyType(
    {
        Sheet.RECEIPT: "Receipt",
        Sheet.BILL: "Bill",
        Sheet.BATCH: "Batch record",
        Sheet.CARE_CARD: "Care and fibre card",
        Sheet.LABEL: "Label",
    }
)


def sheet_words(sheet: Sheet) -> str:
    """Return what a sheet is called on the maker's pages."""
    return _NAMES[sheet]


def sheet_paper(sheet: Sheet, facts: PaperFacts) -> Paper:
    """Return a sheet of a paper in words; `facts` are of the sheet's kind."""
    match facts:
        case Receipt():
            return receipt_paper(facts)
        case Bill():
            return bill_paper(facts)
        case BatchRecord():
            return _OF_RECORD[sheet](facts)


_OF_RECORD = {
    Sheet.BATCH: batch_record_paper,
    Sheet.CARE_CARD: care_card_paper,
    Sheet.LABEL: label_paper,
}
