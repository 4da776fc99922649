"""What is done with the yarn in a step of a guide, told once for each colour of a repeat."""

from __future__ import annotations

from itertools import groupby

from quoting.core.estimate.row_guide import Act
from quoting.core.guide.handling import Handling
from quoting.core.guide.steps import Part, Step
from quoting.core.plan.passes import Pass, Plan
from quoting.wording.phrases import capitalized
from quoting.wording.rows_and_edges import at_place_words, kind_words
from quoting.wording.speech import Speech

_ACTS = {
    Act.START: "start it",
    Act.CARRY_UP: "carry it up",
    Act.WAIT: "leave it waiting",
    Act.CUT: "cut it",
    Act.FASTEN_OFF: "fasten it off",
}

GO_ON = "go on with it"


def yarn_sentences(step: Step, plan: Plan, speech: Speech) -> str:
    """Return what is done with the yarn of a step; empty where it only goes on."""
    if step.times == 1 and len(step.parts) == 1:
        return _sentence(_part_words(step.parts[0], step, plan, speech))
    told = [(_part_words(part, step, plan, speech), part.worked.colour) for part in step.parts]
    return " ".join(
        f"{', '.join(colour for _, colour in some)}: {words or GO_ON}."
        for words, some in groupby(told, key=lambda each: each[0])
    )


def handling_sentence(handling: Handling, worked: Pass, plan: Plan, speech: Speech) -> str:
    """Return what is done with the yarn of one row or round; empty where it only goes on."""
    said = [
        f"{_ACTS[act]} {where}"
        for act, where in (
            (handling.begins, _begins_at(worked, plan, speech)),
            (handling.ends, at_place_words(worked.ends, worked, plan, speech)),
        )
        if act is not None
    ]
    return _sentence("; ".join(said))


def _sentence(said: str) -> str:
    return f"{capitalized(said)}." if said else ""


def _part_words(part: Part, step: Step, plan: Plan, speech: Speech) -> str:
    begins, ends = _where(part, step, plan, speech)
    said = (
        _begun(part.begins, part.begins_again, begins),
        _ended(part.ends, part.ends_last, ends),
    )
    return "; ".join(words for words in said if words)


def _where(part: Part, step: Step, plan: Plan, speech: Speech) -> tuple[str, str]:
    """Return where a part begins and ends: at edges, where these are the same each time."""
    worked = part.worked
    if step.times > 1 and step.rows % 2 and worked.starts is not worked.ends:
        one = kind_words(worked)
        if part.rows == 1:
            return f"where its {one} begins", f"where its {one} ends"
        return f"where its first {one} begins", f"where its last {one} ends"
    ends = worked.ends if part.rows % 2 else worked.starts
    return _begins_at(worked, plan, speech), at_place_words(ends, worked, plan, speech)


def _begins_at(worked: Pass, plan: Plan, speech: Speech) -> str:
    """Return where a row or round begins; round 1 of a body is begun in its middle."""
    if worked.grows and worked.number == 1:
        return "in the middle"
    return at_place_words(worked.starts, worked, plan, speech)


def _begun(first: Act | None, again: Act | None, where: str) -> str:
    """Return how a part's yarn comes to it, the first time and then again."""
    if first is again:
        return f"{_ACTS[first]} {where}" if first is not None else ""
    if first is None:
        return f"{_ACTS[again]} {where} but for the first time" if again is not None else ""
    later = f", then {_ACTS[again]} there" if again is not None else ""
    return f"{_ACTS[first]} {where} the first time{later}"


def _ended(usual: Act | None, last: Act | None, where: str) -> str:
    """Return how a part's yarn is left, each time and the last time."""
    if usual is last:
        return f"{_ACTS[usual]} {where}" if usual is not None else ""
    if usual is None:
        return f"{_ACTS[last]} {where} the last time" if last is not None else ""
    if last is None:
        return f"{_ACTS[usual]} {where} but for the last time"
    return f"{_ACTS[usual]} {where}, the last time {_ACTS[last]} there"
