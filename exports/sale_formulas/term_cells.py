"""The cells of the terms of a sale, and the words in them that formulas read."""

from __future__ import annotations

from dataclasses import dataclass

from exports.sheets.cells import Ref, Span

MARGIN, MARKUP, GIVEN = TARGETS = ("margin", "markup", "given price")
NONE, SHARE_OF_TOTAL, YARN, YARN_AND_SHARE = DEPOSITS = (
    "none",
    "share of the total",
    "the yarn",
    "the yarn and a share",
)
YES_NO = ("yes", "no")


@dataclass(frozen=True, slots=True, kw_only=True)
class FeeRefs:
    """The list of fees: the rows of its lines, the cells of their terms, and what each takes."""

    rows: tuple[int, ...]
    on: Span
    rate: Span
    fixed: Span
    takes: Span


@dataclass(frozen=True, slots=True, kw_only=True)
class TermRefs:
    """The cells of every term of the sale."""

    target: Ref
    margin: Ref
    markup: Ref
    given: Ref
    step: Ref
    rush: Ref
    discount: Ref
    minimum: Ref
    delivery: Ref
    registered: Ref
    tax_rate: Ref
    shown: Ref
    on_delivery: Ref
    deposit: Ref
    deposit_share: Ref
    at_half: Ref
    fees: FeeRefs
