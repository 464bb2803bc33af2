"""Style sheets become one, imports are named in the page, and the search waits until it is opened."""

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
        "assets/stylesheets/main.57a0d79d.min.css": "",
        "assets/javascript/one.js": 'import { two } from "./two.js";\nexport const one = two;\n',
        "assets/javascript/two.js": 'import {\n  three,\n} from "./three.js";\nexport * from "./two-more.js";\n',
        "assets/javascript/three.js": 'const late = () => import("./late.js");\n',
        "assets/javascript/two-more.js": "",
    }.items():
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text)
    return folder


def test_our_style_sheets_become_one_in_their_order_with_their_hash_in_its_name(tmp_path: Path, monkeypatch):
    monkeypatch.setattr(fewer_requests, "SITE", site(tmp_path))
    fewer_requests.shorten()
    (one,) = (tmp_path / "assets/stylesheets").glob("handbook.*.css")
    assert one.read_text() == ":root { --ink: black }\np { color: red }"
    page = (tmp_path / "page/index.html").read_text()
    assert MAIN in page and page.count("stylesheet") == 4 and f'href="../assets/stylesheets/{one.name}"' in page
    assert sorted(path.name for path in one.parent.iterdir()) == sorted([one.name, "main.57a0d79d.min.css"])
    assert len(one.name.split(".")[1]) == 8


def test_every_script_that_will_be_needed_is_named_at_the_head_and_none_that_comes_later(tmp_path: Path):
    page = fewer_requests.with_imports_named(PAGE, site(tmp_path) / "assets/javascript")
    head = page.partition("</head>")[0]
    for name in ("one.js", "two.js", "three.js", "two-more.js"):
        assert f'<link rel="modulepreload" href="../assets/javascript/{name}">' in head
    assert "late.js" not in page and head.count("modulepreload") == 4


WORKER = "function Mn(e,t=new Worker(e)){}"
READY = 'L($(location.protocol!=="file:"),Je("search"))'


def test_the_search_is_made_ready_and_its_worker_started_when_it_is_opened():
    changed = fewer_requests.with_search_when_opened(f"{WORKER}return {READY}.pipe(x)")
    assert changed.endswith('return L($(false),Je("search")).pipe(x)')
    assert changed.startswith("function Mn(e,t=new class extends EventTarget") and "new Worker(e)" in changed


@pytest.mark.parametrize("script", ["", WORKER, READY, WORKER + READY + READY, WORKER + WORKER + READY])
def test_a_theme_that_has_changed_stops_the_build(script: str):
    with pytest.raises(Trouble, match="search"):
        fewer_requests.with_search_when_opened(script)
