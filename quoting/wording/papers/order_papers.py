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


class OrderPaper(StrEnum):
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


_OF_BATCH = (OrderPaper.CARE_CARD, OrderPaper.LABEL)

_NAMES: Mapping[OrderPaper, str] = MappingProxyType(
    {
        OrderPaper.RECEIPT: "Receipt",
        OrderPaper.BILL: "Bill",
        OrderPaper.BATCH: "Batch record",
        OrderPaper.CARE_CARD: "Care and fibre card",
        OrderPaper.LABEL: "Label",
    }
)


def order_paper_words(what: OrderPaper) -> str:
    """Return what it is called on the maker's pages."""
    return _NAMES[what]


def order_paper(what: OrderPaper, facts: PaperFacts) -> Paper:
    """Return it in words; the `facts` are of its kind."""
    match facts:
        case Receipt():
            return receipt_paper(facts)
        case Bill():
            return bill_paper(facts)
        case BatchRecord():
            return _OF_RECORD[what](facts)


_OF_RECORD = {
    OrderPaper.BATCH: batch_record_paper,
    OrderPaper.CARE_CARD: care_card_paper,
    OrderPaper.LABEL: label_paper,
}
