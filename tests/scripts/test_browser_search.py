"""Finding a Chromium, and the sentence when there is none."""

from types import SimpleNamespace

import pytest

from scripts.setup import browser
from scripts.tools.command_error import CommandError


def program(folder, name: str, code: int) -> str:
    file = folder / name
    file.write_text(f"#!/bin/sh\nexit {code}\n")
    file.chmod(0o755)
    return str(file)


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """The only folder in which programs are found."""
    monkeypatch.delenv("CHROMIUM", raising=False)
    monkeypatch.setenv("PATH", str(tmp_path))
    monkeypatch.setattr(browser, "APPLICATIONS", ())
    monkeypatch.setattr(browser, "NAMES", ("chromium-headless-shell", *browser.NAMES[1:]))
    return tmp_path


def test_one_that_does_not_start_is_passed_over(folder):
    program(folder, "chromium", 1)
    good = program(folder, "google-chrome", 0)
    assert browser.find() == good


def test_the_one_named_by_the_person_comes_first(folder, monkeypatch):
    program(folder, "chromium", 0)
    named = program(folder, "my-own", 0)
    monkeypatch.setenv("CHROMIUM", named)
    assert browser.find() == named


def test_a_wrong_name_is_said(folder, monkeypatch):
    monkeypatch.setenv("CHROMIUM", "/nowhere/chromium")
    with pytest.raises(CommandError, match="CHROMIUM says /nowhere/chromium"):
        browser.find()


def test_none_and_no_rights_gets_one_sentence(folder, monkeypatch):
    program(folder, "apt-get", 0)
    monkeypatch.setattr(browser, "administrator", lambda: None)
    with pytest.raises(CommandError, match="none was found and none could be installed"):
        browser.ensure()


@pytest.mark.parametrize("there_is", browser.PACKAGES)
def test_one_is_installed_where_permitted(folder, monkeypatch, there_is):
    program(folder, "apt-get", 0)
    calls = []

    def run(command, **_):
        calls.append(command[-2:])
        if command[-1] == there_is:
            program(folder, there_is, 0)
        return SimpleNamespace(returncode=100 if "install" in command and command[-1] != there_is else 0)

    monkeypatch.setattr(browser, "administrator", list)
    monkeypatch.setattr(browser.subprocess, "run", run)
    assert browser.ensure() == str(folder / there_is)
    tried = browser.PACKAGES[: browser.PACKAGES.index(there_is) + 1]
    assert calls[: len(tried) + 1] == [["-qq", "update"], *(["-y", package] for package in tried)]
