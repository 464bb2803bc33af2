"""Style sheets become one, imports are named in the page, and the search waits until it is opened."""

import re
from importlib.resources import files
from pathlib import Path

import pytest

from scripts.after_pages import fewer_requests

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
        "assets/javascript/two-more.js": 'import{a as b}from"./four.js";import"./five.js";import("./late.js");',
        "assets/javascript/four.js": 'var n=1;export{n as a};export*from"./six.js";import(`./late.js`);',
        "assets/javascript/five.js": "",
        "assets/javascript/six.js": "",
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
    for name in ("one.js", "two.js", "three.js", "two-more.js", "four.js", "five.js", "six.js"):
        assert f'<link rel="modulepreload" href="../assets/javascript/{name}">' in head
    assert "late.js" not in page and head.count("modulepreload") == 7


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


def with_all_changes(script: str) -> str:
    changed, off = fewer_requests.with_changes(script)
    assert off == []
    return changed


def test_what_is_changed_in_the_theme_and_nothing_else():
    worker, ready, heads, addresses, others = with_all_changes("\n".join(THEME)).rsplit("\n", 4)
    assert ready == 'L($(false),Je("search"))'
    assert worker.startswith("function Mn(e,t=new class extends EventTarget") and "= new URL(e, location)" in worker
    assert heads == HEADS.replace(
        "r.outerHTML", '(/stylesheet|preload/.test(r.rel)?r.href.split("/").pop():r.outerHTML)'
    )
    assert addresses == ADDRESSES.replace('"[href], [src]"', '"[href]:not([rel=stylesheet],[rel$=preload]), [src]"')
    assert others == OTHERS


CHANGED = {"search worker": 0, "search made ready": 1, "heads compared": 2, "addresses in full": 3}


@pytest.mark.parametrize("changed", CHANGED)
@pytest.mark.parametrize("times", [0, 2])
def test_a_theme_that_has_changed_keeps_what_it_says_and_the_rest_is_changed(changed: str, times: int):
    parts = [part for place, part in enumerate(THEME) for _ in range(times if place == CHANGED[changed] else 1)]
    script, off = fewer_requests.with_changes("\n".join(parts))
    assert [change.name for change in off] == [changed]
    assert script.count(THEME[CHANGED[changed]]) == times
    assert [part for place, part in enumerate(THEME[:4]) if place != CHANGED[changed] and part in script] == []


def test_a_build_with_a_changed_theme_warns_in_one_line_a_change_and_goes_on(tmp_path: Path, monkeypatch, capsys):
    monkeypatch.setattr(fewer_requests, "SITE", site(tmp_path))
    bundle = tmp_path / "assets/javascripts/bundle.0a1b2c3d.min.js"
    bundle.parent.mkdir()
    bundle.write_text("\n".join(THEME[1:]))
    fewer_requests.shorten()
    (warning,) = capsys.readouterr().err.splitlines()
    assert "(search worker): every visit starts a worker" in warning
    assert "(false)" in bundle.read_text() and "handbook." in (tmp_path / "page/index.html").read_text()


def test_with_the_pinned_theme_every_change_is_on():
    (bundle,) = files("material").joinpath("templates/assets/javascripts").glob("bundle.*.min.js")
    _, off = fewer_requests.with_changes(bundle.read_text(encoding="utf-8"))
    assert {change.name for change in off} == set()
    assert {change.name for change in fewer_requests.CHANGES} == set(CHANGED)
