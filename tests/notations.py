"""The marks of several locales, and the one mistake that a reader tells."""

import pytest
from hypothesis import strategies as st

from quoting.core.ground.errors import Refused
from quoting.notation import (
    FILE_MARKS,
    Marks,
)

ENGLISH = Marks(decimal=".", grouping=",")
GERMAN = Marks(decimal=",", grouping=".")
FRENCH = Marks(decimal=",", grouping="\u202f")
SWISS = Marks(decimal=".", grouping="\u2019")
ARABIC = Marks(decimal="\u066b", grouping="\u066c")
ALL_MARKS = (ENGLISH, GERMAN, FRENCH, SWISS, ARABIC, FILE_MARKS)

numbers = st.decimals(-(10**9), 10**9, places=6)
marks = st.sampled_from(ALL_MARKS)


def mistake(reader, *arguments):
    with pytest.raises(Refused) as refused:
        reader(*arguments)
    (only,) = refused.value.mistakes
    assert only.path == ""
    return only
