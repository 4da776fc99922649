"""What every catalogue has to have: the marked sentences, by Babel's own extractor.

`python -m tests.wording.catalogues` brings each catalogue up to date: new sentences come in without
a translation, and those that are gone are left out.
"""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.plurals import get_plural
from babel.messages.pofile import read_po, write_po

PROJECT = Path(__file__).parents[2]
FOLDER = PROJECT / "config" / "languages"
FILES = sorted(FOLDER.glob("*.po"))
MARKS = {"sentence": (1,), "counted": (2, 3), "Term": ((1, "c"), 2)}
WIDTH = 100

HEADER = """\
msgid ""
msgstr ""
"Language: {language}\\n"
"MIME-Version: 1.0\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Content-Transfer-Encoding: 8bit\\n"
"Plural-Forms: nplurals={forms}; plural={plural};\\n"

"""


def marked(folders: tuple[Path, ...] = (PROJECT / "quoting", PROJECT / "exports")) -> Catalog:
    """Return all the sentences that are marked in the source, untranslated."""
    found = Catalog()
    for folder in folders:
        extracted = extract_from_dir(
            folder, [("**.py", "python")], keywords=MARKS, comment_tags=("To translate:",)
        )
        for name, _, text, comments, context in extracted:
            place = (f"{folder.name}/{name}", None)
            found.add(text, locations=[place], auto_comments=comments, context=context)
    return found


def read(file: Path) -> Catalog:
    """Return a catalogue as it stands."""
    with file.open("rb") as text:
        return read_po(text, locale=file.stem, abort_invalid=True)


def brought_up_to_date(file: Path) -> str:
    """Return the text of a catalogue with the sentences that are marked today."""
    catalogue = read(file)
    catalogue.update(marked(), no_fuzzy_matching=True, update_creation_date=False)
    text = BytesIO()
    write_po(
        text, catalogue, width=WIDTH, omit_header=True, sort_by_file=True, ignore_obsolete=True
    )
    header = HEADER.format(
        language=file.stem, forms=catalogue.num_plurals, plural=catalogue.plural_expr
    )
    return f"{catalogue.header_comment}\n{header}{text.getvalue().decode().strip()}\n"


def new_catalogue(language: str) -> str:
    """Return the beginning of a further language's catalogue, with nothing in it yet."""
    plural = get_plural(language)
    return HEADER.format(language=language, forms=plural.num_plurals, plural=plural.plural_expr)


if __name__ == "__main__":
    for each in FILES:
        each.write_text(brought_up_to_date(each), encoding="utf-8")
