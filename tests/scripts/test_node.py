"""Node: which versions will do, and when npm is called."""

from types import SimpleNamespace

import pytest

from scripts.setup import node
from scripts.tools.command_error import CommandError


@pytest.mark.parametrize("text, major", [
    ("v20.11.1\n", 20), ("v24.0.0-nightly20250101", 24), ("v4.9.1", 4), ("", None), ("20.1.2", None),
    ("node: not found", None),
])  # fmt: skip
def test_the_version_is_read(text, major):
    assert node.major_version(text) == major


def program(folder, name: str, says: str) -> None:
    file = folder / name
    file.write_text(f"#!/bin/sh\necho {says}\n")
    file.chmod(0o755)


@pytest.mark.parametrize("version, taken", [("v20.0.0", True), ("v18.20.4", False), ("nonsense", False)])
def test_the_machines_node_is_taken_only_if_recent(tmp_path, monkeypatch, version, taken):
    program(tmp_path, "node", version)
    program(tmp_path, "npm", "10.0.0")
    monkeypatch.setenv("PATH", str(tmp_path))
    assert (node.on_machine() is not None) == taken


def test_a_node_without_npm_is_not_taken(tmp_path, monkeypatch):
    program(tmp_path, "node", "v20.0.0")
    monkeypatch.setenv("PATH", str(tmp_path))
    assert node.on_machine() is None


def test_without_a_node_the_wheel_is_installed(tmp_path, monkeypatch):
    asked = []
    monkeypatch.setattr(node, "on_machine", lambda: None)
    monkeypatch.setattr(node.environment, "ensure", lambda root, venv, extras: asked.append(extras))
    with pytest.raises(CommandError, match="Node 20 or newer"):
        node.ensure(tmp_path, tmp_path / ".venv")
    assert asked == [["node"]]


@pytest.fixture
def house(tmp_path, monkeypatch) -> SimpleNamespace:
    """A small repository whose npm is noted down and never run."""
    for name in node.MANIFESTS:
        (tmp_path / name).write_text("{}")
    house = SimpleNamespace(root=tmp_path, calls=[], fails=False)

    def run(command, **_):
        house.calls.append(list(command))
        (tmp_path / "node_modules").mkdir(exist_ok=True)
        return SimpleNamespace(returncode=int(house.fails))

    monkeypatch.setattr(node.subprocess, "run", run)
    return house


THIS_NODE = node.Node(("/bin/node",), ("/bin/npm",))


def test_npm_is_called_once(house):
    node.ensure_packages(house.root, THIS_NODE)
    node.ensure_packages(house.root, THIS_NODE)
    assert house.calls == [["/bin/npm", "ci", "--silent"]]


def test_the_site_alone_is_spared_what_only_tests_need(house):
    node.ensure_packages(house.root, THIS_NODE, for_tests=False)
    node.ensure_packages(house.root, THIS_NODE, for_tests=False)
    assert house.calls == [["/bin/npm", "ci", "--silent", "--omit=dev"]]


def test_for_tests_the_rest_is_brought_in_and_then_serves_the_site_too(house):
    for for_tests in (False, True, False):
        node.ensure_packages(house.root, THIS_NODE, for_tests=for_tests)
    assert house.calls == [["/bin/npm", "ci", "--silent", "--omit=dev"], ["/bin/npm", "ci", "--silent"]]


@pytest.mark.parametrize("manifest", node.MANIFESTS)
def test_a_changed_manifest_calls_npm_again(house, manifest):
    node.ensure_packages(house.root, THIS_NODE)
    (house.root / manifest).write_text('{"changed": true}')
    node.ensure_packages(house.root, THIS_NODE)
    assert len(house.calls) == 2


def test_a_failed_call_is_made_again(house):
    house.fails = True
    with pytest.raises(CommandError, match="npm packages"):
        node.ensure_packages(house.root, THIS_NODE)
    house.fails = False
    node.ensure_packages(house.root, THIS_NODE)
    assert len(house.calls) == 2
