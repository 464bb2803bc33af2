"""The server: the right types, the site's own 404 page, and a clear sentence for a port that is taken."""

import threading
import urllib.error
import urllib.request

import pytest

from scripts.tools.command_error import CommandError
from scripts.tools.server import open_server


@pytest.fixture
def folder(tmp_path):
    for name in ("python.wasm", "python.mjs", "widgets.js", "site.webmanifest", "index.html", "style.css"):
        (tmp_path / name).write_text("x")
    (tmp_path / "404.html").write_text("nothing lies here")
    (tmp_path / "assets").mkdir()
    return tmp_path


@pytest.fixture
def ask(folder):
    with open_server(folder, 0, lambda path: {"X-Page": path}) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield lambda path: urllib.request.urlopen(server.address + path, timeout=10)
        server.shutdown()


@pytest.mark.parametrize("path, kind", [
    ("python.wasm", "application/wasm"),
    ("python.mjs", "text/javascript"),
    ("widgets.js", "text/javascript"),
    ("site.webmanifest", "application/manifest+json"),
    ("style.css", "text/css"),
    ("", "text/html"),
])  # fmt: skip
def test_types(ask, path, kind):
    with ask(path) as answer:
        assert answer.headers.get_content_type() == kind


def test_more_headers_come_from_the_hook(ask):
    with ask("style.css") as answer:
        assert answer.headers["X-Page"] == "/style.css"


@pytest.mark.parametrize("path", ["gone.html", "assets/", "../pyproject.toml"])
def test_what_is_not_there_gets_the_sites_own_page(ask, path):
    with pytest.raises(urllib.error.HTTPError) as caught:
        ask(path)
    assert caught.value.code == 404
    assert caught.value.read() == b"nothing lies here"


def test_a_taken_port_gets_one_sentence(folder):
    with (
        open_server(folder, 0) as server,
        pytest.raises(CommandError, match=rf"^Port {server.server_port} is in use: choose another with --port N"),
    ):
        open_server(folder, server.server_port)


def test_a_site_may_lie_below_a_path(folder):
    with open_server(folder, 0, below="/linen/handbook/") as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        assert server.address.endswith("/linen/handbook/")
        with urllib.request.urlopen(server.address + "style.css", timeout=10) as answer:
            assert answer.read() == b"x"
        for beside in ("/style.css", "/linen/style.css"):
            with pytest.raises(urllib.error.HTTPError):
                urllib.request.urlopen(f"http://127.0.0.1:{server.server_port}{beside}", timeout=10)
        server.shutdown()
