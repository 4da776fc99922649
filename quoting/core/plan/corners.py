"""What is worked at the corners of a border's round, so that it turns them and lies flat."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Into(StrEnum):
    """What a corner is worked into: the body, a stitch of the round inside, or its chains."""

    BODY = "body"
    STITCH = "stitch"
    SPACE = "space"


@dataclass(frozen=True, slots=True, kw_only=True)
class CornerWork:
    """So many stitches, perhaps chains, and so many stitches again, at each corner alike.

    Worked into the body or into a stitch, one of them is the stitch that would be there anyway.
    """

    into: Into
    before: int = 0
    chains: int = 0
    after: int = 0

    @property
    def stitches(self) -> int:
        """The stitches at one corner."""
        return self.before + self.after
