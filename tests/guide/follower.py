"""A follower of working guides, who knows nothing of a blanket but the words of its guide.

She reads the sentences as a crocheter does, works them row by row, and tells what she worked.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from quoting.wording.paper import Beside, Block, Listing, Paper, Words

CORNERS = 4
OTHER = {"right-hand": "left-hand", "left-hand": "right-hand"}
BEGINNINGS = {"start it": "start", "carry it up": "carry-up"}
ENDINGS = {"leave it waiting": "wait", "cut it": "cut", "fasten it off": "fasten-off"}
ACTS = BEGINNINGS | ENDINGS
NUMBER = r"([\d,]+)"
AN_ACT = "|".join(ACTS)
CLAUSE = re.compile(rf"({AN_ACT}) (.*?)(?:(,| but for| the) (?:the )?(first|last) time(.*))?$")


@dataclass(frozen=True, kw_only=True)
class Worked:
    """A row or round as it was worked, and what was done with its yarn at its two ends."""

    kind: str
    number: int
    colour: str
    stitch: str
    count: int
    chains: int
    starts: str
    ends: str
    begins_with: str = ""
    ends_with: str = ""


@dataclass
class Stripe:
    """A colour, rows, and stitches, as they are told."""

    colour: str
    rows: int
    count: int
    stitch: str
    corner_chains: int = 0
    handling: list[str] = field(default_factory=list)


def all_blocks(blocks: Sequence[Block]) -> Iterator[Block]:
    """Yield the blocks of a paper, those side by side too."""
    for block in blocks:
        if isinstance(block, Beside):
            for column in block.columns:
                yield from all_blocks(column)
        else:
            yield block


def listing(paper: Paper, heading: str) -> Listing:
    """Return the table with a heading."""
    blocks = (block for block in all_blocks(paper.blocks) if isinstance(block, Listing))
    return next(block for block in blocks if block.heading == heading)


def follow(paper: Paper) -> list[Worked]:
    """Work a whole guide."""
    follower = Follower(paper)
    for step, _ in listing(paper, "Step by step").rows:
        follower.work(step)
    return follower.done


class Follower:
    """She has read what to know before she begins."""

    def __init__(self, paper: Paper) -> None:
        texts = [t for b in all_blocks(paper.blocks) if isinstance(b, Words) for t in b.texts]
        before = " ".join(texts)
        self.first_edge = re.findall(r"begins at the (\S+) edge", before)[0]
        self.corner = next(iter(re.findall(r"from the upper (\S+) corner", before)), "")
        self.turns = {
            stitch: int(chains) if "not" in counted else 0
            for stitch, chains, counted in re.findall(
                r"A row of (\S+) is turned to with (\d+) chains?, which (counts?|do\S* not count)",
                before,
            )
        }
        self.done: list[Worked] = []

    def work(self, step: str) -> None:
        """Work one step."""
        sentence, _, yarn = step.removesuffix(".").partition(". ")
        rows, work = re.split(r", |: ", sentence, maxsplit=1)
        kind, first, last = _which(rows)
        stripes, times = read_stripes(work)
        told = list(handled(yarn, stripes, times))
        number = first
        for time in range(times):
            for stripe, clauses in zip(stripes, told, strict=True):
                for row in range(stripe.rows or last - first + 1):
                    begins = row == 0
                    ends = row == (stripe.rows or last - first + 1) - 1
                    self._row(kind, number, stripe, clauses, time, times, begins, ends)
                    number += 1
        assert number == last + 1, f"{rows} are not {number - first} rows"

    def _row(
        self,
        kind: str,
        number: int,
        stripe: Stripe,
        clauses: list[str],
        time: int,
        times: int,
        begins: bool,  # noqa: FBT001
        ends: bool,  # noqa: FBT001
    ) -> None:
        starts, stops = self._edges(kind, number)
        acts = {
            act: where
            for clause in clauses
            for act, where in acts_of(clause, time, times)
            if (act in BEGINNINGS.values() and begins) or (act in ENDINGS.values() and ends)
        }
        begun = [act for act in acts if act in BEGINNINGS.values()]
        ended = [act for act in acts if act in ENDINGS.values()]
        for act, edge in [(act, starts) for act in begun] + [(act, stops) for act in ended]:
            assert acts[act].startswith("where its") or acts[act] == f"at the {edge} edge"
        turn = self.turns.get(stripe.stitch, 0) if kind == "row" and number > 1 else 0
        self.done.append(
            Worked(
                kind=kind,
                number=number,
                colour=stripe.colour,
                stitch=stripe.stitch,
                count=stripe.count,
                chains=turn + CORNERS * stripe.corner_chains,
                starts=starts,
                ends=stops,
                begins_with="".join(begun),
                ends_with="".join(ended),
            )
        )

    def _edges(self, kind: str, number: int) -> tuple[str, str]:
        if kind == "chain":
            return OTHER[self.first_edge], self.first_edge
        if kind == "round":
            return self.corner, self.corner
        edges = (self.first_edge, OTHER[self.first_edge])
        return edges if number % 2 else edges[::-1]


def _which(rows: str) -> tuple[str, int, int]:
    """Return what kind of work some rows are, the first and the last."""
    if rows == "Foundation chain":
        return "chain", 0, 0
    found = re.fullmatch(r"(Row|Border round)s? (\d+)(?: to (\d+))?", rows)
    assert found, rows
    kind = "row" if found[1] == "Row" else "round"
    return kind, int(found[2]), int(found[3] or found[2])


def read_stripes(work: str) -> tuple[list[Stripe], int]:
    """Return the stripes that a step tells, and how many times; 0 rows: all that the step has."""
    if found := re.fullmatch(rf"(.+): chain {NUMBER}", work):
        return [Stripe(found[1], 0, _count(found[2]), "ch")], 1
    if found := re.fullmatch(rf"(.+), {NUMBER} times(?:; {NUMBER} (\S+) each row)?", work):
        return list(_repeated(found[1], found[3], found[4])), _count(found[2])
    found = re.fullmatch(rf"(.+?): {NUMBER} (\S+?)(?: each)?(?:; (.*))?", work)
    assert found, work
    return [Stripe(found[1], 0, _count(found[2]), found[3], _corner_chains(found[4] or ""))], 1


def _repeated(told: str, count: str | None, stitch: str | None) -> Iterator[Stripe]:
    if found := re.fullmatch(r"(.+), (?:one row|(\d+) rows) each", told):
        for colour in found[1].split(", "):
            yield Stripe(colour, int(found[2] or 1), _count(count), stitch or "")
        return
    for one in told.split(", "):
        found = re.fullmatch(rf"(.+) (\d+) rows?(?: of {NUMBER} (\S+))?", one)
        assert found, told
        yield Stripe(found[1], int(found[2]), _count(found[3] or count), found[4] or stitch or "")


def _corner_chains(details: str) -> int:
    found = re.search(r"chain (\d+) at each corner|\(.*?, ch (\d+), .*?\)", details)
    return int(found[1] or found[2]) if found else 0


def _count(text: str | None) -> int:
    assert text, "no count is told"
    return int(text.replace(",", ""))


def handled(yarn: str, stripes: list[Stripe], times: int) -> Iterator[list[str]]:
    """Yield what is told of the yarn of each stripe, clause by clause."""
    if len(stripes) == times == 1:
        yield [part for part in yarn.split("; ") if part]
        return
    for sentence in re.split(r"(?<=\.) ", yarn):
        colours, words = sentence.rstrip(".").split(": ")
        for _ in colours.split(", "):
            yield words.split("; ")


def acts_of(clause: str, time: int, times: int) -> Iterator[tuple[str, str]]:
    """Yield what a clause has done in one of so many repeats, and where."""
    if clause == "go on with it":
        return
    found = CLAUSE.fullmatch(clause[0].lower() + clause[1:])
    assert found, clause
    act, where, how, which, rest = found.groups()
    special = {"first": time == 0, "last": time == times - 1, None: False}[which]
    if how == " but for":
        if not special:
            yield ACTS[act], where
    elif how == " the":
        if special:
            yield ACTS[act], where
        elif rest:
            yield ACTS[rest.removeprefix(", then ").removesuffix(" there")], where
    elif how == "," and special:
        yield ACTS[rest.strip().removesuffix(" there")], where
    else:
        yield ACTS[act], where
