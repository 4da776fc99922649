"""Papers as they are before they are numbered, of an offer of the scenario."""

from __future__ import annotations

from datetime import date
from typing import Any

from quoting.core.making.log_lines import LogEntry
from quoting.core.papers.batch import BatchAsked, BatchRecord, batch_of
from quoting.core.papers.bill import Bill, BillAsked, bill_of
from quoting.core.papers.receipt import Receipt, receipt_of
from quoting.core.quote.offer import Offer, offer_of
from tests.examples import sample_quote
from tests.store.given import DAY

OFFER = offer_of(sample_quote())


def receipt(
    entries: tuple[LogEntry, ...], line: int, *, day: date = DAY, offer: Offer = OFFER
) -> Receipt:
    """Return the receipt of a payment."""
    return receipt_of(offer, entries, line, day=day)


def bill(entries: tuple[LogEntry, ...] = (), *, day: date = DAY, offer: Offer = OFFER) -> Bill:
    """Return a bill for what is due."""
    return bill_of(offer, entries, BillAsked(), day=day)


def record(*, day: date = DAY, offer: Offer = OFFER, **asked: Any) -> BatchRecord:
    """Return the record of a blanket that was finished on a day."""
    wish = BatchAsked(finished=day, **asked)
    return batch_of(offer, (), {}, wish, makers_locale="en_GB", day=day)
