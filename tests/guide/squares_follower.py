"""A follower of guides of joined squares, who knows nothing of them but the words of the guide.

She counts the stitches and the ends that she is told of, by colour.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator

from quoting.wording.paper import Facts, Listing, Paper, Words
from tests.guide.follower import CORNERS, all_blocks

NUMBER = r"([\d,]+)"
STITCHES = rf"{NUMBER} (sl st|[^\s.]+)(?: in {NUMBER} clusters?)?(?:(?:,| and) {NUMBER} chains?)?"

Stitched = Counter[tuple[str, str]]
"""How many of each stitch in each colour."""


def count(text: str | None) -> int:
    """Return a number as it is told."""
    return int((text or "0").replace(",", ""))


def lists(paper: Paper) -> dict[str, Listing]:
    """Return the tables of a guide by their headings."""
    blocks = all_blocks(paper.blocks)
    return {block.heading: block for block in blocks if isinstance(block, Listing)}


def stitched(paper: Paper) -> Stitched:
    """Work all motifs, joins and rounds of the border, and return the stitches of each colour."""
    done: Stitched = Counter()
    told = lists(paper)
    rounds = {
        number: (stitch, stitches, chains)
        for number, stitch, stitches, chains in _rounds(told.get("A motif, round by round"))
    }
    for what, *_ in told["Motifs to make"].rows if "Motifs to make" in told else ():
        for motifs, number, colour in _made(what):
            stitch, stitches, chains = rounds[number]
            done[colour, stitch] += motifs * stitches
            done[colour, "ch"] += motifs * chains
    _join(paper, told, done)
    for heading in ("Border", "Step by step"):
        for (step,) in told[heading].rows if heading in told else ():
            _border(step, done)
    return +done


def _rounds(listing: Listing | None) -> Iterator[tuple[int, str, int, int]]:
    for said, *_ in listing.rows if listing else ():
        found = re.fullmatch(rf"Round (\d+): {STITCHES}\.", said)
        assert found, said
        yield int(found[1]), found[3], count(found[2]), count(found[5])


def _made(what: str) -> Iterator[tuple[int, int, str]]:
    """Yield how many motifs have which round in which colour."""
    found = re.fullmatch(rf"Make {NUMBER}(?: of layout \d+)?: (.*)\.", what)
    assert found, what
    for band in found[2].split(", "):
        of_band = re.fullmatch(r"rounds? (\d+)(?: (?:to|and) (\d+))? (.+)", band)
        assert of_band, band
        for number in range(int(of_band[1]), int(of_band[2] or of_band[1]) + 1):
            yield count(found[1]), number, of_band[3]


def _join(paper: Paper, told: dict[str, Listing], done: Stitched) -> None:
    for (said,) in told["Seams"].rows if "Seams" in told else ():
        found = re.match(
            rf"Seams? (\d+)(?: to (\d+))?, between \w+: (.+), {NUMBER} edges? and {STITCHES}", said
        )
        assert found, said
        if found[6] not in ("needleful", "needlefuls"):
            lines = int(found[2] or found[1]) - int(found[1]) + 1
            done[found[3], found[6]] += lines * count(found[5])
    for (said,) in told["Edgings"].rows if "Edgings" in told else ():
        found = re.match(rf"Edge {NUMBER} motifs?: (.+), {STITCHES} each\.", said)
        assert found, said
        done[found[2], found[4]] += count(found[1]) * count(found[3])
        done[found[2], "ch"] += count(found[1]) * count(found[6])
    _join_in_one_round(paper, told, done)


def _join_in_one_round(paper: Paper, told: dict[str, Listing], done: Stitched) -> None:
    """Work the last round of all motifs, in the colour that its rows are told in."""
    texts = [t for b in all_blocks(paper.blocks) if isinstance(b, Words) for t in b.texts]
    found = re.search(
        rf"The last round of all motifs is one, {STITCHES} round each", " ".join(texts)
    )
    if found is None:
        return
    (step,) = (s for (s,) in told["Step by step"].rows if s.startswith("Joining row"))
    colour = re.match(r"Joining rows?[\d to]*(?:, (.+?): |: (.+?), one joining row)", step)
    assert colour, step
    name = colour[1] or colour[2]
    done[name, found[2]] += motifs_of(paper) * count(found[1])
    done[name, "ch"] += motifs_of(paper) * count(found[4])


def motifs_of(paper: Paper) -> int:
    """Return how many motifs there are, by the facts at the head of the guide."""
    facts = (f for b in all_blocks(paper.blocks) if isinstance(b, Facts) for f in b.facts)
    said = next(fact.text for fact in facts if fact.name == "Motifs")
    return count(said.split(" ")[0])


def _border(step: str, done: Stitched) -> None:
    found = re.match(rf"Border round \d+, (.+?): {NUMBER} (\S+?)[;.]", step)
    if found is None:
        assert step.startswith("Joining row"), step
        return
    done[found[1], found[3]] += count(found[2])
    chains = re.search(r"chain (\d+) at each corner|ch (\d+),", step)
    if chains:
        done[found[1], "ch"] += CORNERS * int(chains[1] or chains[2])


def ends_told(paper: Paper) -> Counter[str]:
    """Return the ends of each colour."""
    ends: Counter[str] = Counter()
    listing = next((b for h, b in lists(paper).items() if h.startswith("Ends ")), None)
    for where, which in listing.rows if listing else ():
        found = re.match(
            rf"(?:about )?{NUMBER} ends?(?: each, {NUMBER} in all)?: (.*?)(;|$)", which
        )
        assert found, which
        times = count(found[2]) // count(found[1]) if found[2] else 1
        own = Counter(
            {one.rpartition(" ")[0]: count(one.rpartition(" ")[2]) for one in found[3].split(", ")}
        )
        assert sum(own.values()) == count(found[1]), where
        for colour, number in own.items():
            ends[colour] += times * number
    return ends
