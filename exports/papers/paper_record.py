"""A paper as data, from which a template prints it."""

from __future__ import annotations

from dataclasses import asdict

from quoting.wording.paper import Beside, Block, Paper, Picture

Record = dict[str, object]


def paper_record(paper: Paper) -> Record:
    """Return a paper as JSON can hold it, each block with its kind and what that has."""
    record = {name: value for name, value in asdict(paper).items() if name != "blocks"}
    language, _, region = paper.language_tag.partition("-")
    blocks = [_block_record(block) for block in paper.blocks]
    return record | {"language": language, "region": region, "blocks": blocks}


def _block_record(block: Block) -> Record:
    kind = {"kind": type(block).__name__.lower()}
    if isinstance(block, Beside):
        columns = [[_block_record(each) for each in column] for column in block.columns]
        is_drawn = [any(isinstance(each, Picture) for each in column) for column in block.columns]
        return kind | {"columns": columns, "is_drawn": is_drawn}
    return kind | asdict(block)
