"""Reads a page as a person does: by its headings, its labels, its tables."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser

VOID = {"input", "link", "meta", "br", "img", "hr", "circle", "rect", "path"}


@dataclass
class Node:
    """An element with its attributes and what is in it."""

    tag: str
    attributes: dict[str, str] = field(default_factory=dict)
    inside: list[Node | str] = field(default_factory=list)

    def all(self, test: str | Callable[[Node], bool]) -> Iterator[Node]:
        """Yield every element inside that passes a test, or has a tag."""
        for child in self.inside:
            if isinstance(child, Node):
                if child.tag == test if isinstance(test, str) else test(child):
                    yield child
                yield from child.all(test)

    @property
    def text(self) -> str:
        """All the words inside, spaces made plain."""
        words = (child if isinstance(child, str) else child.text for child in self.inside)
        return " ".join(" ".join(words).split())


class _Builder(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open = [Node("page")]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        node = Node(tag, {name: value or "" for name, value in attrs})
        self.open[-1].inside.append(node)
        if tag not in VOID:
            self.open.append(node)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.open[-1].inside.append(Node(tag, {name: value or "" for name, value in attrs}))

    def handle_endtag(self, tag: str) -> None:
        if tag not in VOID:
            assert self.open[-1].tag == tag, f"</{tag}> closes <{self.open[-1].tag}>"
            self.open.pop()

    def handle_data(self, data: str) -> None:
        self.open[-1].inside.append(data)


class Page:
    """One answer of the server, read."""

    def __init__(self, html: str) -> None:
        builder = _Builder()
        builder.feed(html)
        self.root = builder.open[0]

    def with_id(self, name: str) -> Node:
        """Return the element of an id."""
        (node,) = self.root.all(lambda n: n.attributes.get("id") == name)
        return node

    @property
    def headings(self) -> list[str]:
        """The headings, in order."""
        return [n.text for n in self.root.all(lambda n: n.tag in {"h1", "h2", "h3"})]

    def labelled(self, label: str) -> Node:
        """Return the first field with a label, or a name for those who cannot see it."""
        for node in self.root.all(lambda n: n.tag in {"label", "input", "select", "textarea"}):
            if node.tag == "label" and node.text == label:
                return self.with_id(node.attributes["for"])
            if node.attributes.get("aria-label") == label:
                return node
        raise LookupError(label)

    def said_of(self, field_name: str) -> str:
        """Return what is said beside a field."""
        return self.with_id(f"{field_name}.says").text

    def figure(self, name: str) -> str:
        """Return one of the figures that are always in sight."""
        for pair in self.with_id("figures").all("div"):
            term, value = (child for child in pair.inside if isinstance(child, Node))
            if term.text == name:
                return value.text
        raise LookupError(name)

    def table(self, heading: str) -> list[list[str]]:
        """Return the rows of the first table that has a column of that heading."""
        for table in self.root.all("table"):
            rows = [
                [cell.text for cell in row.all(lambda n: n.tag in {"th", "td"})]
                for row in table.all("tr")
            ]
            if heading in rows[0]:
                return rows
        raise LookupError(heading)

    def typed(self, form: str = "order") -> dict[str, str]:
        """Return what a browser would send of the order form, or of another."""
        sent = {}
        for node in self.with_id(form).all(lambda n: "name" in n.attributes):
            name, kind = node.attributes["name"], node.attributes.get("type")
            if node.tag == "button" or (
                kind in {"checkbox", "radio"} and "checked" not in node.attributes
            ):
                continue
            if node.tag == "select":
                sent[name] = _chosen(node)
            elif node.tag == "textarea":
                # HTML drops one line end right after the tag.
                sent[name] = "".join(str(part) for part in node.inside).removeprefix("\n")
            else:
                sent[name] = node.attributes.get("value", "")
        return sent


def _chosen(select: Node) -> str:
    options = list(select.all("option"))
    chosen = [option for option in options if "selected" in option.attributes] or options[:1]
    return chosen[0].attributes["value"] if chosen else ""
