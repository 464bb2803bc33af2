"""What every page knows of the work in hand has one name and one place to be called by."""

import json

from calculators.asking.answering import Asking
from calculators.batch.in_hand import MEASURES, field_of, measured
from calculators.catalogue import calculator_named, catalogue
from calculators.faces.browser import replies

HEM = {"text": "2.5", "readOn": "cm 1/10"}


def names_of_fields() -> set[str]:
    """Every name that some field is known as."""
    sizes = {
        "{start_from}_width": ["cut_width", "finished_width"],
        "{start_from}_length": ["cut_length", "finished_length"],
    }
    return {
        name
        for calculator in catalogue().values()
        for field in calculator.fields
        for template in field.names_in_hand
        for name in sizes.get(template, [template])
    }


def test_every_measure_that_a_field_is_known_as_is_called_something_and_no_other():
    assert set(MEASURES) == names_of_fields()
    assert all(field_of(name).names_in_hand for name in MEASURES)
    assert len({*MEASURES.values()}) == len(MEASURES)


def test_fields_of_one_name_read_the_same_texts():
    """A length is a length wherever it is asked for, a choice one of the same words."""
    for calculator in catalogue().values():
        for field in calculator.fields:
            for name in field.names_in_hand:
                if name in MEASURES:
                    assert type(field.kind) is type(field_of(name).kind), (calculator.name, field.name)


def test_what_is_measured_before_the_wash_is_nowhere_taken_for_what_is_measured_after_it():
    wash = calculator_named("wash-test")
    before = {name for field in wash.fields for name in field.names_in_hand}
    others = [field for each in catalogue().values() if each is not wash for field in each.fields]
    assert before
    assert before.isdisjoint(name for field in others for name in field.names_in_hand)


def test_a_hem_of_the_other_edge_follows_the_first_until_it_is_written():
    marks = calculator_named("mitre-marks")
    asking = Asking({})
    assert measured(marks, asking, {"hem": HEM}) == {"hem_1": "hem", "hem_2": "hem"}
    assert measured(marks, asking, {"hem/2": HEM}) == {"hem_1": "hem/2", "hem_2": "hem/2"}
    assert measured(marks, asking, {"hem": HEM, "hem/2": HEM}) == {"hem_1": "hem", "hem_2": "hem/2"}
    assert measured(marks, Asking({"hem_1": "3 cm"}), {"hem": HEM}) == {"hem_2": "hem"}


def test_a_size_is_known_as_the_cut_or_the_finished_one():
    size = calculator_named("finished-size")
    both = {"cut_width": HEM, "finished_width": HEM}
    assert measured(size, Asking({}), both)["width"] == "cut_width"
    assert measured(size, Asking({"start_from": "finished"}), both)["width"] == "finished_width"


def asked(**question) -> dict:
    return json.loads(list(replies(json.dumps({"ruler": "", **question})))[-1])


def test_numbers_follow_what_is_in_hand_and_say_so():
    """Arithmetic: the mark is twice the hem."""
    wanted = {"calculator": "mitre-marks", "result": "mark_1", "given": {}}
    own = {**wanted, "given": {"hem_1": "5 cm", "hem_2": "2 cm"}}
    reply = asked(ask="numbers", numbers=[wanted, own], measures={"hem": HEM})
    assert [each.replace("\xa0", " ") for each in reply["numbers"]] == ["5 cm", "4 cm"]
    assert reply["hers"] == [True, False]
    nonsense = asked(ask="numbers", numbers=[wanted], measures={"hem": {"text": "two fingers", "readOn": ""}})
    assert nonsense["numbers"] == asked(ask="numbers", numbers=[wanted])["numbers"]
    assert nonsense["hers"] == [False]


def test_the_line_says_what_is_in_hand_and_what_cannot_be_read():
    measures = {
        "pieces": {"text": "24", "readOn": ""}, "hem": HEM, "turn": {"text": "<b>1</b>", "readOn": "no such ruler"},
        "cloth_width": {"text": "54", "readOn": "in 1/16"}, "angle": {"text": "90", "readOn": ""},
    }  # fmt: skip
    line = asked(ask="in hand", measures=measures)["line"].replace("\xa0", " ")
    assert "24 pieces · Cloth width 54 in · First turn &lt;b&gt;1&lt;/b&gt; · Hem 2.5 cm · 1 more" in line
    assert "First turn: " in line and "<b>1</b>" not in line
    assert line.count("data-put-down") == len(measures) + 1
    job = {"id": "j1", "name": "Long <table>", "home": "https://example.org/"}
    named = asked(ask="in hand", measures=measures, job=job)["line"].replace("\xa0", " ")
    assert (
        "Your measures: </b>Long &lt;table&gt; · 24 pieces · Cloth width 54 in · First turn &lt;b&gt;1&lt;/b&gt; · "
        in named
    )
    assert named.count("data-put-down") == len(measures) and "data-job-put-down" in named
    assert 'href="https://example.org/house/ticket/#job=j1"' in named
    assert "Put the job down" in asked(ask="in hand", measures={}, job=job)["line"]
