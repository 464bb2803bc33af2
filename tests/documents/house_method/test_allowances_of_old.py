"""A method kept when one allowance served every seam and every mitre opens with what was written standing for all of
them."""

import json
from pathlib import Path

import pytest

from calculators.asking.answering import Asking
from calculators.asking.site_method import site_method
from calculators.catalogue import calculator_named
from calculators.documents.house_method.reading import read_method

SERVED = ("seam_allowance", "felled_allowance", "french_allowance", "facing_allowance", "mitre_allowance")
OLD = {"format": "house method", "version": 1, "name": "Ours"}


def opened(**measures):
    return read_method(json.dumps(OLD | {"measures": measures}))


@pytest.mark.parametrize(
    "written",
    ["1/2 in", {"cm": "1.3 cm", "in": "1/2 in"}, {"value": "13 mm", "why": "Our foot."}],
    ids=["one text", "two rulers", "with a reason"],
)
def test_what_she_wrote_stands_for_every_seam_and_for_the_mitre(written):
    document, _, messages = opened(seam_allowance=written)
    assert {name: document["measures"][name] for name in SERVED} == dict.fromkeys(SERVED, written) and not messages


def test_a_zip_never_had_one_and_a_method_without_one_follows_the_handbook():
    assert "zip_allowance" not in opened(seam_allowance="9 mm")[0]["measures"]
    assert opened(hem="2 cm")[1].measures["mitre_allowance"] == site_method().measures["mitre_allowance"]


@pytest.mark.parametrize(
    ("calculator", "typed"),
    [
        ("mitre-marks", {}),
        ("curtains", {}),
        ("lay-plan", {}),
        ("curtains", {"seam": "plain"}),
        ("lay-plan", {"seam": "french"}),
    ],
)
def test_every_calculator_goes_on_with_it(calculator, typed):
    method = opened(seam_allowance="9 mm")[1]
    assert Asking(typed, method=method).value(calculator_named(calculator).field("seam_allowance")) == 9


def test_a_step_kept_before_kinds_could_be_named_counts_for_every_piece():
    document = json.loads((Path(__file__).parent / "samples/method-1.json").read_text(encoding="utf-8"))
    document["tables"]["steps"] = [{"step": "Hem", "minutes": "3", "for_each": "piece"}]
    method = read_method(json.dumps(document))[1]
    assert method.for_kind("napkin").steps_of_its_kind == method.steps_of_its_kind == method.tables["steps"]
