"""What the site generator calls while it builds: it puts calculators and live numbers into the pages."""

import html as text_as_html
import json
import os
import re
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from calculators.asking import site_method

if os.environ.get("SITE_HOUSE"):
    site_method.read_from(Path(os.environ["SITE_HOUSE"]))

from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page

from calculators.asking.answering import Asking
from calculators.catalogue import catalogue
from calculators.documents.house_method.format import schema as method_schema
from calculators.documents.house_method.sites_own import check_packaged
from calculators.documents.job.format import schema as job_schema
from calculators.documents.json_text import write_json
from calculators.drawing.picture import fillings
from calculators.faces.page.in_hand import follows, in_hand
from calculators.faces.page.markup import element, html
from calculators.faces.page.ruler_choice import ruler_choice
from calculators.faces.page.whose import whose
from scripts.pages.markers import PageMarkers, UnknownMarker
from scripts.pages.shipped import shipped
from scripts.tools.thread_colour import colours_in, recoloured

REFERENCE = (
    '---\ntitle: "{title}: reference"\ndescription: What the calculator {title} asks and answers, how it '
    "works it "
    "out, and its sources.\n---\n\n# {title}\n\n{{{{ reference {name} }}}}\n"
)


LICENCES = (
    "---\ntitle: Licences\ndescription: The licences of everything in this handbook that others made.\n"
    "search:\n  exclude: true\n---\n\n# Licences\n\nWhat others made and this handbook is built on, each under its own "
    "licence.\n\n"
)
FIRST_BLANK = re.compile(r'<form class="asked".*?<(?:input|select|table class="rows") [^>]*?id="([^"]+)"', re.DOTALL)
SKIP = '<div data-md-component="skip">'
SHORT = 12  # [letters] of a name below a picture on a phone, which are shown by most


#: What the markers of a page stand for, by the page's file, between its Markdown and its HTML.
MARKERS: dict[str, PageMarkers] = {}


def on_config(config: MkDocsConfig) -> None:
    """The site's name, for templates that write it out as it stands; a method that pages could not begin with stops
    here."""
    check_packaged()
    config.site_name = text_as_html.escape(site_name(config))


def on_post_build(config: MkDocsConfig) -> None:
    name_for_devices(config)
    colour_thread(config)


def name_for_devices(config: MkDocsConfig) -> None:
    """What a device calls the handbook once it is installed there."""
    file = Path(config.site_dir) / "manifest.webmanifest"
    manifest = json.loads(file.read_text())
    name = os.environ.get("SITE_NAME")
    if name:
        short = name if len(name) <= SHORT else name[: SHORT + 1].rpartition(" ")[0] or name[:SHORT]
        file.write_text(json.dumps({**manifest, "name": name, "short_name": short}, ensure_ascii=False, indent=2))


def colour_thread(config: MkDocsConfig) -> None:
    """The studio's own colour, on the pages and in the icon of their tabs."""
    colour = os.environ.get("SITE_COLOUR")
    if not colour:
        return
    palette = Path(config.site_dir) / "assets/stylesheets/palette.css"
    icon = Path(config.site_dir) / "assets/images/icon.svg"
    before = palette.read_text(encoding="utf-8")
    after = recoloured(before, colour)
    drawn = icon.read_text(encoding="utf-8")
    for name, old in colours_in(before.partition("}")[0]).items():
        drawn = drawn.replace(f"#{old}", f"#{colours_in(after.partition('}')[0])[name]}")
    palette.write_text(after, encoding="utf-8")
    icon.write_text(drawn, encoding="utf-8")


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """A reference page for every calculator, and the schemas of what the handbook keeps."""
    for calculator in catalogue().values():
        text = REFERENCE.format(title=calculator.title, name=calculator.name)
        files.append(File.generated(config, f"reference/{calculator.name}.md", content=text))
    files.append(File.generated(config, "reference/licences.md", content=licences()))
    for name, schema in (("house-method", method_schema), ("job", job_schema)):
        files.append(File.generated(config, f"reference/{name}.schema.json", content=write_json(schema())))
    return files


def licences() -> str:
    """The page with the licences of what others made, which no search finds."""
    parts = (
        f'<details markdown="0"><summary>{text_as_html.escape(each.name)} {each.does}</summary>'
        f"<pre>{text_as_html.escape(each.text)}</pre></details>"
        for each in shipped()
    )
    return LICENCES + "\n\n".join(part.replace("\n", "&#10;") for part in parts) + "\n"


def on_page_markdown(markdown: str, page: Page, config: MkDocsConfig, files: Files) -> str:
    markers = MARKERS[page.file.src_uri] = PageMarkers("../" * page.url.count("/"))
    try:
        return markers.take_out(markdown)
    except UnknownMarker as problem:
        raise PluginError(f"{page.file.src_uri}: {problem}") from problem


def on_page_content(page_html: str, page: Page, config: MkDocsConfig, files: Files) -> str:
    markers = MARKERS[page.file.src_uri]
    if not markers.shown:
        return page_html
    head = (ruler_choice(Asking({})), whose(markers.home), in_hand(), follows(), fillings())
    return "".join(map(html, head)) + markers.put_back(page_html)


def on_post_page(page_html: str, page: Page, config: MkDocsConfig) -> str:
    """Before the way past the head of a page, the way to its first blank."""
    blank = FIRST_BLANK.search(page_html)
    way = element("a", {"class": "md-skip", "href": f"#{blank[1]}"}, "Skip to the first blank") if blank else None
    return page_html if way is None else page_html.replace(SKIP, SKIP + html(way), 1)


def site_name(config: MkDocsConfig) -> str:
    """What the handbook is called: as the studio says, or as it comes."""
    return os.environ.get("SITE_NAME") or text_as_html.unescape(config.site_name)
