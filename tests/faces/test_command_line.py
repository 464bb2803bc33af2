"""The calculators at a terminal."""

import json
import os
import subprocess
import sys

import pytest

from calculators.catalogue import catalogue
from calculators.faces.command_line import main
from scripts.tools.places import ROOT


def run(*words, **environment):
    """One command as a person gives it."""
    command = [sys.executable, "-m", "calculators", *words]
    return subprocess.run(command, cwd=ROOT, env=os.environ | environment, capture_output=True, timeout=60)


def spoken(capsys, *words):
    code = main(list(words))
    return code, capsys.readouterr().out


def test_without_a_name_all_are_listed():
    listed = run()
    assert listed.returncode == 0
    lines = listed.stdout.decode().splitlines()
    assert [line.split()[0] for line in lines] == sorted(catalogue())
    assert all(each.purpose in line for each, line in zip(catalogue().values(), lines))


def test_json_holds_what_was_asked_and_answered_in_millimetres():
    answered = run(
        "pieces-from-cloth",
        "cloth_width=110 cm",
        "measured=trimmed",
        "cloth_length=250 cm",
        "piece_width=36cm",
        "piece_length=36 cm",
        "--json",
    )
    answer = json.loads(answered.stdout)
    assert answered.returncode == 0 and answered.stderr == b""
    assert list(answer) == ["calculator", "inputs", "results", "notes"]
    assert answer["calculator"] == "pieces-from-cloth"
    assert answer["inputs"]["cloth_width"] == 1100 and answer["inputs"]["least_width"] is None
    assert (answer["results"]["across"], answer["results"]["along"], answer["results"]["marks_across"]) == (
        3,
        6,
        [360, 720, 1080],
    )
    seven = next(row for row in answer["results"]["other_counts"] if (row["direction"], row["pieces"]) == ("along", 7))
    assert seven["piece_size"] == pytest.approx(357.142857)
    assert answer["notes"]


def test_a_bad_value_leaves_with_2_and_says_so_twice_over():
    refused = run("mitre-marks", "hem_1=36 banana", "--json")
    assert refused.returncode == 2
    (sentence,) = json.loads(refused.stdout)["errors"].values()
    assert list(json.loads(refused.stdout)["errors"]) == ["hem_1"]
    assert refused.stderr.decode().strip() == sentence


def test_a_terminal_without_our_signs_still_gets_its_answer():
    marks = ("before_length=50 cm", "after_length=47.6 cm", "before_width=50 cm", "after_width=48.8 cm")
    answered = run("wash-test", *marks, PYTHONIOENCODING="ascii")
    assert answered.returncode == 0 and rb"\u22124.8 %" in answered.stdout


def test_bytes_that_are_no_text_are_refused_like_any_other_nonsense():
    refused = run("mitre-marks", b"hem_1=\xff", b"\xfe=1", "--json")
    assert refused.returncode == 2 and len(json.loads(refused.stdout)["errors"]) == 2


def test_a_reader_who_stops_reading_is_no_trouble():
    command = (
        f"'{sys.executable}' -m calculators pieces-from-cloth 'cloth_length=99 m' 'piece_length=2 cm' "
        "'piece_width=2 "
        "cm' | head -c 10"
    )
    stopped = subprocess.run(["bash", "-c", command], cwd=ROOT, capture_output=True, timeout=60)
    assert stopped.stderr == b"" and len(stopped.stdout) == 10


@pytest.mark.parametrize("calculator", catalogue().values(), ids=lambda each: each.name)
def test_help_shows_every_field_and_result(calculator, capsys):
    code, text = spoken(capsys, calculator.name, "--help")
    assert code == 0 and calculator.purpose in text
    for each in (*calculator.fields, *calculator.results):
        assert any(line.split()[:1] == [each.name] and each.label in line for line in text.splitlines()), each.name


@pytest.mark.parametrize("calculator", catalogue().values(), ids=lambda each: each.name)
def test_the_spoken_answer_has_every_result(calculator, capsys):
    code, text = spoken(capsys, calculator.name)
    assert code == 0 and "**" not in text
    assert all(result.label in text for result in calculator.results)


def test_the_ruler_in_hand_can_be_chosen(capsys):
    code, text = spoken(capsys, "mitre-marks", "hem_1=1", "hem_2=1", "--ruler", "in 1/32")
    assert code == 0 and text.startswith("Mark 2 in ") and "1 13/32 in" in text


def test_an_unknown_calculator_is_answered_with_those_there_are(capsys):
    assert main(["no-such", "--json"]) == 2
    spoken = capsys.readouterr()
    assert "mitre-marks" in spoken.err and "calculator" in json.loads(spoken.out)["errors"]


def test_a_value_may_hold_an_equals_sign_and_a_dash(capsys):
    assert main(["mitre-marks", "hem_1==", "--json"]) == 2
    assert main(["mitre-marks", "hem_1=-2 cm", "--json"]) == 2
    assert "minus" in capsys.readouterr().err


def test_a_field_given_twice_is_refused_and_not_chosen_between(capsys):
    assert main(["mitre-marks", "hem_1=2 cm", "hem_1=3 cm", "--json"]) == 2
    assert list(json.loads(capsys.readouterr().out)["errors"]) == ["hem_1"]


def test_help_lists_what_can_be_chosen(capsys):
    assert "One of: cut, finished." in spoken(capsys, "finished-size", "-h")[1]


def test_sentences_stand_in_the_order_of_the_fields(capsys):
    main(["mitre-marks", "turn=x", "other=1", "hem_2=x", "hem_1=x", "another=1", "--json"])
    assert list(json.loads(capsys.readouterr().out)["errors"]) == ["hem_1", "hem_2", "turn", "other", "another"]
