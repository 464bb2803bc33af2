"""Style sheets become one, imports are named in the page, and the search waits until it is opened."""

import re
from pathlib import Path

import pytest

from scripts.tools import fewer_requests
from scripts.tools.trouble import Trouble

MAIN = '<link rel="stylesheet" href="../assets/stylesheets/main.57a0d79d.min.css">'
PAGE = f"""<head>{MAIN}
  <link rel="stylesheet" href="../assets/stylesheets/palette.css">
  <link rel="stylesheet" href="../assets/stylesheets/print.css">
</head><body><script src="../assets/javascript/one.js" type="module"></script></body>"""


def site(folder: Path) -> Path:
    for name, text in {
        "page/index.html": PAGE,
        "assets/stylesheets/palette.css": ":root { --ink: black }",
        "assets/stylesheets/print.css": "p { color: red }",
        "assets/stylesheets/main.57a0d79d.min.css": '@charset "UTF-8";p{color:green}q{quotes:"“"}',
        "assets/javascript/one.js": 'import { two } from "./two.js";\nexport const one = two;\n',
        "assets/javascript/two.js": 'import {\n  three,\n} from "./three.js";\nexport * from "./two-more.js";\n',
        "assets/javascript/three.js": 'const late = () => import("./late.js");\n',
        "assets/javascript/two-more.js": "",
    }.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    return folder


def test_all_style_sheets_become_one_in_their_order_with_its_hash_in_its_name(tmp_path: Path, monkeypatch):
    monkeypatch.setattr(fewer_requests, "SITE", site(tmp_path))
    fewer_requests.shorten()
    (one,) = (tmp_path / "assets/stylesheets").iterdir()
    assert one.read_text() == '@charset "UTF-8";p{color:green}q{quotes:"“"}:root{--ink: black }p{color:red}\n'
    page = (tmp_path / "page/index.html").read_text()
    assert page.count('stylesheet"') == 1 and f'href="../assets/stylesheets/{one.name}"' in page
    assert re.fullmatch(r"handbook\.[0-9a-f]{8}\.css", one.name)


def test_every_script_that_will_be_needed_is_named_at_the_head_and_none_that_comes_later(tmp_path: Path):
    page = fewer_requests.with_imports_named(PAGE, site(tmp_path) / "assets/javascript")
    head = page.partition("</head>")[0]
    for name in ("one.js", "two.js", "three.js", "two-more.js"):
        assert f'<link rel="modulepreload" href="../assets/javascript/{name}">' in head
    assert "late.js" not in page and head.count("modulepreload") == 4


WORKER = "function Mn(e,t=new Worker(e)){}"
READY = 'L($(location.protocol!=="file:"),Je("search"))'
HEADS = 'for(let r of M(":scope > *",e.head))t.set(r.outerHTML,r)'
ADDRESSES = (
    'for(let t of M("[href], [src]",e))for(let r of["href","src"]){let '
    "o=t.getAttribute(r);if(o&&!/^(?:[a-z]+:)?\\/\\//i.test(o)){t[r]=t[r];break}}"
)
OTHERS = (
    'for(let r of M("[href], [src]",e))for(let o of["href","src"]){let n=r.getAttribute(o);if(n&&x){r[o]=new '
    "URL(n,t).toString();break}}"
)
THEME = [WORKER, READY, HEADS, ADDRESSES, OTHERS]


def test_what_is_changed_in_the_theme_and_nothing_else():
    worker, ready, heads, addresses, others = fewer_requests.with_changes("\n".join(THEME)).rsplit("\n", 4)
    assert ready == 'L($(false),Je("search"))'
    assert worker.startswith("function Mn(e,t=new class extends EventTarget") and "new Worker(e)" in worker
    assert heads == HEADS.replace(
        "r.outerHTML", '(/stylesheet|preload/.test(r.rel)?r.href.split("/").pop():r.outerHTML)'
    )
    assert addresses == ADDRESSES.replace('"[href], [src]"', '"[href]:not([rel=stylesheet],[rel$=preload]), [src]"')
    assert others == OTHERS


@pytest.mark.parametrize("changed", [*range(4)])
@pytest.mark.parametrize("times", [0, 2])
def test_a_theme_that_has_changed_stops_the_build(changed: int, times: int):
    script = "\n".join(part for place, part in enumerate(THEME) for _ in range(times if place == changed else 1))
    with pytest.raises(Trouble, match=f"{times} places instead of 1"):
        fewer_requests.with_changes(script)
