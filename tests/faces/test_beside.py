"""Two ways beside each other on a page: what lies on a table lies as high in both, each step has its own drawing, and
both stand there as they are before and after."""

from calculators.asking.answering import Asking
from calculators.catalogue import calculator_named
from calculators.faces.page.beside import beside

WAYS = ({"edge": "plain"}, {"edge": "to-one-side"})


def made(name="edge-steps", ways=WAYS):
    return beside(calculator_named(name), Asking(ways[0]), Asking(ways[1]), ways)


def stages(drawn):
    return drawn.findall(".//div[@class='stage']/svg")


def tables(svgs):
    """How far below the top of the sheet the table lies [drawing units]."""
    return {round(float(each.get("data-table")) - float(each.get("viewBox").split()[1]), 1) for each in svgs}


def test_both_lie_as_high():
    shown = stages(made())
    assert len(shown) == 2
    assert len(tables(shown)) == 1
    assert len({each.get("viewBox").split()[3] for each in shown}) == 1
    shown[1].set("viewBox", "0 20 360 200")
    assert len(tables(shown)) == 2


def test_every_step_has_its_drawing_and_its_words():
    for svg in stages(made("corner-steps", ({"way": "mitre"}, {"way": "folded-mitre"}))):
        steps = svg.findall("g[@class='step']")
        assert len(steps) == max(map(int, svg.get("data-stops").split())) + 1
        assert all(len(each) and each.get("data-told") for each in steps)


def test_each_stands_there_before_and_after_and_by_its_name():
    drawn = made()
    states = drawn.find("div[@class='states halves']")
    assert [each.text for each in states.iter("p")] == ["Plain seam, pressed open", "Seam pressed to one side"]
    assert [each.text for each in states.iter("figcaption")] == ["Stitched", "Pressed open", "Stitched", "Pressed"]
    assert drawn.find("p[@class='alike']").text == "Alike up to “Stitched”."
