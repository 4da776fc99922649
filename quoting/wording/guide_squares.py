"""The guide of joined motifs: a motif's rounds, how many of each layout, where they lie, joins."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace

from quoting.core.estimate.yarn_needed import yarn_by_pass
from quoting.core.guide.guide import Guide
from quoting.core.guide.motifs import MotifsToMake, SeamLines
from quoting.core.order.joined_squares import JoinMethod
from quoting.core.plan.parts import PartKind
from quoting.core.plan.passes import Pass, Plan, Work
from quoting.core.plan.squares.seams import BRAID_CHAINS
from quoting.core.plan.squares_grid import SquaresGrid
from quoting.core.workshop.stitches import Stitch
from quoting.wording.guide_one_round import one_round_sentences
from quoting.wording.guide_rounds import round_stitches
from quoting.wording.paper import Block, Listing, Words
from quoting.wording.phrases import listed
from quoting.wording.speech import Speech

NO_FIGURES = 99
"""After all columns."""

JOINED: Mapping[JoinMethod, str] = {
    JoinMethod.AS_YOU_GO: (
        "Join as you go: work the last round of each motif into those beside it, along {edges} in "
        "all. It takes no yarn besides."
    ),
    JoinMethod.CONTINUOUS: (
        "The last round of all motifs is one, {last} round each, without a cut: work it into the "
        "motifs beside and above, along {edges} in all."
    ),
    JoinMethod.SLIP_STITCH: "Join with a seam of slip stitches, the right sides together.",
    JoinMethod.SINGLE_CROCHET: (
        "Join with a seam of {sc}, which leaves a ridge, the wrong sides together."
    ),
    JoinMethod.WHIPSTITCH: "Join with whipstitch, edge to edge, a needleful at a time.",
    JoinMethod.MATTRESS: "Join with mattress stitch, edge to edge, a needleful at a time.",
    JoinMethod.FLAT_BRAID: (
        "Work an edging round each motif: {sc} in every second stitch or chain, a loop of {loop} "
        "after each; join the loops to those beside it, along {edges} in all."
    ),
}
"""How motifs are joined (common practice)."""


def motif_rounds_listing(guide: Guide, speech: Speech) -> Listing:
    """Return the rounds of a motif, which all layouts share, with its side and its yarn."""
    plan = guide.quote.plan
    yarn_m, first = yarn_by_pass(plan, guide.quote.order), guide.motifs[0].rounds
    side_cm, rows = 0.0, []
    for worked, length_m in zip(first, yarn_m, strict=False):
        side_cm += 2 * worked.height_cm
        rows.append(
            (_round(worked, plan, speech), speech.length(side_cm), speech.yarn_length(length_m, 2))
        )
    return Listing(
        heading="A motif, round by round",
        heads=("What to work", "Side", "Yarn"),
        rows=tuple(rows),
        figures_from=1,
    )


def _round(worked: Pass, plan: Plan, speech: Speech) -> str:
    return f"Round {worked.number}: {_stitches(worked, plan, speech)}."


def _stitches(worked: Pass, plan: Plan, speech: Speech) -> str:
    assert plan.counted is not None, "motifs are counted"  # noqa: S101
    said = round_stitches(worked, plan.counted, speech)
    chains = worked.stitches.get(Stitch.CH, 0)
    return f"{said}, {speech.count(chains, 'chain')}" if chains else said


def motifs_listing(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Listing:
    """Return how many motifs of each layout there are to make, to be ticked."""
    return Listing(
        heading="Motifs to make",
        heads=("What to make", "Yarn of one", "Ends"),
        rows=tuple(
            (
                f"Make {speech.number(one.count)}{_of_layout(one, guide)}: {layout_words(one)}.",
                ", ".join(
                    f"{colour} {speech.yarn_length(length_m)}"
                    for colour, length_m in one.yarn_m.items()
                ),
                speech.number(ends.each),
            )
            for one, ends in zip(guide.motifs, guide.part_ends, strict=False)
        ),
        figures_from=2,
        ticks=True,
        codes=tuple(
            codes.get(one.bands[0][0].colour, "") if len(one.bands) == 1 else ""
            for one in guide.motifs
        ),
    )


def layout_words(motifs: MotifsToMake) -> str:
    """Return the colours of a layout round by round: `round 1 teal, rounds 2 to 5 oat`."""
    return ", ".join(_band(band) for band in motifs.bands)


def _band(band: tuple[Pass, ...]) -> str:
    first, last = band[0], band[-1]
    if first is last:
        return f"round {first.number} {first.colour}"
    joined = "and" if last.number == first.number + 1 else "to"
    return f"rounds {first.number} {joined} {last.number} {first.colour}"


def _of_layout(one: MotifsToMake, guide: Guide) -> str:
    return f" of layout {one.layout + 1}" if len(guide.motifs) > 1 else ""


def grid_blocks(guide: Guide, speech: Speech) -> Iterator[Block]:
    """Yield where the motifs of each layout lie, row by row; nothing where all are alike."""
    grid = guide.quote.plan.grid
    if grid is None or len(guide.motifs) <= 1:
        return
    alike: dict[tuple[int, ...], list[int]] = {}
    for row in range(grid.rows):
        here = tuple(grid.layout_at(column, row) + 1 for column in range(grid.columns))
        alike.setdefault(here, []).append(row + 1)
    yield Listing(
        heading="Where each lies",
        heads=("Row from the top", "Layouts, from the left"),
        rows=tuple(
            (", ".join(map(speech.number, rows)), "  ".join(map(str, here)))
            for here, rows in alike.items()
        ),
        figures_from=NO_FIGURES,
    )


def joins_blocks(guide: Guide, codes: Mapping[str, str], speech: Speech) -> Iterator[Block]:
    """Yield how the motifs are joined, and the seams to be ticked, if there are any."""
    plan, grid = guide.quote.plan, guide.quote.plan.grid
    if grid is None or not grid.shared_edges:
        return
    texts = [_joined(plan, grid, speech)]
    if grid.method is JoinMethod.CONTINUOUS:
        texts += one_round_sentences(grid, speech)
    yield Words(heading="Joining", texts=tuple(texts))
    rows = [(_seams(lines, speech), lines.works[0].colour) for lines in guide.seams]
    rows += [
        (_edging(worked, grid, speech), worked.colour)
        for worked in plan.passes
        if plan.part_of(worked).kind is PartKind.EDGING
    ]
    if rows:
        yield Listing(
            heading="Seams" if guide.seams else "Edgings",
            heads=("What to join",),
            rows=tuple((words,) for words, _ in rows),
            figures_from=NO_FIGURES,
            ticks=True,
            codes=tuple(codes.get(colour, "") for _, colour in rows),
        )


def _joined(plan: Plan, grid: SquaresGrid, speech: Speech) -> str:
    edges, last = speech.count(grid.shared_edges, "edge"), ""
    if grid.method is JoinMethod.CONTINUOUS:
        row = next(worked for worked in plan.passes if worked.work is Work.SEAM)
        of_one = {stitch: count // grid.columns for stitch, count in row.stitches.items()}
        last = _stitches(replace(row, stitches=of_one), plan, speech)
    said, loop = speech.stitch(Stitch.SC), speech.count(BRAID_CHAINS, "chain")
    return JOINED[grid.method].format(edges=edges, last=last, sc=said, loop=loop)


def _seams(lines: SeamLines, speech: Speech) -> str:
    """Return seams alike: `Seams 1 to 7, between columns: oat, 11 edges and 231 sc each`."""
    numbers = seam_numbers(lines.first, lines.count)
    each = " each" if lines.count > 1 else ""
    said = (speech.count(lines.edges, "edge"), seam_work_words(lines.works, speech))
    colour = lines.works[0].colour
    return f"{numbers}, between {lines.between}: {colour}, {listed(said, 'and')}{each}."


def seam_numbers(first: int, count: int) -> str:
    """Return which seams some are: `Seams 1 to 7`, `Seam 8`."""
    return f"Seam {first}" if count == 1 else f"Seams {first} to {first + count - 1}"


def seam_work_words(works: tuple[Pass, ...], speech: Speech) -> str:
    """Return what a seam is worked with: `231 sc`, `3 needlefuls of 1.4 m`."""
    first = works[0]
    if first.sewn_m:
        return f"{speech.count(len(works), 'needleful')} of {speech.yarn_length(first.sewn_m, 2)}"
    count = first.stitches[first.stitch]
    said = f"{speech.number(count)} {speech.stitch(first.stitch)}"
    chains = first.stitches.get(Stitch.CH, 0)
    return f"{said} and {speech.count(chains, 'chain')}" if chains else said


def _edging(worked: Pass, grid: SquaresGrid, speech: Speech) -> str:
    motifs = speech.count(grid.count, "motif")
    return f"Edge {motifs}: {worked.colour}, {seam_work_words((worked,), speech)} each."
