"""The layouts of joined motifs in a form: as many colours as rounds; from a pool, and to one.

All by the names of the fields, whatever is typed in them.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from werkzeug.datastructures import MultiDict

from quoting.core.workshop.motifs import MOST_ROUNDS
from quoting.core.workshop.workshop import Workshop
from quoting.schema.several import VALUE_FIELD
from quoting.web.forms.line_changes import Changed, take_out
from quoting.web.forms.sent import Sent, line_numbers, sent_as

TABLE = "blanket.squares"
LAYOUTS, POOL = f"{TABLE}.layouts", f"{TABLE}.pool"

TAKE_MOTIF, ADD, MIX, LAY_OUT = "motif", f"add {LAYOUTS}", "mix", "lay_out"
"""What is asked: rounds as the motif has them, a layout more, colours mixed evenly, or laid out."""


def squares_deed(deed: str, sent: Sent, workshop: Workshop) -> Changed:
    """Return a form of joined motifs after what a button asks of it, if it asks anything."""
    if deed in {TAKE_MOTIF, ADD}:
        return Changed(with_all_rounds(sent, workshop), "")
    if deed == MIX:
        return Changed(_mixed(sent), f"{POOL}.colours.1.{VALUE_FIELD}")
    if deed == LAY_OUT:
        return Changed(_laid_out(sent, workshop), f"{LAYOUTS}.1.colours.1.{VALUE_FIELD}")
    return Changed(sent, "")


def with_all_rounds(sent: Sent, workshop: Workshop) -> Sent:
    """Return a form in which every layout has a colour for each round of the motif.

    What fits is kept. The last colour goes on in rounds that are new; a layout of which there is
    only the first round takes the others from the layout before it.
    """
    rounds = rounds_typed(sent, workshop)
    before: Sequence[str] = ()
    for number in line_numbers(sent).get(LAYOUTS, []) if rounds else []:
        place = f"{LAYOUTS}.{number}.colours"
        colours = texts_of_list(sent, place)
        if len(colours) == 1:
            colours += before[1:]
        colours = [*colours, *colours[-1:] * rounds][:rounds]
        sent = with_list(sent, place, colours)
        before = colours
    return sent


def rounds_typed(sent: Sent, workshop: Workshop) -> int:
    """Return the rounds of each motif in a form; 0 where it does not say."""
    typed = sent.get(f"{TABLE}.rounds", "").strip()
    if typed:
        return int(typed) if typed.isdecimal() and int(typed) <= MOST_ROUNDS else 0
    named = (m.rounds for m in workshop.motifs if m.name == sent.get(f"{TABLE}.motif"))
    return next(named, 0)


def texts_of_list(sent: Sent, place: str) -> list[str]:
    """Return the texts of a list of one text a line."""
    numbers = line_numbers(sent).get(place, [])
    return [sent.get(f"{place}.{number}.{VALUE_FIELD}", "") for number in numbers]


def with_list(sent: Sent, place: str, texts: Sequence[str]) -> Sent:
    """Return a form with these texts in a list, in place of any before."""
    kept = [(n, text) for n, text in sent.items(multi=True) if not n.startswith(f"{place}.")]
    return MultiDict([*kept, *sent_as([{VALUE_FIELD: text} for text in texts], place)])


def _mixed(sent: Sent) -> Sent:
    """Return a form with the colours of its layouts in a pool, and a last round that all share.

    The layouts can be put back.
    """
    numbers = line_numbers(sent).get(LAYOUTS, [])
    layouts = [texts_of_list(sent, f"{LAYOUTS}.{number}.colours") for number in numbers]
    last = {colours[-1] for colours in layouts if len(colours) > 1}
    outer = [*last] if len(last) == 1 else []
    inner = (colour for colours in layouts for colour in colours[: len(colours) - len(outer)])
    for number in reversed(numbers):
        sent = take_out(sent, LAYOUTS, number).sent
    sent = with_list(sent, f"{POOL}.colours", list(dict.fromkeys(inner)))
    return with_list(sent, f"{POOL}.outer", outer)


def _laid_out(sent: Sent, workshop: Workshop) -> Sent:
    """Return a form with a layout for each colour of its pool, which then take turns."""
    colours = texts_of_list(sent, f"{POOL}.colours")
    outer = texts_of_list(sent, f"{POOL}.outer")
    inner = max(1, rounds_typed(sent, workshop) - len(outer))
    layouts: list[Mapping[str, object]] = [
        {"share": "", "colours": [{VALUE_FIELD: each} for each in (*turn, *outer)]}
        for turn in _turns(colours, inner)
    ]
    kept = [(n, t) for n, t in sent.items(multi=True) if not n.startswith((f"{POOL}.", LAYOUTS))]
    return MultiDict([*kept, *sent_as(layouts, LAYOUTS)])


def _turns(colours: Sequence[str], rounds: int) -> Iterator[list[str]]:
    """Yield the colours of so many rounds, beginning with each in turn."""
    for first in range(len(colours)):
        yield [colours[(first + number) % len(colours)] for number in range(rounds)]
