"""The basic stitches: what each is called, how tall, how much yarn and time it takes.

US names are canonical. Ratios are the trade's, common practice; the chain's half of a single
crochet is one rough published measurement.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from quoting.core.ground.codes import MistakeCode
from quoting.core.ground.errors import refuse


class Stitch(StrEnum):
    """A basic stitch, by its US abbreviation."""

    CH = "ch"
    SC = "sc"
    HDC = "hdc"
    DC = "dc"
    TR = "tr"
    SLIP = "sl st"


class Vocabulary(StrEnum):
    """Whose names a file, a page or a document uses."""

    US = "US"
    UK = "UK"


WORKED = (Stitch.SC, Stitch.HDC, Stitch.DC, Stitch.TR)
"""The stitches a row can be worked in."""

HEIGHT_RATIO = {Stitch.SC: 1.0, Stitch.HDC: 1.5, Stitch.DC: 2.0, Stitch.TR: 3.0}
"""Height against a single crochet, for a stitch that has no swatch."""

YARN_RATIO = {Stitch.CH: 0.5, Stitch.SLIP: 1 / 3} | HEIGHT_RATIO
"""Yarn against a single crochet: per area it is about the same, so it goes with the height."""

TIME_RATIO = {
    Stitch.CH: 1.0,
    Stitch.SLIP: 1.0,
    Stitch.SC: 2.0,
    Stitch.HDC: 3.0,
    Stitch.DC: 4.0,
    Stitch.TR: 6.0,
}
"""Time against a chain, for a stitch that was never timed: its yarn-overs."""

TURNING_CHAINS = {Stitch.SC: 1, Stitch.HDC: 2, Stitch.DC: 3, Stitch.TR: 4}
"""Source: Crochet Guild of America lessons (1997)."""

TURNING_CHAIN_COUNTS = {Stitch.SC: False, Stitch.HDC: False, Stitch.DC: True, Stitch.TR: True}
"""Whether the turning chain stands for the row's first stitch, unless the workshop says so."""

ROW_END_STITCHES = {Stitch.SC: 1.0, Stitch.HDC: 1.5, Stitch.DC: 2.0, Stitch.TR: 3.0}
"""Border stitches at each row end, where no swatch gives them."""

_UK_NAMES = {
    Stitch.CH: "ch",
    Stitch.SC: "dc",
    Stitch.HDC: "htr",
    Stitch.DC: "tr",
    Stitch.TR: "dtr",
    Stitch.SLIP: "ss",
}


@dataclass(frozen=True, slots=True)
class TurningChain:
    """How many chains turn a row, and whether they stand for the row's first stitch.

    `begins_with` are the foundation chains besides one for each stitch, where they are not those
    that follow from the turning chain.
    """

    chains: int
    counts: bool
    begins_with: int | None = None

    def foundation(self, stitches: int) -> int:
        """Return the chains to begin with for a row of so many stitches."""
        if self.begins_with is not None:
            return stitches + self.begins_with
        return stitches + self.chains - (1 if self.counts else 0)

    @property
    def chains_a_row(self) -> int:
        """The chains of each later row that are not counted among its stitches."""
        return 0 if self.counts else self.chains

    def bare_foundation(self, stitches: int) -> int:
        """Return the foundation chains that are not counted among row 1's stitches."""
        return max(0, self.foundation(stitches) - (self.chains if self.counts else 0))

    def chains_inside(self, stitches: int, rows: int) -> int:
        """Return the chains in a plain piece that are not counted among its stitches."""
        return self.bare_foundation(stitches) + self.chains_a_row * (rows - 1)


def stitch_name(stitch: Stitch, vocabulary: Vocabulary) -> str:
    """Return the abbreviation of a stitch in the vocabulary."""
    return stitch.value if vocabulary is Vocabulary.US else _UK_NAMES[stitch]


def stitch_names(vocabulary: Vocabulary) -> dict[str, Stitch]:
    """Return the stitches a row can be worked in, by their names in the vocabulary."""
    return {stitch_name(stitch, vocabulary): stitch for stitch in WORKED}


def read_stitch(name: str, vocabulary: Vocabulary) -> Stitch | None:
    """Return the stitch so named, or None when the name is nobody's and may be a pattern's.

    Errors: `other-vocabulary` when only the other vocabulary has the name.
    """
    names = stitch_names(vocabulary)
    if name in names:
        return names[name]
    other = Vocabulary.UK if vocabulary is Vocabulary.US else Vocabulary.US
    stranger = stitch_names(other).get(name)
    if stranger is not None:
        meant = stitch_name(stranger, vocabulary)
        raise refuse(
            "", MistakeCode.OTHER_VOCABULARY, read=name, wanted=meant, terms=vocabulary.value
        )
    return None
