"""What is said of fewer ends, of stripes, rounds or motifs: on its own page, and as a saving."""

from __future__ import annotations

from dataclasses import dataclass

from quoting.core.order.bodies import Body
from quoting.core.order.from_centre import FromCentre
from quoting.core.order.in_rows import InRows
from quoting.core.order.joined_squares import JoinedSquares


@dataclass(frozen=True, slots=True, kw_only=True)
class CalmerWords:
    """The words of one construction.

    `kept` says what each design offered keeps, `none` why none is found, `name` what one is called,
    `told` what heads its colours, `each` what they are told by, `elsewhere` what else is in another
    colour, and `keep` what leaves everything as it is. `saving` is what it is called among changes
    that bring a price down.
    """

    kept: str
    none: str
    name: str
    told: str
    each: str
    elsewhere: str
    keep: str
    saving: str


_ROWS = CalmerWords(
    kept="Each of these keeps every colour’s rows within a tenth and the length within one repeat, "
    "has no run of one colour longer than twice the longest asked, and leaves at most half the "
    "ends.",
    none="there is no striping near this one, in these colours, that leaves at most half the ends. "
    "With an even number of rows between two turns of a colour its yarn lies at the edge where it "
    "is wanted next and can be carried up; fewer colours help too.",
    name="Striping",
    told="Stripes, from the bottom up",
    each="Section",
    elsewhere="Rows in another colour",
    keep="Keep these stripes",
    saving="Stripes that can be carried up the side",
)

_CENTRE = CalmerWords(
    kept="Each of these keeps every colour’s rounds within a tenth, or one round, in wider "
    "stripes, and leaves about half the ends or fewer. The same rounds further out take more yarn.",
    none="there are no wider stripes of these colours with about as many rounds of each that "
    "leave about half the ends; fewer colours help too.",
    name="Striping",
    told="Stripes, from the centre outwards",
    each="Section",
    elsewhere="Rounds in another colour",
    keep="Keep these stripes",
    saving="Wider stripes, with fewer changes of colour",
)

_SQUARES = CalmerWords(
    kept="In each of these the blanket has as many rounds of every colour, or nearly, but each "
    "motif has fewer colours, in runs, and so fewer ends.",
    none="the motifs have runs of few colours as they are.",
    name="Choice",
    told="Colours, from the centre outwards",
    each="Layout",
    elsewhere="Rounds in another colour",
    keep="Keep these colours",
    saving="Fewer colours in each motif",
)

CALMER_WORDS: dict[type[Body], CalmerWords] = {
    InRows: _ROWS,
    FromCentre: _CENTRE,
    JoinedSquares: _SQUARES,
}


def calmer_words(body: Body) -> CalmerWords:
    """Return the words for a body; one that cannot be calmed is told as rows are."""
    return CALMER_WORDS.get(type(body), _ROWS)
