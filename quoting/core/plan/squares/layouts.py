"""Which layouts of colours there are, how many motifs have each, and where they lie."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from quoting.core.ground.cautions import Caution, for_maker
from quoting.core.ground.codes import CautionCode, MistakeCode
from quoting.core.ground.errors import Checks, refuse
from quoting.core.ground.place import at
from quoting.core.ground.sameness import NEAR
from quoting.core.order.joined_squares import JoinedSquares, JoinMethod, Pool

TABLE = at("blanket", "squares")


@dataclass(frozen=True, slots=True, kw_only=True)
class LaidOut:
    """So many motifs whose rounds have these colours: the layout `number`, from 0."""

    number: int
    colours: tuple[str, ...]
    count: int


def laid_out(body: JoinedSquares, rounds: int, total: int) -> tuple[LaidOut, ...]:
    """Return the layouts of so many motifs, also those that none has.

    Errors: `colours-not-rounds`, `no-round-to-mix`, `counts-do-not-add`, `one-last-colour`.
    """
    found = _of_pool(body.pool, rounds, total) if body.pool else _of_layouts(body, rounds, total)
    if body.join.method is JoinMethod.CONTINUOUS:
        for layout in found:
            if layout.colours[-1] != body.join.colour:
                raise refuse(
                    TABLE / at("join", "colour"),
                    MistakeCode.ONE_LAST_COLOUR,
                    read=body.join.colour,
                    wanted=layout.colours[-1],
                    line=layout.number + 1,
                )
    return tuple(found)


def layout_cautions(body: JoinedSquares, found: Sequence[LaidOut]) -> Iterator[Caution]:
    """Yield that layouts which the maker gave come to no motif, by their numbers from 1."""
    if body.pool is not None:
        return
    none = tuple(layout.number + 1 for layout in found if not layout.count)
    if none:
        yield for_maker(
            CautionCode.LAYOUT_LEFT_OUT,
            layout=none[0] if len(none) == 1 else None,
            layouts=none if len(none) > 1 else (),
            motifs=sum(layout.count for layout in found),
        )


def _of_layouts(body: JoinedSquares, rounds: int, total: int) -> list[LaidOut]:
    checks = Checks()
    for number, layout in enumerate(body.layouts, 1):
        if len(layout.colours) != rounds:
            checks.add(
                TABLE / at("layouts", number, "colours"),
                MistakeCode.COLOURS_NOT_ROUNDS,
                read=len(layout.colours),
                wanted=rounds,
            )
    checks.done()
    exact = sum(layout.count or 0 for layout in body.layouts)
    open_ones = [layout for layout in body.layouts if layout.count is None]
    if exact > total or (exact < total and not open_ones):
        raise refuse(TABLE / at("layouts"), MistakeCode.COUNTS_DO_NOT_ADD, read=exact, wanted=total)
    shared = iter(largest_remainders(total - exact, [layout.weight for layout in open_ones]))
    return [
        LaidOut(
            number=number,
            colours=layout.colours,
            count=next(shared) if layout.count is None else layout.count,
        )
        for number, layout in enumerate(body.layouts)
    ]


def _of_pool(pool: Pool, rounds: int, total: int) -> list[LaidOut]:
    """Return a pool's colours mixed evenly: each begins as many motifs, and then they take turns.

    So each comes as often in each round, and none lies next to itself.
    """
    inner = rounds - len(pool.outer)
    if inner < 1:
        raise refuse(
            TABLE / at("pool", "outer"),
            MistakeCode.NO_ROUND_TO_MIX,
            read=len(pool.outer),
            wanted=rounds,
        )
    colours = pool.colours
    counts = largest_remainders(total, [1.0] * len(colours))
    return [
        LaidOut(
            number=first,
            colours=(
                *(colours[(first + number) % len(colours)] for number in range(inner)),
                *pool.outer,
            ),
            count=count,
        )
        for first, count in enumerate(counts)
    ]


def largest_remainders(total: int, shares: Sequence[float]) -> list[int]:
    """Return whole parts of a total in proportion: what is left over goes by largest remainder."""
    whole = sum(shares)
    parts = [total * share / whole for share in shares] if whole else []
    counts = [int(part + NEAR) for part in parts]
    by_remainder = sorted(range(len(parts)), key=lambda n: (round(counts[n] - parts[n], 9), n))
    for number in by_remainder[: total - sum(counts)]:
        counts[number] += 1
    return counts
