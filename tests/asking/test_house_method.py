"""The house method that the handbook is built with."""

from fractions import Fraction
from importlib.resources import files

import pytest
import yaml

from calculators.asking.house_method import RULER_STEPS, read_house_method
from calculators.asking.site_method import PACKAGED, site_method
from calculators.documents.house_method.check import mended
from calculators.documents.house_method.format import migrated
from calculators.documents.house_method.sections import tables
from calculators.trade.cloth import dimensional_change
from calculators.values.kinds import DimensionalChange
from calculators.values.measure import CENTIMETRES, SIXTEENTHS, parse_length


def test_every_measure_is_about_the_same_on_both_rulers():
    """Round figures may differ between rulers, but not by so much that the inch reader has another workroom."""
    for name, measure in site_method().measures.items():
        if isinstance(measure, str):
            continue
        assert set(measure) == {"cm", "in"}, name
        on_cm, on_inches = parse_length(measure["cm"]), parse_length(measure["in"])
        assert abs(on_cm - on_inches) <= max(Fraction(8, 100) * on_cm, 5), name


def test_lengths_of_the_house_say_their_unit():
    for name, measure in site_method().measures.items():
        if not isinstance(measure, str):
            assert parse_length(measure["cm"], "yd") == parse_length(measure["cm"], "mm"), name
            assert parse_length(measure["in"], "yd") == parse_length(measure["in"], "mm"), name


def test_rulers_are_chosen_by_word():
    method = site_method()
    assert method.ruler() == method.ruler(method.unit)
    assert method.ruler("in 1/32").step == Fraction(1, 32)
    assert method.ruler("cm 1/2").step == Fraction(1, 2)
    for unit, steps in RULER_STEPS.items():
        assert all(method.ruler(f"{unit} {step}").unit == unit for step in steps)


@pytest.mark.parametrize("wanted", ["in 1/3", "yd", "cm 1/16", "x" * 500])
def test_a_ruler_that_is_not_there_is_refused_with_those_that_are(wanted):
    with pytest.raises(ValueError, match="There are: .*in 1/16") as refused:
        site_method().ruler(wanted)
    assert len(str(refused.value)) < 250


def test_a_measure_is_told_in_round_figures_of_the_ruler_in_hand():
    data = {
        "name": "A workroom",
        "ruler": {"unit": "in", "cm_step": "1/10", "mm_step": "1", "in_step": "1/8"},
        "measures": {"hem": {"cm": "2 cm", "in": "3/4 in"}, "layers": "4"},
    }
    method = read_house_method(data)
    assert method.ruler().step == Fraction(1, 8)
    assert [method.measure("hem", ruler) for ruler in (CENTIMETRES, SIXTEENTHS)] == ["2 cm", "3/4 in"]
    assert method.measure("layers", SIXTEENTHS) == "4"


def test_the_tests_own_method_says_all_that_the_packaged_one_says():
    """A studio may change what the packaged one says, and not what it says it of."""
    packaged = yaml.safe_load(files("calculators.asking").joinpath(PACKAGED).read_text(encoding="utf-8"))
    document, messages = mended(migrated(packaged))
    assert messages == {}
    assert set(document["measures"]) == set(site_method().measures) and set(document["tables"]) == set(tables())


@pytest.mark.parametrize("ruler", [CENTIMETRES, SIXTEENTHS], ids=["cm", "in"])
@pytest.mark.parametrize("way", ["length", "width"])
def test_the_packaged_test_square_and_the_list_of_cloths_say_the_same_of_the_cloth_in_use(way, ruler):
    packaged = read_house_method(yaml.safe_load(files("calculators.asking").joinpath(PACKAGED).read_text("utf-8")))
    before, after = (parse_length(packaged.measure(f"{name}_{way}", ruler)) for name in ("before", "after"))
    listed = packaged.cloth_line(packaged.measure("cloth", ruler))[f"change_{way}"]
    assert DimensionalChange().show(dimensional_change(before, after), ruler) == listed
