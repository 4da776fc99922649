"""Values as the texts that a row keeps of them, through the schema, and values from such texts."""

from __future__ import annotations

import json
from types import MappingProxyType

from quoting.core.ground.place import Document
from quoting.core.order.order import Order
from quoting.core.workshop.workshop import Workshop
from quoting.schema.notation import RECORD
from quoting.schema.order_shape import ORDER
from quoting.schema.reading import read_value
from quoting.schema.workshop_shape import WORKSHOP
from quoting.store.order_content import Typed


def workshop_record(workshop: Workshop) -> str:
    """Return a workshop as JSON."""
    return json.dumps(WORKSHOP.write(workshop, RECORD))


def workshop_of(record: str) -> Workshop:
    """Return the workshop of a record. Errors: one refusal with every mistake."""
    return read_value(json.loads(record), WORKSHOP, Document.WORKSHOP, RECORD)


def are_alike(workshop: Workshop, other: Workshop) -> bool:
    """Return whether two workshops are kept alike, the order of their colours included."""
    records = (workshop_record(workshop), workshop_record(other))
    kept, kept_too = (json.loads(record, object_pairs_hook=list) for record in records)
    return bool(kept == kept_too)


def order_record(order: Order) -> str:
    """Return an order as JSON."""
    return json.dumps(ORDER.write(order, RECORD))


def order_of(record: str) -> Order:
    """Return the order of a record; whether a workshop can still work it is not asked.

    Errors: one refusal with every mistake.
    """
    return read_value(json.loads(record), ORDER, Document.ORDER, RECORD)


def typed_record(typed: Typed) -> str:
    """Return the fields of a form as JSON, in their order."""
    return json.dumps({name: list(texts) for name, texts in typed.items()})


def typed_of(record: str) -> Typed:
    """Return the fields of a form."""
    fields = json.loads(record).items()
    return MappingProxyType({name: tuple(texts) for name, texts in fields})
