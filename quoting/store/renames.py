"""New names of what an order goes by, put in the place of the old ones in it."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from quoting.notation import read_stripe_lines, stripe_line
from quoting.schema.several import VALUE_FIELD
from quoting.store.order_content import Typed

_COLOUR_NAME = re.compile(r"blanket\.colours\.\d+\.name")
_OWN_YARN = "blanket.yarn"
_LISTS_OF_COLOURS = frozenset({"colours", "outer"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Renames:
    """New names by the old ones; a colour's old name is given with the old name of its yarn."""

    yarns: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    patterns: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    motifs: Mapping[str, str] = field(default_factory=lambda: MappingProxyType({}))
    colours: Mapping[tuple[str, str], str] = field(default_factory=lambda: MappingProxyType({}))

    def __bool__(self) -> bool:
        """Return whether anything has a new name."""
        return bool(self.yarns or self.patterns or self.motifs or self.colours)

    def typed(self, typed: Typed) -> Typed:
        """Return what was typed of an order, by the new names."""
        named = {t for name, ts in typed.items() if _COLOUR_NAME.fullmatch(name) for t in ts}
        inner = _InOrder(self, _first(typed, _OWN_YARN), frozenset(named))
        changed = {}
        for name, texts in typed.items():
            yarn = _first(typed, f"{name.rpartition('.')[0]}.yarn")
            changed[name] = tuple(inner.text(name, text, yarn) for text in texts)
        return MappingProxyType(changed)

    def record(self, record: Mapping[str, Any]) -> dict[str, Any]:
        """Return an order's record, by the new names."""
        blanket = record.get("blanket", {})
        named = frozenset(blanket.get("colours", {}))
        inner = _InOrder(self, blanket.get("yarn", ""), named)
        return {key: inner.value(key, value, "") for key, value in record.items()}


@dataclass(frozen=True, slots=True)
class _InOrder:
    """The new names, for an order of a yarn that names some colours of the design itself."""

    renames: Renames
    yarn: str
    named: frozenset[str]

    def text(self, key: str, text: str, yarn: str) -> str:
        """Return a text by its new name; `yarn` is the one that its line names, if any."""
        match named_kind(key):
            case "yarn":
                return self.renames.yarns.get(text, text)
            case "stitch":
                return self.renames.patterns.get(text, text)
            case "motif":
                return self.renames.motifs.get(text, text)
            case "as_list":
                return "\n".join(map(self.line, text.splitlines()))
            case "colour" if yarn:
                return self.renames.colours.get((yarn, text), text)
            case "colour" if text not in self.named:
                new = self.renames.colours.get((self.yarn, text), text)
                return text if new in self.named else new
        return text

    def line(self, typed: str) -> str:
        """Return a line of a list of stripes by the new names; as it was typed, if it has none."""
        for _, (colour, rows, stitch) in read_stripe_lines(typed):
            by_new = self.text("colour", colour, ""), rows, self.text("stitch", stitch, "")
            return typed if by_new == (colour, rows, stitch) else stripe_line(by_new)
        return typed

    def value(self, key: str, value: Any, yarn: str) -> Any:
        """Return a value of a record with all that is inside it by the new names."""
        match value:
            case str():
                return self.text(key, value, yarn)
            case list():
                return [self.value(key, each, "") for each in value]
            case dict():
                own = value.get("yarn", "")
                own = own if isinstance(own, str) else ""
                return {name: self.value(name, each, own) for name, each in value.items()}
        return value


def named_kind(key: str) -> str:
    """Return what stands at a key of an order, or in a field by its name: `yarn`, `colour`.

    Each line of a list of colours is one.
    """
    parts = [part for part in key.split(".") if part != VALUE_FIELD and not part.isdigit()]
    kind = parts[-1] if parts else ""
    return "colour" if kind in _LISTS_OF_COLOURS else kind


def _first(typed: Typed, name: str) -> str:
    return next(iter(typed.get(name, ())), "")
