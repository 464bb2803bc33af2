"""What the site generator calls while it builds: it puts calculators and live numbers into the pages."""

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))
sys.path.insert(0, str(Path(__file__).parent.parent))

from markers import PageMarkers, UnknownMarker
from mkdocs.exceptions import PluginError
from mkdocs.structure.files import File

from calculators.asking.answering import Asking
from calculators.catalogue import catalogue
from calculators.documents.house_method.format import schema as method_schema
from calculators.documents.job.format import schema as job_schema
from calculators.documents.json_text import write_json
from calculators.drawing.picture import fillings
from calculators.faces.page.markup import html
from calculators.faces.page.ruler_choice import ruler_choice
from calculators.faces.page.whose import whose

REFERENCE = (
    '---\ntitle: "{title}: reference"\ndescription: What the calculator {title} asks and answers, how it '
    "works it "
    "out, and its sources.\n---\n\n# {title}\n\n{{{{ reference {name} }}}}\n"
)


def on_files(files, config):
    """A reference page for every calculator, and the schemas of what the handbook keeps."""
    for calculator in catalogue().values():
        text = REFERENCE.format(title=calculator.title, name=calculator.name)
        files.append(File.generated(config, f"reference/{calculator.name}.md", content=text))
    for name, schema in (("house-method", method_schema), ("job", job_schema)):
        files.append(File.generated(config, f"reference/{name}.schema.json", content=write_json(schema())))
    return files


def on_page_markdown(markdown, page, config, files):
    page.markers = PageMarkers(home="../" * page.url.count("/"))
    try:
        return page.markers.take_out(markdown)
    except UnknownMarker as problem:
        raise PluginError(f"{page.file.src_uri}: {problem}") from problem


def on_page_content(page_html, page, config, files):
    if not page.markers.shown:
        return page_html
    return "".join(map(html, (whose(page.markers.home), ruler_choice(Asking({})), fillings()))) + page.markers.put_back(
        page_html
    )
