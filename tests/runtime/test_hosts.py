"""What hosts are told to send is what the local server sends, for every file of the site."""

import re
import threading
import urllib.request
from fnmatch import fnmatchcase
from pathlib import Path

import pytest

from scripts.after_pages import hosts
from scripts.after_pages.policy import headers_for
from scripts.tools.server import SiteHandler, open_server

BELOW = ["/", "/linen/handbook/"]


@pytest.fixture(params=BELOW)
def below(request) -> str:
    return request.param


@pytest.fixture
def sent(site: Path, below: str):
    """Asks the local server for the headers of a file, but for those that only this answer has."""
    with open_server(site, 0, headers_for(site), below) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()

        def ask(place: str) -> dict[str, str]:
            address = server.address.removesuffix(below) + below + place
            with urllib.request.urlopen(urllib.request.Request(address, method="HEAD"), timeout=20) as answer:
                own = {"Server", "Date", "Content-Length", "Last-Modified", "Content-type"}
                return {name: value for name, value in answer.headers.items() if name not in own}

        yield ask
        server.shutdown()


def places(site: Path) -> list[str]:
    """One file of every folder, every page's own address, and every script."""
    pages = [path.parent.relative_to(site).as_posix() + "/" for path in site.rglob("index.html")]
    first = [min(path for path in folder.iterdir() if path.is_file()) for folder in folders(site)]
    scripts = (site / "assets/javascript").iterdir()
    return ["" if page == "./" else page for page in pages] + [
        path.relative_to(site).as_posix() for path in [*first, *scripts, site / "sw.js"]
    ]


def folders(site: Path) -> list[Path]:
    return [
        each for each in [site, *site.rglob("*")] if each.is_dir() and any(path.is_file() for path in each.iterdir())
    ]


def of_headers_file(text: str, path: str) -> dict[str, str]:
    """What a host that joins the values of several rules sends."""
    found: dict[str, str] = {}
    for block in re.split(r"\n(?=\S)", text.strip()):
        pattern, *lines = block.splitlines()
        if fnmatchcase(path, pattern):
            for name, value in (line.strip().split(": ", 1) for line in lines):
                found[name] = f"{found[name]}, {value}" if name in found else value
    return found


def of_nginx(text: str, path: str) -> dict[str, str]:
    """The innermost block that is meant for a path sends its own lines and no others."""
    worker = re.search(r"\n    location = (\S+) \{\n(.*?)\n    \}", text, re.DOTALL)
    own = worker[2] if path == worker[1] else text.replace(worker[0], "")
    return dict(re.findall(r'add_header (\S+) "(.*)" always;', own))


def of_caddy(text: str, path: str) -> dict[str, str]:
    common = dict(re.findall(r'^\t(\S+) "(.*)"$', text, re.MULTILINE))
    worker = re.search(r"^@worker path (\S+)$", text, re.MULTILINE)[1]
    chosen = "worker" if path == worker else "pages"
    return common | dict(re.findall(rf'^header @{chosen} (\S+) "(.*)"$', text, re.MULTILINE))


READ = {"headers_file": of_headers_file, "nginx": of_nginx, "caddy": of_caddy}


@pytest.mark.parametrize("kind", READ)
def test_every_file_is_sent_as_here(site, below, sent, kind):
    text = getattr(hosts, kind)(site, below)
    looked_at = places(site)
    assert hosts.WORKER_AT in looked_at and len(looked_at) > 60
    for place in looked_at:
        assert READ[kind](text, below + place) == sent(place), place


def test_a_rule_too_many_would_be_seen(site):
    text = hosts.headers_file(site, "/") + "/*\n  Content-Security-Policy: default-src 'none'\n"
    assert ", default-src" in of_headers_file(text, "/")["Content-Security-Policy"]


def test_no_host_is_told_more_than_it_reads(site, below):
    """Two hosts that read such a file take at most 100 rules of at most 2,000 characters a line."""
    text = hosts.headers_file(site, below)
    assert len(re.findall(r"^/", text, re.MULTILINE)) <= 100
    assert max(map(len, text.splitlines())) <= 2000


def test_types_that_servers_may_not_know_are_told(site, below):
    for ending, kind in hosts.TYPES.items():
        assert SiteHandler.extensions_map[f".{ending}"] == kind
        for text in (hosts.nginx(site, below), hosts.caddy(site, below)):
            assert ending in text and kind in text


def test_each_is_written_into_a_file(site, tmp_path):
    assert hosts.write(site, "/", tmp_path / "new") == ["_headers", "nginx.conf", "Caddyfile"]
    assert all((tmp_path / "new" / name).stat().st_size for name in ("_headers", "nginx.conf", "Caddyfile"))
