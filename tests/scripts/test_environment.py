"""The environment: installed when a pin changes, and only then."""

import shutil
import subprocess
import sys
from pathlib import Path
from types import SimpleNamespace

import pytest

from scripts.setup import environment
from scripts.tools.command_error import CommandError
from scripts.tools.places import ROOT

PYPROJECT = """
[project]
dependencies = ["yarn==1.0"]
[project.optional-dependencies]
site = ["cloth==2.0"]
test = ["needle==3.0"]
"""


@pytest.fixture
def house(tmp_path, monkeypatch) -> SimpleNamespace:
    """A small repository whose commands are noted down and never run."""
    (tmp_path / "pyproject.toml").write_text(PYPROJECT)
    (tmp_path / "pins").mkdir()
    (tmp_path / "pins/site.txt").write_text("yarn==1.0 \\\n    --hash=sha256:1\ncloth==2.0 \\\n    --hash=sha256:2\n")
    (tmp_path / "pins/test.txt").write_text("yarn==1.0 \\\n    --hash=sha256:1\nneedle==3.0 \\\n    --hash=sha256:3\n")
    house = SimpleNamespace(root=tmp_path, venv=tmp_path / ".venv", installs=[], fails=False, made=0)

    def run(command, **_):
        if "install" in command:
            assert "--require-hashes" in command
            house.installs.append([Path(word).name for word in command if word.endswith(".txt")])
            return SimpleNamespace(returncode=int(house.fails))
        if "venv" in command:
            python = environment.python_of(house.venv)
            shutil.rmtree(house.venv, ignore_errors=True)
            python.parent.mkdir(parents=True)
            python.touch()
            house.made += 1
        return SimpleNamespace(returncode=0)

    monkeypatch.setattr(environment.subprocess, "run", run)
    return house


def test_a_second_run_installs_nothing(house):
    environment.ensure(house.root, house.venv, ["site", "test"])
    environment.ensure(house.root, house.venv, ["site", "test"])
    environment.ensure(house.root, house.venv, ["site"])
    assert house.installs == [["site.txt", "test.txt"]]


def test_an_extra_asked_for_later_is_added_alone(house):
    environment.ensure(house.root, house.venv, ["site"])
    environment.ensure(house.root, house.venv, ["site", "test"])
    assert house.installs == [["site.txt"], ["test.txt"]]


@pytest.mark.parametrize(
    ("extra", "old", "new", "again"),
    [
        ("site", "cloth==2.0", "cloth==2.1", True),
        ("site", "sha256:2", "sha256:4", True),
        ("test", "needle==3.0", "needle==3.1", False),
    ],
)
def test_a_changed_pin_is_installed(house, extra, old, new, again):
    environment.ensure(house.root, house.venv, ["site"])
    pins = environment.pins_of(house.root, extra)
    pins.write_text(pins.read_text().replace(old, new))
    environment.ensure(house.root, house.venv, ["site"])
    assert len(house.installs) == 1 + again


def test_what_a_failed_install_left_behind_is_made_afresh(house):
    environment.ensure(house.root, house.venv, ["site"])
    house.fails = True
    with pytest.raises(CommandError, match="could not be installed"):
        environment.ensure(house.root, house.venv, ["site", "test"])
    house.fails = False
    environment.ensure(house.root, house.venv, ["site", "test"])
    assert house.made == 2
    assert house.installs[-1] == ["site.txt", "test.txt"]


def test_an_install_that_is_killed_is_no_environment(house, monkeypatch):
    environment.ensure(house.root, house.venv, ["site"])

    def killed(command, **_):
        raise KeyboardInterrupt

    with monkeypatch.context() as patch, pytest.raises(KeyboardInterrupt):
        patch.setattr(environment.subprocess, "run", killed)
        environment.install(house.root, house.venv, ["test"])
    assert not environment.works(house.venv)


def test_making_that_is_killed_is_no_environment(house, monkeypatch):
    def killed(command, **_):
        python = environment.python_of(house.venv)
        python.parent.mkdir(parents=True)
        python.touch()
        raise KeyboardInterrupt

    with monkeypatch.context() as patch, pytest.raises(KeyboardInterrupt):
        patch.setattr(environment.subprocess, "run", killed)
        environment.make(house.venv)
    assert not environment.works(house.venv)


def test_a_python_without_venv_gets_one_sentence(house, monkeypatch):
    monkeypatch.setattr(environment.importlib.util, "find_spec", lambda name: None if name == "ensurepip" else object())
    with pytest.raises(CommandError, match="python3-venv"):
        environment.ensure(house.root, house.venv, ["site"])


@pytest.mark.parametrize("code, counts", [(0, True), (1, False)])
def test_an_environment_of_an_old_python_does_not_count(house, monkeypatch, code, counts):
    environment.ensure(house.root, house.venv, ["site"])
    monkeypatch.setattr(environment.subprocess, "run", lambda command, **_: SimpleNamespace(returncode=code))
    assert environment.works(house.venv) == counts


@pytest.mark.parametrize("script", ["serve.py", "test.py"])
def test_an_old_python_is_told_so_in_one_sentence(script):
    file = str(ROOT / "scripts" / script)
    pretend = f"import sys, runpy; sys.version_info = (3, 8, 10); runpy.run_path({file!r}, run_name='__main__')"
    answer = subprocess.run([sys.executable, "-c", pretend], capture_output=True, text=True)
    assert answer.returncode == 1
    assert answer.stderr == "The handbook needs Python 3.11 or newer, and this is Python 3.8.\n"
