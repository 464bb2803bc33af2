"""The steps of a corner are one list: each with its drawing, a command with its number, and its reason folded away."""

import re
from itertools import product

import pytest

from calculators.asking.answering import Asking, answer
from calculators.asking.declaration import InvalidInput
from calculators.catalogue import calculator_named
from calculators.drawing.folding import corner_step_by_step
from calculators.faces.page.answer_html import figure
from calculators.faces.page.markup import html
from calculators.faces.page.steps_widget import steps_widget
from calculators.trade.corners.constructions import CONSTRUCTIONS
from calculators.trade.trade_rules import brief
from calculators.values.measure import CENTIMETRES

STEPS = calculator_named("corner-steps")
JOBS = ({}, {"hem_1": "5 cm", "hem_2": "2 cm"}, {"angle": "120"})


def listed(way, ruler="cm", **given):
    asking = Asking({"way": way, **given}, wanted_ruler=ruler)
    try:
        reply = answer(STEPS, asking)
    except InvalidInput:
        return [], []
    return reply.drawn_from[0], list(figure(STEPS, reply, asking.ruler).iter("li"))


def text(node, path):
    found = node.find(path)
    return "" if found is None else "".join(found.itertext())


@pytest.mark.parametrize(("way", "given", "ruler"), product(CONSTRUCTIONS, JOBS, ("cm", "in")))
def test_each_step_is_one_command_with_its_number_and_one_drawing(way, given, ruler):
    steps, items = listed(way, ruler, **given)
    assert len(items) == len(steps)
    for step, item in zip(steps, items):
        command = item.find("div/p[@class='do']/strong")
        said = "".join(command.itertext())
        assert re.fullmatch(r"[A-Z][^.]*(?:\d\.\d[^.]*)*\.", said), said
        assert len(said.split()) < 25 and "{" not in html(item)
        numbers = re.findall(r"\{\w+\}", step.do)
        assert len(command.findall("span[@class='number']")) == len(numbers)
        assert len(item.findall("figure/svg")) == 1


def test_a_reason_is_folded_and_a_caution_is_not():
    _, items = listed("mitre")
    folded = "".join(text(item, "div/details") for item in items)
    shown = "".join(text(item, "div/p[2]") for item in items)
    assert "Shears go through the cloth" in folded and "not the shears" in shown
    assert "take each pin out before the foot" in shown and "Fasten both ends. Hold both threads." in shown


@pytest.mark.parametrize("way", CONSTRUCTIONS)
def test_every_rule_of_a_step_stands_open_in_its_line(way):
    steps, items = listed(way)
    for step, item in zip(steps, items):
        assert all(brief(key) in text(item, "div/p[2]") for key in step.rules)


def test_a_drawing_to_measure_in_stays_large_and_the_others_are_cropped_to_one_scale():
    steps, items = listed("mitre")
    sizes = {step.name: (item.get("class"), item.find("figure/svg").get("viewBox")) for step, item in zip(steps, items)}
    assert [name for name, (kind, _) in sizes.items() if kind == "large"] == ["Mark"]
    assert len({box.split()[2] for kind, box in sizes.values() if kind == "small"}) == 1
    assert sizes["Mark"][1].startswith("0 0 360 ")


@pytest.mark.parametrize("way", CONSTRUCTIONS)
def test_nothing_of_the_cloth_is_cropped_away(way):
    steps = listed(way)[0]
    for picture in corner_step_by_step(steps, CENTIMETRES).pictures:
        if picture.crop is None:
            continue
        left, top, width, height = picture.crop
        for line in picture.svg.iter("polyline"):
            if "dimension" in line.get("class"):
                continue
            for x, y in (map(float, pair.split(",")) for pair in line.get("points").split()):
                assert left - 0.2 <= x <= left + width + 0.2 and top - 0.2 <= y <= top + height + 0.2, picture.title


def test_below_another_calculator_the_form_waits_behind_a_line_and_the_list_does_not():
    made = steps_widget("corner-steps", Asking({"way": "mitre"}), "here", {"way": "mitre"})
    fold = made.find("details")
    assert fold is not None and fold.get("open") is None and fold.find("form") is not None
    assert fold.find(".//ol") is None and made.find("div[@class='answer']//ol") is not None
    assert made.get("data-calculator") == "corner-steps" and "calculator" in made.get("class").split()


def test_a_choice_that_the_page_makes_is_told_and_not_asked():
    given = {"way": "folded-mitre", "trimming": "whole", "hem_1": "10 cm"}
    made = steps_widget("corner-steps", Asking(given), "here", given, settled=True)
    form = made.find(".//form")
    asked = {
        each.get("name") for each in form.iter() if each.tag in ("input", "select") and each.get("type") != "hidden"
    }
    unasked = {each.get("name"): each.get("value") for each in form.iter("input") if each.get("type") == "hidden"}
    assert unasked == {"way": "folded-mitre", "trimming": "whole"} and not asked & {"way", "trimming"}
    assert "hem_1" in asked and "Folded mitre, no seam: hems of" in "".join(form.find("p").itertext())
