"""The stages that an order goes through, from the first letter to the blanket's new home."""

from __future__ import annotations

from enum import StrEnum


class Stage(StrEnum):
    """How far an order is, in the order of the work."""

    ASKED = "asked"
    QUOTED = "quoted"
    AGREED = "agreed"
    ON_THE_HOOK = "on-the-hook"
    FINISHED = "finished"
    HANDED_OVER = "handed-over"
    CALLED_OFF = "called-off"

    @property
    def is_open(self) -> bool:
        """Whether there may still be work to do for it."""
        return self in {Stage.ASKED, Stage.QUOTED, Stage.AGREED, Stage.ON_THE_HOOK}
