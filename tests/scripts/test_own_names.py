"""Where a script asks whether something has a name, it asks for a name of its own: `constructor` is in every object."""

import re

import pytest

from scripts.tools.places import ROOT

FOLDERS = ("docs/assets/javascript", "scripts/after_pages")
LOOKED_UP = re.compile(r"""(?<![\w"'])[a-z`$][\w.${}/`]* in [A-Za-z][\w.]*\s*(?:[)?;,]|&&|\|\||$)""", re.MULTILINE)
#: Comments, texts in quotation marks, and loops, in which `in` means something else.
NO_CODE = re.compile(r"/\*.*?\*/|//[^\n]*|\"[^\"\n]*\"|'[^'\n]*'|for \((?:const|let) \w+ in ", re.DOTALL)


def faults(text: str) -> list[str]:
    return LOOKED_UP.findall(NO_CODE.sub("", text))


def test_no_script_takes_a_name_that_every_object_has():
    scripts = [path for folder in FOLDERS for path in (ROOT / folder).rglob("*.js")]
    assert len(scripts) > 50
    assert {path.name: found for path in scripts if (found := faults(path.read_text("utf-8")))} == {}


@pytest.mark.parametrize(
    "text", ["if (page in HANDBOOK.files) a();", "x = name in before ? 1 : 2;", "!(name in typed)"]
)
def test_such_a_look_up_is_found(text: str):
    assert faults(text)
