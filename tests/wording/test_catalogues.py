"""Every catalogue has every sentence that a buyer may read, whole and as its language writes."""

from __future__ import annotations

import ast
import re
from collections import Counter
from collections.abc import Iterator
from pathlib import Path

import pytest
from babel.messages.catalog import Message
from babel.messages.plurals import get_plural

from quoting.wording.catalogue_files import facts_named
from tests.test_house import FILES as SOURCES
from tests.wording.catalogues import FILES, MARKS, brought_up_to_date, marked, read

SENTENCES = [message for message in marked() if message.id]
TYPED_ON_A_KEYBOARD = re.compile(r"[\"']|\.\.\.|  ")
UNBROKEN = re.compile(r"[ \u00a0][;:!?»]|« |«\u00a0")

by_language = pytest.mark.parametrize("file", FILES, ids=lambda file: file.stem)


def texts(said: str | tuple[str, ...] | list[str]) -> tuple[str, ...]:
    return (said,) if isinstance(said, str) else tuple(said)


def translations(file: Path) -> Iterator[tuple[Message, str]]:
    """Yield every text of a catalogue with the message that it belongs to."""
    for message in read(file):
        if message.id:
            for text in texts(message.string):
                yield message, text


def test_buyers_read_five_languages() -> None:
    assert {file.stem for file in FILES} >= {"de", "es", "fr", "nl"}
    assert len(SENTENCES) > 20


@by_language
def test_a_catalogue_has_the_sentences_that_are_marked_and_no_others(file: Path) -> None:
    """`python -m tests.wording.catalogues` brings it up to date; what is new is then empty."""
    assert file.read_text("utf-8") == brought_up_to_date(file)


@by_language
def test_nothing_is_left_untranslated_or_unsure(file: Path) -> None:
    assert [m.id for m, text in translations(file) if m.fuzzy or not text.strip()] == []


@by_language
def test_a_translation_has_the_facts_of_its_sentence(file: Path) -> None:
    """Of a count, those of one or of several: `it` may stand where there is one."""
    differ = [
        text
        for message, text in translations(file)
        if facts_named(text) not in {facts_named(told) for told in texts(message.id)}
    ]
    assert differ == []


@by_language
def test_a_count_has_as_many_forms_as_the_catalogue_says(file: Path) -> None:
    """At most those of CLDR, by Babel: French and Spanish have one more there, for millions."""
    catalogue = read(file)
    forms = {len(message.string) for message in catalogue if not isinstance(message.id, str)}
    assert forms == {catalogue.num_plurals}
    assert 2 <= catalogue.num_plurals <= get_plural(file.stem).num_plurals


@by_language
def test_a_translation_ends_as_its_sentence_does(file: Path) -> None:
    """What is a whole sentence stays one, and a text that others follow does not become one."""
    ends = [
        (message.id, text)
        for message, text in translations(file)
        for end in [texts(message.id)[0][-1:]]
        if text[-1:] != end and (end in ".:;!?" or text[-1:] in ":;!?")
    ]
    assert ends == []


@by_language
def test_quotes_dashes_and_spaces_are_those_of_print(file: Path) -> None:
    assert [t for _, t in translations(file) if TYPED_ON_A_KEYBOARD.search(t)] == []
    assert [t for _, t in translations(file) if t != t.strip()] == []


def test_french_has_a_narrow_space_before_its_high_marks() -> None:
    """Common practice of French print; Babel has it in numbers likewise."""
    (french,) = (file for file in FILES if file.stem == "fr")
    said = [text for _, text in translations(french)]
    assert [text for text in said if UNBROKEN.search(text)] == []
    assert [text for text in said if re.search(r"\w[;:!?]", text)] == []


def test_no_two_sentences_differ_by_their_capitals_alone() -> None:
    told = Counter(
        (message.context, text.casefold())
        for message in SENTENCES
        for text in texts(message.id)[:1]
    )
    assert [text for text, count in told.items() if count > 1] == []


def test_a_sentence_is_marked_where_it_stands() -> None:
    """Babel reads the source and runs none of it: what a name stands for it does not know."""
    assert [place for place, texts in marks() if not all(map(is_written_out, texts))] == []


def marks() -> Iterator[tuple[str, list[ast.expr]]]:
    """Yield the texts that each call of the source marks, with where it stands."""
    for file in SOURCES:
        source = file.read_text("utf-8")
        if any(f"{name}(" in source for name in MARKS):
            for node in ast.walk(ast.parse(source)):
                if isinstance(node, ast.Call) and (found := marked_by(node)):
                    yield f"{file.name}:{node.lineno}", found


def marked_by(call: ast.Call) -> list[ast.expr]:
    """Return the texts that a call marks; none where it marks none."""
    match call.func:
        case ast.Attribute(attr="counted"):
            return call.args[1:3]
        case ast.Name(id="sentence" | "Term"):
            return call.args
        case _:
            return []


def is_written_out(text: ast.expr) -> bool:
    return isinstance(text, ast.Constant) and isinstance(text.value, str)
