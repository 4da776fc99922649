"""The stages that an order goes through, from the first letter to the blanket's new home."""

from __future__ import annotations

from collections.abc import Mapping
from enum import StrEnum
from types import MappingProxyType

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse


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

    @property
    def next(self) -> Stage | None:
        """The stage that a maker says has come; she is quoted and agreed with by a quote."""
        return _NEXT.get(self)

    @property
    def last(self) -> Stage | None:
        """The stage that one that came too early goes back to."""
        return _LAST.get(self)


_NEXT: Mapping[Stage, Stage] = MappingProxyType(
    {
        Stage.AGREED: Stage.ON_THE_HOOK,
        Stage.ON_THE_HOOK: Stage.FINISHED,
        Stage.FINISHED: Stage.HANDED_OVER,
    }
)

_LAST: Mapping[Stage, Stage] = MappingProxyType(
    {
        Stage.QUOTED: Stage.ASKED,
        Stage.AGREED: Stage.QUOTED,
        **{later: sooner for sooner, later in _NEXT.items()},
    }
)


def check_step(before: Stage, wanted: Stage) -> None:
    """Check that an order may be put from a stage to another by a word.

    It may be called off at any. Errors: one refusal: `stage-takes-quote`, `stage-takes-accepting`
    where it takes more than a word; `stage-skipped`.
    """
    if wanted in {before, before.next, before.last, Stage.CALLED_OFF}:
        return
    if before is Stage.ASKED:
        raise refuse("stage", MistakeCode.STAGE_TAKES_QUOTE)
    if before is Stage.QUOTED:
        raise refuse("stage", MistakeCode.STAGE_TAKES_ACCEPTING)
    raise refuse("stage", MistakeCode.STAGE_SKIPPED)


def check_open(stage: Stage) -> None:
    """Check that quotes may be given and accepted. Errors: one refusal: `stage-closed`."""
    if not stage.is_open:
        raise refuse("stage", MistakeCode.STAGE_CLOSED)
