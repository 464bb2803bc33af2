"""The build's steps: run when what they read has changed, and everything after them too."""

from dataclasses import replace
from pathlib import Path

import pytest

from scripts.tools.stamps import Stamp, files_below, fingerprint, fingerprint_of_files
from scripts.tools.steps import Step, run_steps


def copying(root: Path, name: str, source: str, target: str, *settings: str) -> Step:
    def run():
        (root / target).write_text((root / source).read_text())

    return Step(name, run, reads=[source], makes=[target], settings=settings)


@pytest.fixture
def steps(tmp_path):
    (tmp_path / "a").write_text("1")
    (tmp_path / "other").write_text("1")
    return [
        copying(tmp_path, "first", "a", "b"),
        copying(tmp_path, "second", "other", "c"),
        copying(tmp_path, "third", "b", "d"),
    ]


def run(steps, root) -> list[str]:
    return run_steps(steps, root, root / "stamps")


def test_nothing_changed_nothing_done(steps, tmp_path):
    assert run(steps, tmp_path) == ["first", "second", "third"]
    assert run(steps, tmp_path) == []


def test_a_change_runs_its_step_and_all_after(steps, tmp_path):
    run(steps, tmp_path)
    (tmp_path / "other").write_text("2")
    assert run(steps, tmp_path) == ["second", "third"]
    assert run(steps, tmp_path) == []


def test_a_missing_result_is_made_again(steps, tmp_path):
    run(steps, tmp_path)
    (tmp_path / "d").unlink()
    assert run(steps, tmp_path) == ["third"]


def test_another_setting_runs_the_step(tmp_path):
    (tmp_path / "a").write_text("1")
    run([copying(tmp_path, "pages", "a", "b", "port 8000")], tmp_path)
    assert run([copying(tmp_path, "pages", "a", "b", "port 8001")], tmp_path) == ["pages"]


def test_a_step_that_breaks_off_is_run_again(tmp_path):
    (tmp_path / "a").write_text("1")
    whole = copying(tmp_path, "pages", "a", "b")
    run([whole], tmp_path)

    def stop():
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        run([replace(whole, run=stop, settings=["other"])], tmp_path)
    assert run([whole], tmp_path) == ["pages"]


def test_a_break_between_two_steps_is_caught_up(steps, tmp_path):
    """The second step reads nothing of the first's, and must be run after it all the same."""
    first, second, third = steps
    run(steps, tmp_path)
    (tmp_path / "a").write_text("2")

    def stop():
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        run([first, replace(second, run=stop), third], tmp_path)
    assert run(steps, tmp_path) == ["second", "third"]


def test_fingerprints_tell_names_and_contents_apart(tmp_path):
    (tmp_path / "x").mkdir()
    (tmp_path / "x/one").write_text("1")
    one = fingerprint_of_files(tmp_path, ["x"])
    (tmp_path / "x/one").rename(tmp_path / "x/two")
    assert fingerprint_of_files(tmp_path, ["x"]) != one
    assert fingerprint("ab", "c") != fingerprint("a", "bc")


def test_compiled_python_is_not_read(tmp_path):
    (tmp_path / "__pycache__").mkdir()
    (tmp_path / "__pycache__/a.pyc").write_bytes(b"1")
    (tmp_path / "a.py").write_text("1")
    assert [file.name for file in files_below(tmp_path, ["."])] == ["a.py"]


def test_a_stamp_matches_only_its_own_key(tmp_path):
    stamp = Stamp(tmp_path / "deep/stamp")
    assert not stamp.matches("key")
    stamp.press("key")
    assert stamp.matches("key") and not stamp.matches("other key")
    stamp.lift()
    assert not stamp.matches("key")
