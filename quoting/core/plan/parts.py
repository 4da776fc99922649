"""The parts of a blanket, which are worked one after the other, and how often each is made."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class PartKind(StrEnum):
    """What a part is: a whole blanket, a motif, a seam, the edging of a motif, a border apart."""

    WHOLE = "whole"
    MOTIF = "motif"
    SEAM = "seam"
    EDGING = "edging"
    BORDER = "border"


@dataclass(frozen=True, slots=True, kw_only=True)
class BlanketPart:
    """A part that is made `count` times alike, each time from a new strand.

    One that is `at_once` is told and ticked off as one thing, else pass by pass. `layout` is the
    layout of a motif, from 0.
    """

    kind: PartKind = PartKind.WHOLE
    count: int = 1
    at_once: bool = False
    layout: int | None = None


WHOLE = BlanketPart()
"""A blanket that is worked in one piece, once."""
