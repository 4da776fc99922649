"""Of very many mistakes the first are told and the rest counted, and none takes long to look at."""

from __future__ import annotations

import difflib
from collections.abc import Callable

import pytest

from quoting.core.ground.errors import MORE, MOST_TOLD, Checks, Mistake, Refused
from quoting.core.ground.place import at
from quoting.core.workshop.workshop import Workshop
from quoting.places import demo_workshop
from quoting.schema import load_order_text, load_workshop_text
from quoting.schema.notes import MOST_LIKENED
from quoting.wording import FILE_SPEECH, mistake_sentence
from tests.files.samples import EVERY_KEY_OF_AN_ORDER

HEAD, _, REST = EVERY_KEY_OF_AN_ORDER.read_text("utf-8").partition("[[blanket.sections]]")
EXTRAS = "[[extras]]"


def many_extras(count: int) -> str:
    text = EVERY_KEY_OF_AN_ORDER.read_text("utf-8").partition(EXTRAS)
    price = text[2].partition("[price]")
    return text[0] + f"{EXTRAS}\nwhat = 1\n" * count + "".join(price[1:])


def stripes_of_unknown_colours(sections: int, stripes: int) -> str:
    some = ", ".join(f'{{ colour = "dye {number}" }}' for number in range(stripes))
    return HEAD + f"[[blanket.sections]]\nstripes = [{some}]\n" * sections


def unknown_keys(count: int) -> str:
    text = EVERY_KEY_OF_AN_ORDER.read_text("utf-8")
    return "".join(f"key_{number} = 1\n" for number in range(count)) + text


def refused(read: Callable[[], object]) -> tuple[Mistake, ...]:
    with pytest.raises(Refused) as caught:
        read()
    return caught.value.mistakes


@pytest.mark.parametrize(
    ("text", "code", "count"),
    [
        (many_extras(900), "wrong-type", 900),
        (stripes_of_unknown_colours(4, 250), "unknown-colour", 1000),
        (unknown_keys(5_000), "unknown-key", 5_000),
    ],
    ids=["extras", "colours", "keys"],
)
def test_the_first_two_hundred_are_told_and_the_rest_counted(
    workshop: Workshop, text: str, code: str, count: int
) -> None:
    *told, last = refused(lambda: load_order_text(text, workshop))
    assert len(told) == MOST_TOLD
    assert {mistake.code for mistake in told} == {code}
    assert (last.path, last.code, last.facts["read"]) == ("", MORE, count - MOST_TOLD)
    assert mistake_sentence(last, FILE_SPEECH).startswith(f"{count - MOST_TOLD:,} more mistakes")


def test_two_hundred_mistakes_are_told_with_nothing_more(workshop: Workshop) -> None:
    told = refused(lambda: load_order_text(unknown_keys(MOST_TOLD), workshop))
    assert [mistake.code for mistake in told] == ["unknown-key"] * MOST_TOLD


def test_a_list_of_more_items_than_anybody_makes_is_not_looked_into(workshop: Workshop) -> None:
    (mistake,) = refused(lambda: load_order_text(many_extras(1_001), workshop))
    assert (mistake.path, mistake.code) == ("extras", "too-many")


def test_a_table_of_more_names_than_anybody_gives_is_not_looked_into() -> None:
    colours = ", ".join(f'c{number} = "#123456"' for number in range(1_001))
    text = demo_workshop().read_text("utf-8")
    more = f'[[yarns]]\nname = "wool"\ncolours = {{ {colours} }}\nput_ups = []\n'
    told = refused(lambda: load_workshop_text(text + more))
    assert ("yarns.2.colours", "too-many") in {(m.path, m.code) for m in told}


def test_a_misspelt_name_is_likened_to_so_many_and_only_where_it_is_told(
    workshop: Workshop, monkeypatch: pytest.MonkeyPatch
) -> None:
    likened: list[int] = []

    def counted(_: str, names: dict[str, str], **__: int) -> list[str]:
        likened.append(len(names))
        return []

    monkeypatch.setattr(difflib, "get_close_matches", counted)
    refused(lambda: load_order_text(stripes_of_unknown_colours(10, 500), workshop))
    assert len(likened) == MOST_TOLD
    assert max(likened) <= MOST_LIKENED


def test_mistakes_counted_further_in_are_counted_further_out_and_each_only_once() -> None:
    inner, outer = Checks(), Checks()
    for number in range(MOST_TOLD + 5):
        inner.add(at(number, "rows"), "missing")
        inner.add(at(number, "rows"), "missing")
    for part in ("first", "second"):
        with outer.under(part):
            inner.done()
    *told, last = outer.mistakes
    assert told[0].path == "first.0.rows"
    assert len(told) == MOST_TOLD
    assert last.facts["read"] == MOST_TOLD + 10
