"""A further language is a file; and a file that is no catalogue keeps nobody from a quote."""

from __future__ import annotations

import logging
from collections.abc import Callable, Iterator
from decimal import Decimal
from pathlib import Path

import pytest

from quoting import places
from quoting.wording import Speech
from quoting.wording.catalogue_files import catalogue_of
from quoting.wording.catalogues import language_of
from quoting.wording.locale_names import language_names
from tests.wording.catalogues import FOLDER, new_catalogue

Put = Callable[[str, str | bytes], None]

NO_CATALOGUES = [
    "no catalogue at all",
    b"\xff\xfe\x00letters of no alphabet",
    'msgid "Rush"\nmsgstr ',
    'msgid ""\nmsgstr "Content-Type: text/plain; charset=no-such-letters\\n"\n',
    'msgid ""\nmsgstr "Plural-Forms: nplurals=2; plural=__import__(1);\\n"\n'
    'msgid "Rush"\nmsgstr "Fretta"\n',
]


@pytest.fixture
def put(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Put]:
    """Return what puts a catalogue of a language beside a copy of the German one."""
    (tmp_path / "de.po").write_text((FOLDER / "de.po").read_text("utf-8"), encoding="utf-8")
    monkeypatch.setattr(places, "languages_folder", lambda: tmp_path)

    def put_catalogue(language: str, text: str | bytes) -> None:
        content = text if isinstance(text, bytes) else text.encode()
        (tmp_path / f"{language}.po").write_bytes(content)
        forget()

    forget()
    yield put_catalogue
    monkeypatch.undo()
    forget()


def forget() -> None:
    places.catalogue_languages.cache_clear()
    catalogue_of.cache_clear()


def speech(locale: str) -> Speech:
    return Speech(locale=locale, currency="EUR", language=language_of(locale))


def italian(sentence: str = "Rush", said: str = "Urgenza") -> str:
    return f'{new_catalogue("it")}msgid "{sentence}"\nmsgstr "{said}"\n'


def test_a_file_is_a_language(put: Put) -> None:
    assert language_of("it_IT") == "en"
    put("it", italian())
    assert language_of("it_IT") == "it"
    assert speech("it_IT").worded("Rush") == "Urgenza"


@pytest.mark.parametrize("name", ["de backup", "de (1)", "de~", "old.de", "DE", "de_"])
def test_a_file_that_no_language_names_is_none(put: Put, name: str) -> None:
    put(name, (FOLDER / "de.po").read_text("utf-8"))
    assert places.catalogue_languages() == ("de",)
    assert [code for code, _ in language_names()] == ["en_GB", "en_US", "de"]


def test_a_file_of_a_language_that_nobody_knows_is_none_to_choose(put: Put) -> None:
    put("zz", (FOLDER / "de.po").read_text("utf-8"))
    assert [code for code, _ in language_names()] == ["en_GB", "en_US", "de"]


def test_what_a_catalogue_lacks_is_said_in_english(put: Put) -> None:
    put("it", italian())
    said = speech("it_IT")
    assert said.worded("Discount") == "Discount"
    assert said.counted(1, "{n} row", "{n} rows") == "1 row"
    assert said.counted(7, "{n} row", "{n} rows") == "7 rows"
    assert said.stitch("hdc") == "hdc"
    assert said.stitch_in_full("hdc") == "half double crochet"


@pytest.mark.parametrize("said", ["{", "{0}", "{h}", "{n.real}", "{n!z}", "{n:99x}"])
def test_a_translation_that_cannot_be_said_is_left_out(
    put: Put, caplog: pytest.LogCaptureFixture, said: str
) -> None:
    put("it", f'{italian()}\nmsgid "{{n}}\u00a0h"\nmsgstr "{said}"\n')
    assert speech("it_IT").hours(Decimal(3)) == "3\u00a0h"
    assert "it.po: the names in braces differ" in caplog.text


def test_an_unsure_translation_is_not_said(put: Put) -> None:
    put("it", f'{italian()}\n#, fuzzy\nmsgid "Discount"\nmsgstr "Sconto"\n')
    assert speech("it_IT").worded("Discount") == "Discount"


@pytest.mark.parametrize("text", NO_CATALOGUES)
def test_a_file_that_is_no_catalogue_is_told_in_the_log_and_english_is_said(
    put: Put, caplog: pytest.LogCaptureFixture, text: str | bytes
) -> None:
    put("it", text)
    with caplog.at_level(logging.WARNING):
        assert language_of("it_IT") == "en"
    assert "it.po is no catalogue" in caplog.text
    assert speech("it_IT").worded("Rush") == "Rush"
    assert speech("de_DE").worded("Rush") == "Eilzuschlag"


def test_a_country_may_have_a_catalogue_of_its_own(put: Put) -> None:
    put("de_AT", italian(said="Eilaufschlag").replace('"Language: it', '"Language: de_AT'))
    assert language_of("de_AT") == "de_AT"
    assert speech("de_AT").worded("Rush") == "Eilaufschlag"
    assert speech("de_DE").worded("Rush") == "Eilzuschlag"
    assert language_of("de_LU") == "de"
