"""A paper: a document in words, block by block, before it is a page, a PDF or a plain text.

Whatever goes to a buyer or beside the hook is one: the same words come out of each of the three,
as none of them has any of its own.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from quoting.core.quote.offer import OfferedColour


class Sheet(StrEnum):
    """What a paper is printed on."""

    A4 = "a4"
    LETTER = "us-letter"


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidRow:
    """One amount and its name; a total is told with more weight."""

    name: str
    amount: str
    is_total: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class SaidFact:
    """One fact beside its name; where it names colours, these are they.

    `of` marks a text that somebody typed, as in `people_texts`.
    """

    name: str
    text: str
    colours: tuple[OfferedColour, ...] = ()
    of: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Words:
    """Paragraphs under a heading, which may be empty; `as_typed` keep their own lines.

    A `warning` is told with a border and a word of its own before it: `Please note:`.
    """

    heading: str = ""
    texts: tuple[str, ...]
    as_typed: bool = False
    warning: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Amounts:
    """Amounts beside their names, right-aligned."""

    heading: str = ""
    rows: tuple[SaidRow, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Facts:
    """Facts beside their names."""

    heading: str = ""
    facts: tuple[SaidFact, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Listing:
    """A table: `heads`, then a text for each head in every row; from a column on they are figures.

    With `ticks`, each row has a box to be ticked by hand. `codes`, if any, has a colour as
    `#rrggbb` for each row, or an empty text.
    """

    heading: str = ""
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    figures_from: int
    ticks: bool = False
    codes: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A drawing as SVG, which bears its own title and description; `in_words` say it in text."""

    svg: str
    in_words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """Blocks in columns side by side, one below the other where there is no room."""

    columns: tuple[tuple[Block, ...], ...]


Block = Words | Amounts | Facts | Listing | Picture | Beside


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """A document in words. `name` is that of the whole, for a file or a tab; `maker` whose it is.

    `language` is that of what the program says in it, by the name of its catalogue. `address` are
    lines of the maker's, as she typed them. `sheet` is that of its reader's country
    (`locales.sheet_of`).
    """

    language: str
    sheet: Sheet = Sheet.A4
    name: str
    maker: str = ""
    address: tuple[str, ...] = ()
    title: str
    heading: str = ""
    blocks: tuple[Block, ...]

    @property
    def language_tag(self) -> str:
        """Its language as pages and readers of PDFs are told (BCP 47): `de`, `de-AT`."""
        return self.language.replace("_", "-")
