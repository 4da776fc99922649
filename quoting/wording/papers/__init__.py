"""The papers of an order in words: what a buyer reads in her language, the maker's in hers."""

from quoting.wording.papers.batch_record import batch_record_paper
from quoting.wording.papers.bill import bill_paper
from quoting.wording.papers.care_card import care_card_paper
from quoting.wording.papers.label import label_paper
from quoting.wording.papers.receipt import receipt_paper

__all__ = [
    "batch_record_paper",
    "bill_paper",
    "care_card_paper",
    "label_paper",
    "receipt_paper",
]
