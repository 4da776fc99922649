"""A paper as plain text, to be pasted into a message.

Each amount and each fact is a line, `name: amount`, as letters of a message have no common width.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from quoting.wording.paper import (
    Amounts,
    Beside,
    Block,
    Facts,
    Listing,
    Paper,
    Picture,
    SaidFact,
    Words,
)

MARK, TO_TICK = "•", "☐"


def paper_text(paper: Paper) -> str:
    """Return a paper as plain text; what it draws is left out."""
    head = "\n".join(line for line in (paper.title, paper.heading) if line)
    foot = "\n".join((paper.maker, *paper.address)).strip()
    parts = (head, *_parts(paper.blocks), foot)
    return "\n\n".join(_plain(part) for part in parts if part) + "\n"


def _parts(blocks: Iterable[Block]) -> Iterator[str]:
    """Yield the text of each block that has any."""
    for block in blocks:
        if isinstance(block, Beside):
            for column in block.columns:
                yield from _parts(column)
        elif not isinstance(block, Picture):
            yield "\n".join(filter(None, (block.heading, *_lines(block))))


def _lines(block: Words | Amounts | Facts | Listing) -> Iterator[str]:
    match block:
        case Words(warning=""):
            yield "\n\n".join(block.texts)
        case Words():
            yield "\n\n".join(f"{block.warning} {text}" for text in block.texts)
        case Amounts():
            yield from (f"{row.name}: {row.amount}" for row in block.rows)
        case Facts():
            yield from (f"{fact.name}: {_fact_text(fact)}" for fact in block.facts)
        case Listing():
            yield from _listed(block)


def _fact_text(fact: SaidFact) -> str:
    return fact.text or ", ".join(colour.name for colour in fact.colours)


def _listed(block: Listing) -> Iterator[str]:
    """Yield a line for each row, its cells named by their heads but for the first."""
    mark = TO_TICK if block.ticks else MARK
    for first, *others in block.rows:
        named = zip(block.heads[1:], others, strict=True)
        said = ", ".join(f"{head} {cell}".strip() for head, cell in named if cell)
        yield f"{mark} {first}: {said}" if said else f"{mark} {first}"


def _plain(text: str) -> str:
    """Return a text without spaces that no line may break at, which some messages show as boxes."""
    return text.replace("\u00a0", " ").replace("\u202f", " ").strip("\n")
