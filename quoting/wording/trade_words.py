"""What parts and tasks of the work and the ends of strands are called, as a maker says it."""

from __future__ import annotations

from quoting.core.estimate.chores import Part
from quoting.core.estimate.hours import Hours, Task
from quoting.core.estimate.pace_guesses import Guess, Unknown
from quoting.core.estimate.strands import Strand, Why, ends_needleful
from quoting.core.order.stage import Stage
from quoting.core.plan.gauge import Sureness
from quoting.core.plan.passes import Plan
from quoting.core.quote.fate_of_ends import main_fate
from quoting.core.quote.quote import Quote
from quoting.core.workshop.stitches import Vocabulary
from quoting.core.workshop.timings import TimedStitch
from quoting.wording.ends import FATES
from quoting.wording.speech import Speech

_PARTS = {
    Part.STITCHING: "Stitching",
    Part.TURNING: "Turning rows",
    Part.CHANGING: "Changing colour",
    Part.JOINING: "Joining balls",
    Part.ASSEMBLING: "Laying out and joining motifs",
    Part.WEAVING_IN: "Weaving in ends",
    Part.FINISHING: "Starting and finishing",
    Part.OFFICE: "Admin: photos, packing, messages",
}

BEGINNING_ROUNDS = "Beginning rounds"

_STAGES = {
    Stage.ASKED: "asked",
    Stage.QUOTED: "quoted",
    Stage.AGREED: "agreed",
    Stage.ON_THE_HOOK: "on the hook",
    Stage.FINISHED: "finished",
    Stage.HANDED_OVER: "handed over",
    Stage.CALLED_OFF: "called off",
}

_TASKS = {
    "rip_back": "pulling back",
    "turn": "turning a row",
    "change_colour": "changing colour",
    "join": "joining a ball",
    "weave_in_end": "weaving in an end",
    "work_over_end": "working over an end",
    "enclose_end": "enclosing an end in the border",
    "fringe_end": "knotting an end into a fringe",
    "begin_round": "beginning and joining a round",
    "join_as_you_go": "joining an edge of {edge} as you go",
    "join_continuous": "joining an edge of {edge} with one last round",
    "join_braid": "joining the loops of an edge",
    "sew_whipstitch": "sewing {sewn} in whipstitch",
    "sew_mattress": "sewing {sewn} in mattress stitch",
    "lay_out": "laying motifs out",
    "lay_out_motif": "laying out a motif",
    "block_motif": "blocking a motif",
    "start_and_finish": "starting and finishing",
    "wash": "blocking",
    "swatch": "swatching",
    "extras": "extras",
    "photograph": "photos",
    "pack": "packing",
    "letters": "messages with the buyer",
}

EDGE_CM = 15
"""The edge that minutes of joins worked into a round are of."""

AS_USUAL = "as is usual"
"""What minutes rest on that are usual, until the maker gives hers."""

_ENDED = {
    Why.CUT: "cut",
    Why.RAN_OUT: "ball used up, new ball joined",
    Why.FINISHED: "fastened off",
}


_NAMES_MEANT = {
    Vocabulary.UK: "UK names: dc here means the UK double crochet, which is sc in US names",
    Vocabulary.US: "US names: dc here means the US double crochet, which is tr in UK names",
}


def stitch_names_meant(speech: Speech) -> str:
    """Return whose stitch names are meant, by the one that means two things."""
    return _NAMES_MEANT[speech.vocabulary]


def part_words(part: Part, speech: Speech, quote: Quote | None = None) -> str:
    """Return what a part of the work is called; of a quote by what is done with its ends.

    What grows in rounds has none to turn, but each to begin.
    """
    if quote is not None and part is Part.WEAVING_IN:
        return FATES[main_fate(quote)].doing
    if quote is not None and part is Part.TURNING and quote.plan.counted is not None:
        return BEGINNING_ROUNDS
    return speech.worded(_PARTS[part])


def task_words(what: str, speech: Speech) -> str:
    """Return what a task is called; the tasks of stitching are the stitches."""
    if what not in _TASKS:
        return speech.stitch(what)
    edge = speech.length(EDGE_CM).replace("\u00a0", " ")
    return speech.worded(_TASKS[what]).format(edge=edge, sewn=centimetre_words("a", speech))


def centimetre_words(article: str, speech: Speech) -> str:
    """Return `a centimetre`, which minutes of sewing are of; with its inches for who has those."""
    words = speech.worded(f"{article} centimetre")
    inches = speech.length(1, 2).replace("\u00a0", " ")
    return f"{words} ({inches})" if speech.inches else words


def work_words(task: Task, hours: Hours, speech: Speech) -> str:
    """Return what one of an order's tasks is called, with its yarn where there are several."""
    words = task_words(task.what, speech)
    return f"{words} in {task.yarn}" if task.yarn and len(hours.yarns) > 1 else words


def timed_words(timed: TimedStitch, speech: Speech) -> str:
    """Return what was timed: `hdc`, `hdc in moor aran`."""
    stitch = speech.stitch(timed.stitch)
    return f"{stitch} in {timed.yarn}" if timed.yarn else stitch


def guess_words(guess: Guess, speech: Speech) -> str:
    """Return what is guessed: `sc from hdc`."""
    if guess.unknown in (Unknown.YARN, Unknown.THICKNESS):
        return f"{guess.what} from {guess.like}"
    if guess.unknown is Unknown.ROUNDS:
        return f"{guess.what} with other rounds"
    return f"{speech.stitch(guess.what)} from {speech.stitch(guess.like)}"


def ended_words(strand: Strand, plan: Plan, speech: Speech) -> str:
    """Return why a strand ended."""
    if ends_needleful(strand, plan):
        return "needleful at its end"
    return speech.worded(_ENDED[strand.why])


def sureness_words(sureness: Sureness) -> str:
    """Return what a figure rests on: `measured`, `timed once`."""
    return "timed once" if sureness is Sureness.ONE_TIMING else sureness.value


def stage_words(stage: Stage) -> str:
    """Return what a stage of an order is called."""
    return _STAGES[stage]
