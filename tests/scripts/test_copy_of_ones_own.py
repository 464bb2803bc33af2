"""A handbook of a studio's own: what is told of bad options, and that nothing is begun with them."""

import subprocess
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from scripts.pages import site_hooks
from scripts.setup import copy_of_ones_own
from scripts.setup.copy_of_ones_own import Own, checked_address, checked_name
from scripts.tools.command_error import CommandError
from scripts.tools.places import ROOT
from scripts.tools.thread_colour import checked_colour

PYTHON = Path(sys.executable)
GOOD = '{"format": "house method", "version": 2, "name": "Harbour Lane", "measures": {"hem": "1 in"}}'
BAD = {
    "a newer version": (GOOD.replace('"version": 2', '"version": 99').encode(), "newer handbook"),
    "no method": (b'{"format": "recipe"}', "not a house method"),
    "no JSON": (b"hem: 2 cm", "not a file of this handbook"),
    "empty": (b"", "not a file of this handbook"),
    "no text": (b"\xff\xfe\x00\x01", "not a text file"),
    "a value that cannot be used": (GOOD.replace("1 in", "36 banana").encode(), "not a length"),
    "no name": (GOOD.replace("Harbour Lane", " ").encode(), "has no name"),
}


@pytest.fixture(autouse=True)
def laid_in(tmp_path, monkeypatch) -> Path:
    """A folder of the test's own for what is laid ready."""
    folder = tmp_path / "laid"
    monkeypatch.setattr(copy_of_ones_own, "HOUSE", folder)
    return folder


@pytest.mark.parametrize("content, told", BAD.values(), ids=BAD)
def test_a_bad_method_gets_one_sentence_and_leaves_what_is_there(tmp_path, laid_in, content, told):
    file = tmp_path / "house.json"
    file.write_bytes(content)
    laid_in.mkdir()
    (laid_in / "before").write_text("x")
    with pytest.raises(CommandError, match=told) as error:
        Own(house=file).checked().settings(PYTHON)
    assert str(error.value).startswith(f"{file}: ") and "Traceback" not in str(error.value)
    assert "\n" not in str(error.value)
    assert [path.name for path in laid_in.iterdir()] == ["before"]


def test_a_good_method_is_laid_ready_with_the_packaged_one_below_it(tmp_path, laid_in):
    file = tmp_path / "house.json"
    file.write_text(GOOD)
    told = Own(house=file, name=" Ours ", address="http://example.org/linen").checked().settings(PYTHON)
    assert told == {"SITE_NAME": "Ours", "SITE_URL": "http://example.org/linen/", "SITE_HOUSE": str(laid_in)}
    assert (laid_in / "house-method.yaml").read_bytes() == (ROOT / "calculators/asking/house-method.yaml").read_bytes()
    assert "2.5 cm" in (laid_in / "own-house-method.json").read_text(), "the other ruler's figure follows"


@pytest.mark.parametrize("name", ["", "  ", "x" * 81, "two\nlines", "\x07"])
def test_a_name_that_makes_no_title_is_refused(name):
    with pytest.raises(CommandError):
        checked_name(name)


@pytest.mark.parametrize(
    "address",
    ["", "example.org", "ftp://example.org/", "file:///home", "https://", "https:///path", "http://a:b/", "http://[/",
     "https://example.org/?a=1", "https://example.org/#a", "https://example.org/a b",
     "https://example.org/{a;}/", "javascript:alert(1)"],
)  # fmt: skip
def test_an_address_that_no_site_has_is_refused(address):
    with pytest.raises(CommandError, match="--address wants"):
        checked_address(address)


@pytest.mark.parametrize(
    "address, whole",
    [("https://example.org", "https://example.org/"), ("http://127.0.0.1:8000/a/b/", "http://127.0.0.1:8000/a/b/")],
)
def test_an_address_ends_with_a_slash(address, whole):
    assert checked_address(address) == whole


@pytest.mark.parametrize(
    "options",
    [
        ["--house", "nowhere.json"],
        ["--house", "."],
        ["--name", " "],
        ["--address", "example.org"],
        ["--colour", "bluish"],
    ],
    ids=lambda each: " ".join(each),
)
def test_serve_tells_it_before_it_sets_anything_up(options, tmp_path):
    done = subprocess.run(
        [sys.executable, ROOT / "scripts/serve.py", "--build", *options], capture_output=True, text=True, cwd=tmp_path
    )
    assert done.returncode == 1 and done.stdout == "" and done.stderr.count("\n") == 1, done.stderr
    assert "Traceback" not in done.stderr


@pytest.mark.parametrize("colour", ["", "blue", "#12345", "#gggggg", "rgb(1,2,3)", "#1d4270;}", "\u0661\u0662\u0663"])
def test_what_is_no_colour_is_refused(colour):
    with pytest.raises(CommandError, match="--colour wants"):
        checked_colour(colour)


@pytest.mark.parametrize("written, taken", [("#1D4270", "1d4270"), ("7a1f1a", "7a1f1a"), (" #Fa0 ", "ffaa00")])
def test_a_colour_may_be_written_as_on_the_web(written, taken):
    assert checked_colour(written) == taken


def test_pages_and_the_icon_of_their_tabs_take_the_colour(tmp_path, monkeypatch):
    monkeypatch.setenv("SITE_COLOUR", "7a1f1a")
    for name in ("stylesheets/palette.css", "images/icon.svg"):
        (tmp_path / "assets" / name).parent.mkdir(parents=True)
        (tmp_path / "assets" / name).write_text((ROOT / "docs/assets" / name).read_text())
    site_hooks.colour_thread(SimpleNamespace(site_dir=str(tmp_path)))
    assert "--thread: #7a1f1a;" in (tmp_path / "assets/stylesheets/palette.css").read_text()
    icon = (tmp_path / "assets/images/icon.svg").read_text()
    assert icon.count("#7a1f1a") == 2 and "#1d4270" not in icon and "#e4e9ee" not in icon


@pytest.mark.parametrize(
    "name, short",
    [("Harbour Lane", "Harbour Lane"), ("Harbour Lane table linen", "Harbour Lane"), ("H" * 20, "H" * 12)],
)
def test_a_device_is_told_the_name(tmp_path, monkeypatch, name, short):
    monkeypatch.setenv("SITE_NAME", name)
    file = tmp_path / "manifest.webmanifest"
    file.write_text((ROOT / "docs/manifest.webmanifest").read_text())
    site_hooks.name_for_devices(SimpleNamespace(site_dir=str(tmp_path)))
    assert f'"name": "{name}"' in file.read_text() and f'"short_name": "{short}"' in file.read_text()
