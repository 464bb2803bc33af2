"""The search finds parts of a page by what makers say: every fault and every word of the glossary is found by itself,
in the words of `makers_words.toml` too, and what only a reader of formats and sources looks for comes last."""

import html
import json
import re
import sys
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from scripts.after_pages import esbuild
from scripts.tools.command_error import CommandError
from scripts.tools.places import ROOT, SITE
from scripts.tools.steps import Step

WORDS = ROOT / "scripts/after_pages/makers_words.toml"
INDEX = "search/search_index.json"
LAST = "reference/"
BUT_NOT = "reference/glossary/"
LATE = 0.0001  # of what a part counts elsewhere
WORKERS = "assets/javascripts/workers"
_SEARCHED = re.compile(r"(?<=data:)([\w$]+)\.search\(([\w$]+)\)")
AS_MAKERS_WRITE = Path(__file__).with_name("as_makers_write.js")
_OTHER_WORDS = re.compile(r"Also: ([^.]*)")
_TAG = re.compile(
    r'<(sup class="noted"|figure).*?</(?:sup|figure)>|<[^>]+>', re.DOTALL
)  # with the marks of notes, and drawings

Part = dict[str, Any]  # as the theme's search has it: location, title, text, tags, boost


@dataclass(frozen=True)
class Smaller:
    """What is found by itself though it has no heading: its own page, how it stands there, its name and the rest."""

    page: str
    place: re.Pattern[str]
    mark: str


SMALLER = (
    Smaller(
        "finish/faults/", re.compile(r"<tr(?: id=[^>]*)?>\s*<td>(.*?)</td>\s*<td>(.*?)</td>\s*</tr>", re.DOTALL), "tr"
    ),
    Smaller("reference/glossary/", re.compile(r"<dt(?: id=[^>]*)?>(.*?)</dt>\s*<dd>(.*?)</dd>", re.DOTALL), "dt"),
)


def make_findable() -> None:
    """Work over the built site's index, and mark on its pages what is found by itself."""
    file = SITE / INDEX
    index = json.loads(file.read_text(encoding="utf-8"))
    for kind in SMALLER:
        path = SITE / kind.page / "index.html"
        page, parts = with_marks(path.read_text(encoding="utf-8"), kind)
        path.write_text(page, encoding="utf-8")
        index["docs"] = [*with_own_text(index["docs"], kind.page, parts), *parts]
    index["config"]["fields"]["tags"]["boost"] = index["config"]["fields"]["title"]["boost"]
    index["docs"] = [*with_words(index["docs"], tomllib.loads(WORDS.read_text(encoding="utf-8")))]
    for path in (SITE / WORKERS).glob("search.*.js"):
        path.write_text(forgiving(path.read_text(encoding="utf-8")), encoding="utf-8")
    file.write_text(json.dumps(index, ensure_ascii=False, separators=(",", ":")), encoding="utf-8")


def forgiving(worker: str) -> str:
    """The theme's search worker, which takes words as makers write them."""
    search = esbuild.run("--minify", text=AS_MAKERS_WRITE.read_text(encoding="utf-8"))
    search = search.removeprefix("export default").strip().rstrip(";")
    changed, count = _SEARCHED.subn(lambda found: f"({search})({found[1]},{found[2]})", worker)
    if count != 1:
        print("Warning: the theme’s search has changed: only words written just so are found.", file=sys.stderr)
    return changed if count == 1 else worker


def with_marks(page: str, kind: Smaller) -> tuple[str, list[Part]]:
    """A page on which every such place can be linked to, and these places as parts for the search."""
    parts: list[Part] = []

    def marked(found: re.Match[str]) -> str:
        title, text = (html.escape(plain(each), quote=False) for each in found.groups())
        name = "-".join(re.findall(r"\w+", title.lower()))
        tags = _OTHER_WORDS.findall(text)
        parts.append(
            {
                "location": f"{kind.page}#{name}",
                "title": title,
                "text": f"<p>{text}</p>",
                "tags": words_of(" ".join(tags)),
            }
        )
        return f'<{kind.mark} id="{name}">{found[0].partition(">")[2]}'

    return kind.place.sub(marked, page), parts


def words_of(text: str) -> list[str]:
    """Its words, each once, in their order."""
    return list(dict.fromkeys(re.findall(r"[^\s,;.:]+", text)))


def plain(text: str) -> str:
    """What a reader reads of HTML."""
    return " ".join(html.unescape(_TAG.sub("", text)).split())


def with_own_text(parts: list[Part], page: str, smaller: list[Part]) -> Iterator[Part]:
    """The parts of a page without what is found by itself now."""
    places = {each["location"] for each in smaller}
    for part in parts:
        of_page = part["location"].startswith(f"{page}#")
        if part["location"] not in places:
            yield {**part, "text": ""} if of_page and any(each["title"] in part["text"] for each in smaller) else part


def with_words(parts: list[Part], words: dict[str, str]) -> Iterator[Part]:
    """Every part with what makers say for it; raises CommandError where there is no such part any more."""
    if gone := words.keys() - {part["location"] for part in parts}:
        raise CommandError(f"{WORDS.name} has words for what the pages no longer have: {', '.join(sorted(gone))}.")
    for part in parts:
        location = part["location"]
        told = {"tags": words_of(words[location])} if location in words else {}
        is_last = location.startswith(LAST) and not location.startswith(BUT_NOT)
        yield {**part, **told, **({"boost": LATE} if is_last else {})}


after_pages = [
    Step("what the search finds", make_findable, ["scripts/after_pages", "scripts/tools"]),
]
