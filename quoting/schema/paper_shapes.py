"""The shapes of papers, by which they are kept; and of what is typed of one before it is made."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any, cast

from quoting.core.ground.measures import Units
from quoting.core.ground.place import Document
from quoting.core.papers.batch import BatchAsked, BatchLot, BatchRecord
from quoting.core.papers.bill import Bill, BillAsked, DueShare
from quoting.core.papers.head import PaperHead, PaperKind
from quoting.core.papers.payments import Paid
from quoting.core.papers.receipt import Receipt
from quoting.core.papers.series import PaperFacts, kind_of
from quoting.core.quote.offer_rows import Due
from quoting.core.workshop.rounds import Counting
from quoting.core.workshop.stitches import Vocabulary
from quoting.schema.figures import COUNT, MONEY, NUMBER, SIDE, WEIGHT
from quoting.schema.notation import RECORD
from quoting.schema.offer_shape import CAUTION, OFFERED_YARN, ROW
from quoting.schema.reading import Content, read_value
from quoting.schema.several import Several
from quoting.schema.shape import Fields, Shape
from quoting.schema.words import DAY, NAME, TEXT, YES_NO, Choice

_head = Fields(PaperHead)
HEAD = Shape(
    PaperHead,
    _head(lambda head: head.number, NAME),
    _head(lambda head: head.day, DAY),
    _head(lambda head: head.cancels, NAME),
    _head(lambda head: head.maker, TEXT),
    _head(lambda head: head.contact, TEXT),
    _head(lambda head: head.address, TEXT),
    _head(lambda head: head.buyer, TEXT),
    _head(lambda head: head.title, TEXT),
    _head(lambda head: head.quote, NAME),
    _head(lambda head: head.quoted_on, DAY),
    _head(lambda head: head.currency, NAME),
    _head(lambda head: head.locale, NAME),
    _head(lambda head: head.units, Choice(Units)),
    _head(lambda head: head.speaks, Choice(Vocabulary)),
)

_paid = Fields(Paid)
PAID = Shape(
    Paid,
    _paid(lambda paid: paid.day, DAY),
    _paid(lambda paid: paid.amount, MONEY),
    _paid(lambda paid: paid.currency, NAME),
)

_receipt = Fields(Receipt)
RECEIPT = Shape(
    Receipt,
    _receipt(lambda receipt: receipt.head, HEAD),
    _receipt(lambda receipt: receipt.line, COUNT),
    _receipt(lambda receipt: receipt.paid, PAID),
    _receipt(lambda receipt: receipt.account, NAME),
    _receipt(lambda receipt: receipt.total, MONEY),
    _receipt(lambda receipt: receipt.before, MONEY),
    _receipt(lambda receipt: receipt.due, MONEY),
    _receipt(lambda receipt: receipt.for_deposit, YES_NO),
)

_share = Fields(DueShare)
DUE_SHARE = Shape(
    DueShare,
    _share(lambda share: share.amount, MONEY),
    _share(lambda share: share.when, Choice(Due)),
)

_bill = Fields(Bill)
BILL = Shape(
    Bill,
    _bill(lambda bill: bill.head, HEAD),
    _bill(lambda bill: bill.quantity, COUNT),
    _bill(lambda bill: bill.rows, Several(ROW)),
    _bill(lambda bill: bill.paid, Several(PAID)),
    _bill(lambda bill: bill.account, NAME),
    _bill(lambda bill: bill.total, MONEY),
    _bill(lambda bill: bill.received, MONEY),
    _bill(lambda bill: bill.shares, Several(DUE_SHARE)),
    _bill(lambda bill: bill.pay_by, DAY),
    _bill(lambda bill: bill.follows, NAME),
)

_lot = Fields(BatchLot)
BATCH_LOT = Shape(
    BatchLot,
    _lot(lambda lot: lot.yarn, NAME),
    _lot(lambda lot: lot.colour, NAME),
    _lot(lambda lot: lot.lot, TEXT),
    _lot(lambda lot: lot.grams, NUMBER),
)

_batch = Fields(BatchRecord)
BATCH = Shape(
    BatchRecord,
    _batch(lambda batch: batch.head, HEAD),
    _batch(lambda batch: batch.quantity, COUNT),
    _batch(lambda batch: batch.finished, DAY),
    _batch(lambda batch: batch.width_cm, NUMBER),
    _batch(lambda batch: batch.height_cm, NUMBER),
    _batch(lambda batch: batch.weight_g, NUMBER),
    _batch(lambda batch: batch.measured, YES_NO),
    _batch(lambda batch: batch.weighed, YES_NO),
    _batch(lambda batch: batch.centre, Choice(Counting)),
    _batch(lambda batch: batch.yarns, Several(OFFERED_YARN)),
    _batch(lambda batch: batch.lots, Several(BATCH_LOT)),
    _batch(lambda batch: batch.makers_locale, NAME),
    _batch(lambda batch: batch.care, TEXT),
    _batch(lambda batch: batch.cautions, Several(CAUTION)),
)

_bill_asked = Fields(BillAsked)
BILL_ASKED = Shape(BillAsked, _bill_asked(lambda asked: asked.pay_by, DAY, "To be paid by"))

_batch_asked = Fields(BatchAsked)
BATCH_ASKED = Shape(
    BatchAsked,
    _batch_asked(lambda asked: asked.finished, DAY, "Finished on"),
    _batch_asked(lambda asked: asked.width_cm, SIDE, "Width, measured", name="width"),
    _batch_asked(lambda asked: asked.height_cm, SIDE, "Length, measured", name="height"),
    _batch_asked(lambda asked: asked.weight_g, WEIGHT, "Weight of one", name="weight"),
)

PAPER_SHAPES: Mapping[PaperKind, Shape[Any]] = MappingProxyType(
    {PaperKind.RECEIPT: RECEIPT, PaperKind.BILL: BILL, PaperKind.BATCH: BATCH}
)


def paper_record(paper: PaperFacts) -> dict[str, object]:
    """Return a paper as JSON holds it."""
    return PAPER_SHAPES[kind_of(paper)].write(paper, RECORD)


def read_paper(kind: str, record: Content) -> PaperFacts:
    """Return the paper of a record. Errors: one refusal with every mistake."""
    shape = PAPER_SHAPES[PaperKind(kind)]
    return cast("PaperFacts", read_value(record, shape, Document.PAPER, RECORD))
