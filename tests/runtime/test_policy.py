"""The policy lets in what the build made, and nothing else."""

import base64
import hashlib
import re
import threading
from pathlib import Path

import pytest
from playwright.sync_api import Browser

from scripts.after_pages import policy
from scripts.tools.server import open_server

RUN = "<script>one()</script>"
DATA = '<script type="application/json">{"a": 1}</script>'
FILE = '<script src="a.js"></script>'


def test_only_scripts_that_run_are_found():
    assert policy.inline_scripts(f"{RUN}{DATA}{FILE}<script type=module>two('<b>')</script>") == ["one()", "two('<b>')"]


def test_the_policy_holds_the_hash_of_every_inline_script():
    written = policy.policy_for([RUN, "<script>two()</script>"])
    for script in ("one()", "two()"):
        assert f"'sha256-{base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()}'" in written
    assert "unsafe" not in written


def test_a_page_without_a_place_for_the_policy_is_refused(tmp_path: Path):
    (tmp_path / "index.html").write_text("<p>no head")
    with pytest.raises(ValueError, match="character set"):
        policy.put_into(tmp_path)


def test_every_built_page_carries_the_same_policy_before_any_script(site: Path):
    carried = set()
    for page in site.rglob("*.html"):
        before_scripts = page.read_text().partition("<script")[0]
        (written,) = re.findall(r'http-equiv="Content-Security-Policy" content="([^"]*)"', before_scripts)
        assert '<meta name="referrer" content="no-referrer">' in before_scripts
        carried.add(written)
    assert len(carried) == 1 and set(re.findall(r"unsafe-\w+|\w+-unsafe-\w+", carried.pop())) == {"wasm-unsafe-eval"}


def test_only_the_worker_may_run_web_assembly(site: Path):
    headers = policy.headers_for(site)
    assert "'wasm-unsafe-eval'" in headers("/assets/javascript/python-worker.js")["Content-Security-Policy"]
    for path in ("/", "/assets/javascript/python.js", "/sw.js"):
        assert "unsafe" not in headers(path)["Content-Security-Policy"]
        assert "blob:" not in headers(path)["Content-Security-Policy"]
        assert "frame-ancestors 'none'" in headers(path)["Content-Security-Policy"]


@pytest.mark.parametrize("with_headers", [True, False], ids=["with headers", "by the page alone"])
def test_an_injected_script_and_a_foreign_image_are_refused(browser: Browser, site: Path, with_headers: bool):
    more = (policy.headers_for(site),) if with_headers else ()
    with open_server(site, 0, *more) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        page = browser.new_context().new_page()
        page.goto(server.address)
        refused = page.evaluate("""async () => {
            const refused = [];
            document.addEventListener("securitypolicyviolation", (event) => refused.push(event.effectiveDirective));
            const script = document.createElement("script");
            script.textContent = "window.came = true";
            const image = document.createElement("img");
            image.src = "http://127.0.0.1:9/image.png";
            const link = document.createElement("a");
            link.setAttribute("onclick", "window.came = true");
            document.body.append(script, image, link);
            link.click();
            document.body.setAttribute("style", "color: red");
            await new Promise((resolve) => setTimeout(resolve, 200));
            return [window.came, [...new Set(refused)].toSorted()];
        }""")
        page.context.close()
        server.shutdown()
    assert refused == [None, ["img-src", "script-src-attr", "script-src-elem", "style-src-attr"]]
