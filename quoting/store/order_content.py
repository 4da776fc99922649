"""What is kept of an order: what was typed, the order once it is whole, and figures for lists."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime
from decimal import Decimal
from types import MappingProxyType

from quoting.core.order.order import Order
from quoting.core.order.stage import Stage

Typed = Mapping[str, tuple[str, ...]]
"""The fields of a form by name, each with its texts as they were typed."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Figures:
    """What lists show of an order that was worked out; `hours` are those of all the work."""

    price: Decimal
    currency: str
    earned_per_hour: Decimal
    hours: Decimal
    ready_by: date


@dataclass(frozen=True, slots=True, kw_only=True)
class OrderContent:
    """An order as it stands on the worktable, mistakes and all.

    `title`, `buyer` and `wanted_by` are what lists show, as far as they can be read. There is an
    `order` once all of it can be read, and `figures` once it can be worked out.
    """

    typed: Typed = field(default_factory=lambda: MappingProxyType({}))
    title: str = ""
    buyer: str = ""
    wanted_by: date | None = None
    order: Order | None = None
    figures: Figures | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptOrder:
    """One order of the book.

    Each save of its content has the next `revision`; `writer` is who saved it last, a name that
    an open page gives itself. `stage_before` is the stage that calling it off ended.
    """

    id: int
    revision: int
    writer: str
    stage: Stage
    stage_before: Stage | None
    created_at: datetime
    changed_at: datetime
    content: OrderContent


@dataclass(frozen=True, slots=True, kw_only=True)
class Overtaken:
    """A save that came after somebody else's: the order as it is kept, and what was set aside."""

    kept: KeptOrder
    aside: SetAside


@dataclass(frozen=True, slots=True, kw_only=True)
class SetAside:
    """What a writer typed into an order that another had changed since `from_revision`."""

    order_id: int
    writer: str
    from_revision: int
    typed: Typed
    kept_at: datetime
