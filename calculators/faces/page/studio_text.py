"""A studio's own words on a page: a small part of Markdown, made into elements. What is not in that part stays text.

Known are paragraphs, headings (#), lists (- and 1.), quotes (>), **strong**, *emphasis* and [links](…) to http, https
or a
place in the handbook. HTML is not known, so it is shown as it was typed.
"""

import re
import xml.etree.ElementTree as ET

from calculators.faces.page.markup import Content, add, element

_INLINE = re.compile(
    r"\\(?P<plain>[\\*_\[\]()#>.-])|\*\*(?P<strong>[^*\s].{0,400}?)\*\*|\*(?P<em>[^*\s].{0,400}?)\*|\[(?P<words>[^\[\]]{1,200})\]\((?P<to>[^()\s]{1,400})\)",
    re.DOTALL,
)
_ADDRESS = re.compile(r"https?://[A-Za-z0-9][^\s\\\"<>]*|(?!//)[A-Za-z0-9_./#?=&%-]+")
_HEADING, _ITEM, _NUMBERED, _QUOTE = (
    re.compile(each) for each in (r"(#{1,3})\s+(.*)", r"[-*]\s+(.*)", r"\d{1,3}[.)]\s+(.*)", r">\s?(.*)")
)
TOP_HEADING = 3


def studio_text(words: str) -> list[ET.Element]:
    """The blocks of a text, safe to put into any page."""
    return [
        block for part in re.split(r"\n\s*\n", words) if part.strip() for block in _blocks(part.strip("\n").split("\n"))
    ]


def _blocks(lines: list[str]) -> list[ET.Element]:
    made: list[ET.Element] = []
    running: list[str] = []

    def close() -> None:
        if running:
            made.append(element("p", None, *_inline("\n".join(running))))
            running.clear()

    for line in (each.strip() for each in lines):
        if heading := _HEADING.fullmatch(line):
            close()
            made.append(element(f"h{TOP_HEADING - 1 + len(heading[1])}", None, *_inline(heading[2])))
        elif item := _ITEM.fullmatch(line):
            close()
            _into(made, "ul", element("li", None, *_inline(item[1])))
        elif item := _NUMBERED.fullmatch(line):
            close()
            _into(made, "ol", element("li", None, *_inline(item[1])))
        elif quoted := _QUOTE.fullmatch(line):
            close()
            _into(made, "blockquote", element("p", None, *_inline(quoted[1])))
        else:
            running.append(line)
    close()
    return made


def _into(made: list[ET.Element], tag: str, item: ET.Element) -> None:
    """Put an item into the list that is being made, or begin one."""
    if not made or made[-1].tag != tag:
        made.append(element(tag))
    add(made[-1], item)


def _inline(words: str) -> list[Content]:
    parts: list[Content] = []
    done = 0
    for found in _INLINE.finditer(words):
        parts.append(words[done : found.start()])
        parts.append(_marked(found))
        done = found.end()
    return [*parts, words[done:]]


def _marked(found: re.Match[str]) -> ET.Element | str:
    if found["plain"]:
        return found["plain"]
    if found["strong"]:
        return element("strong", None, *_inline(found["strong"]))
    if found["em"]:
        return element("em", None, *_inline(found["em"]))
    if not _ADDRESS.fullmatch(found["to"]):
        return found.group()
    elsewhere = {"rel": "noopener noreferrer"} if found["to"].startswith("http") else {}
    return element("a", {"href": found["to"], **elsewhere}, found["words"])
