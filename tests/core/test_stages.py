"""An order goes from stage to stage one at a time, and where it takes a quote, only by one."""

from __future__ import annotations

import pytest

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import Refused
from quoting.core.order.stage import Stage, check_open, check_step

STEPS = {
    Stage.ASKED: set(),
    Stage.QUOTED: {Stage.ASKED},
    Stage.AGREED: {Stage.QUOTED, Stage.ON_THE_HOOK},
    Stage.ON_THE_HOOK: {Stage.AGREED, Stage.FINISHED},
    Stage.FINISHED: {Stage.ON_THE_HOOK, Stage.HANDED_OVER},
    Stage.HANDED_OVER: {Stage.FINISHED},
    Stage.CALLED_OFF: set(),
}


def is_taken(before: Stage, wanted: Stage) -> bool:
    try:
        check_step(before, wanted)
    except Refused:
        return False
    return True


@pytest.mark.parametrize("before", list(Stage))
def test_an_order_goes_on_or_back_by_one_or_is_called_off(before: Stage) -> None:
    taken = {wanted for wanted in Stage if is_taken(before, wanted)}
    assert taken == STEPS[before] | {before, Stage.CALLED_OFF}


@pytest.mark.parametrize("before", list(Stage))
def test_the_steps_that_a_page_offers_are_those_that_are_taken(before: Stage) -> None:
    assert {before.next, before.last} - {None} == STEPS[before]


@pytest.mark.parametrize(
    ("before", "wanted", "code"),
    [
        (Stage.ASKED, Stage.QUOTED, MistakeCode.STAGE_TAKES_QUOTE),
        (Stage.ASKED, Stage.AGREED, MistakeCode.STAGE_TAKES_QUOTE),
        (Stage.QUOTED, Stage.AGREED, MistakeCode.STAGE_TAKES_ACCEPTING),
        (Stage.QUOTED, Stage.FINISHED, MistakeCode.STAGE_TAKES_ACCEPTING),
        (Stage.AGREED, Stage.HANDED_OVER, MistakeCode.STAGE_SKIPPED),
        (Stage.CALLED_OFF, Stage.AGREED, MistakeCode.STAGE_SKIPPED),
    ],
)
def test_a_stage_that_is_skipped_is_told_by_what_it_takes(
    before: Stage, wanted: Stage, code: MistakeCode
) -> None:
    with pytest.raises(Refused) as refused:
        check_step(before, wanted)
    assert [mistake.code for mistake in refused.value.mistakes] == [code]


def test_quotes_are_given_and_accepted_while_there_is_work_to_do() -> None:
    for stage in (Stage.FINISHED, Stage.HANDED_OVER, Stage.CALLED_OFF):
        with pytest.raises(Refused):
            check_open(stage)
    for stage in (Stage.ASKED, Stage.QUOTED, Stage.AGREED, Stage.ON_THE_HOOK):
        check_open(stage)
