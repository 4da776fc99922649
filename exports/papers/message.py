"""A paper as plain text, to be pasted into a message.

Each amount and each fact is a line, `name: amount`, as letters of a message have no common width;
how the two are joined is for each language to say.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from quoting.wording.catalogues import sentence, translated
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

# To translate: a line of a message, as `Total: £100`, with this language's space before a colon.
_JOINED = sentence("{name}: {value}")


def paper_text(paper: Paper) -> str:
    """Return a paper as plain text; what it draws is left out."""
    head = "\n".join(line for line in (paper.title, paper.heading) if line)
    foot = "\n".join((paper.maker, *paper.address)).strip()
    parts = (head, *_parts(paper.blocks, paper.language), foot)
    return "\n\n".join(_plain(part) for part in parts if part) + "\n"


def _parts(blocks: Iterable[Block], language: str) -> Iterator[str]:
    """Yield the text of each block that has any."""
    for block in blocks:
        if isinstance(block, Beside):
            for column in sorted(block.columns, key=_is_drawn):
                yield from _parts(column, language)
        elif not isinstance(block, Picture):
            yield "\n".join(filter(None, (block.heading, *_lines(block, language))))


def _is_drawn(column: tuple[Block, ...]) -> bool:
    """Return whether a column is there for its drawing: what stands under that comes later."""
    return any(isinstance(block, Picture) for block in column)


def _lines(block: Words | Amounts | Facts | Listing, language: str) -> Iterator[str]:
    match block:
        case Words(warning=""):
            yield "\n\n".join(block.texts)
        case Words():
            yield "\n\n".join(f"{block.warning} {text}" for text in block.texts)
        case Amounts():
            yield from (_joined(row.name, row.amount, language) for row in block.rows)
        case Facts():
            for fact in block.facts:
                yield _joined(fact.name, _fact_text(fact), language)
        case Listing():
            yield from _listed(block, language)


def _fact_text(fact: SaidFact) -> str:
    return fact.text or ", ".join(colour.name for colour in fact.colours)


def _listed(block: Listing, language: str) -> Iterator[str]:
    """Yield a line for each row, its cells named by their heads but for the first."""
    mark = TO_TICK if block.ticks else MARK
    for first, *others in block.rows:
        named = zip(block.heads[1:], others, strict=True)
        said = ", ".join(f"{head} {cell}".strip() for head, cell in named if cell)
        yield f"{mark} {_joined(first, said, language) if said else first}"


def _joined(name: str, value: str, language: str) -> str:
    """Return a name and what is said of it, as the language joins them."""
    return translated(_JOINED, language).format(name=name, value=value)


def _plain(text: str) -> str:
    """Return a text without spaces that no line may break at, which some messages show as boxes."""
    return text.replace("\u00a0", " ").replace("\u202f", " ").strip("\n")
