"""A name that is changed is changed wherever the workshop goes by it: yarns, colours, patterns."""

from __future__ import annotations

from collections.abc import Mapping

from werkzeug.datastructures import MultiDict

from quoting.web.forms.sent import Sent, line_numbers

WAS = "was"
"""The hidden field of a line that has the name as it is kept."""


def renames(sent: Sent, list_name: str) -> Mapping[str, str]:
    """Return the new names of a list's lines by the old ones, which no line bears any more."""
    lines = [f"{list_name}.{number}" for number in line_numbers(sent).get(list_name, [])]
    names = {line: (sent.get(f"{line}.name") or "").strip() for line in lines}
    changed = {sent.get(f"{line}.{WAS}") or "": name for line, name in names.items() if name}
    return {was: name for was, name in changed.items() if was and was not in names.values()}


def renamed(sent: Sent) -> Sent:
    """Return a workshop's form in which everything goes by the names as they are now."""
    yarns, patterns = renames(sent, "yarns"), renames(sent, "patterns")
    changed: Sent = MultiDict()
    for name, text in sent.items():
        match name.split("."):
            case ["swatches" | "motifs" | "timings", _, "yarn"]:
                changed[name] = yarns.get(text, text)
            case ["swatches" | "motifs" | "timings", _, "stitch"]:
                changed[name] = patterns.get(text, text)
            case ["yarns", number, "stock", _, "colour"]:
                changed[name] = renames(sent, f"yarns.{number}.colours").get(text, text)
            case _:
                changed[name] = text
    return changed
