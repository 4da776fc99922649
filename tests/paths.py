"""Places as tests write them: `blanket.sections.2.stripes.1.rows`."""

from quoting.core.ground.place import Place


def place_of(path: str) -> Place:
    parts = path.split(".") if path else []
    return Place(tuple(int(part) if part.isdecimal() else part for part in parts))
