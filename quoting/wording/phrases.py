"""A table of sentences: for each code, what is said of its facts; and words put together."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from string import Formatter

from quoting.core.ground.errors import Fact, Facts

Sentences = Mapping[str, tuple[str, ...]]
"""For each code its sentences, the one that says most first, with the names of facts in braces."""

Say = Callable[[str, Fact], str]
"""Says one fact, given its name."""


def sentence_for(
    code: str, facts: Facts, sentences: Sentences, say: Say, word: Callable[[str], str]
) -> str:
    """Return the first sentence of a code whose facts are all there, in the words of `word`.

    A code that is in no table is said plainly, so that nothing is ever kept back.
    """
    there = {name: fact for name, fact in facts.items() if fact not in (None, ())}
    for sentence in sentences.get(code, ()):
        if names_in(sentence) <= set(there):
            said = {name: say(name, there[name]) for name in names_in(sentence)}
            return word(sentence).format_map(said)
    return f"This cannot be taken as it is ({code.replace('-', ' ')})."


def names_in(sentence: str) -> set[str]:
    """Return the names of the facts that a sentence needs."""
    return {name for _, name, _, _ in Formatter().parse(sentence) if name}


def listed(words: Iterable[str], last: str) -> str:
    """Return words as a list for reading: `a, b or c`."""
    *first, end = words
    return f"{', '.join(first)} {last} {end}" if first else end


def capitalized(words: str) -> str:
    """Return words with a capital to begin with, the others as they are."""
    return words[:1].upper() + words[1:]
