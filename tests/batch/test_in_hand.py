"""What every page knows of the work in hand has one name and one place to be called by."""

import json

from calculators.asking.answering import Asking
from calculators.batch.in_hand import MEASURES, field_of, known_as_in, measured
from calculators.batch.walk import BATCH
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
    wash, curtains = calculator_named("wash-test"), calculator_named("curtains")
    before = {name for field in wash.fields for name in field.names_in_hand}
    to_wash = curtains.field("cloth_width")  # the cloth is bought by it, and its change in the wash is asked beside it
    assert to_wash.names_in_hand == ("unwashed_width",) and curtains.field("change_width")
    others = [
        field for each in catalogue().values() if each is not wash for field in each.fields if field is not to_wash
    ]
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
    assert "24 pieces · Hem 2.5 cm · Cloth width 54 in · Angle of the corner 90 · First turn to mend" in line
    assert "First turn: " in line and "<b>1</b>" not in line
    assert line.count("data-put-down") == len(measures) + 1
    job = {"id": "j1", "name": "Long <table>", "home": "https://example.org/"}
    named = asked(ask="in hand", measures=measures, job=job)["line"].replace("\xa0", " ")
    told = "24 pieces · Hem 2.5 cm · Cloth width 54 in · 1 more · First turn to mend"
    assert f"Your measures: </b>Long &lt;table&gt; · {told}" in named
    assert named.count("data-put-down") == len(measures) and "data-job-put-down" in named
    assert 'href="https://example.org/house/ticket/#job=j1"' in named
    assert "Put the job down" in asked(ask="in hand", measures={}, job=job)["line"]


def texts_of(calculator: str, given: dict[str, str], **measures: str) -> dict[str, str]:
    """What stands in the blanks of a page where nothing is written, on a centimetre ruler."""
    written = {name: {"text": text, "readOn": "cm 1/10"} for name, text in measures.items()}
    reply = asked(ask="calculator", calculator=calculator, given=given, typed={}, measures=written, ruler="cm 1/10")
    return {name: text.replace("\xa0", " ") for name, text in reply["texts"].items()}


def test_the_cut_size_follows_the_finished_one_and_the_other_way_round():
    """Arithmetic: 36 cm and twice a turn of 1 cm and a hem of 2.5 cm are 43 cm."""
    pieces = texts_of("pieces-from-cloth", {}, finished_width="36", finished_length="40", hem="2.5", turn="1")
    assert (pieces["piece_width"], pieces["piece_length"]) == ("43 cm", "47 cm")
    size = texts_of("finished-size", {"start_from": "finished"}, cut_width="43", cut_length="47")
    assert (size["width"], size["length"]) == ("37 cm", "41 cm"), "with the house’s hem of 2 cm"
    both = texts_of("pieces-from-cloth", {}, finished_width="36", cut_width="50")
    assert both["piece_width"] != "43 cm", "what was written itself counts"


def test_table_mattress_and_pad_go_from_one_article_to_the_next():
    names = (
        "table_width",
        "table_length",
        "table_drop",
        "tablecloth_hem",
        "mattress_width",
        "mattress_depth",
        "pad_width",
    )

    def found(article: str) -> dict[str, str]:
        return measured(calculator_named(article), Asking({}), dict.fromkeys(names, HEM))

    table = {"table_width": "table_width", "table_length": "table_length", "drop": "table_drop"}
    assert found("tablecloth") == found("tablecloth-joined") == {**table, "hem": "tablecloth_hem"}
    assert found("tablecloth-round") == table, "its hem is narrow, and its own"
    assert found("runner") == {"table_length": "table_length"} and found("napkin") == found("tea-towel") == {}
    mattress = {"mattress_width": "mattress_width", "depth": "mattress_depth"}
    assert found("flat-sheet") == found("fitted-sheet") == mattress
    assert found("cushion-zip") == found("cushion-flanged") == {"pad_width": "pad_width"}


def test_the_cloth_follows_its_wash_test():
    """Arithmetic: 138 cm × 48.9 ÷ 50 = 134.96 cm; 420 cm × 48.2 ÷ 50 = 404.88 cm, less 1 cm at both ends and a slant of
    2 cm."""
    wash = {"unwashed_width": "138", "cloth_length": "4.2 m", "before_length": "50", "after_length": "48.2",
            "before_width": "50", "after_width": "48.9", "end_loss": "1", "skew": "2"}  # fmt: skip
    pieces = texts_of("pieces-from-cloth", {}, **wash)
    assert (pieces["cloth_width"], pieces["cloth_length"]) == ("134.9 cm", "400.8 cm")
    assert texts_of("usable-cloth", {}, **wash)["full_width"] == "134.9 cm"
    plan = texts_of("lay-plan", {}, **wash)
    assert (plan["change_length"], plan["change_width"]) == ("−3.6 %", "−2.2 %")
    alone = texts_of("pieces-from-cloth", {})
    assert texts_of("pieces-from-cloth", {}, pieces="24") == alone, "nothing follows from what does not bear on it"
    damaged = texts_of("pieces-from-cloth", {}, unwashed_width="two ells")
    assert damaged["cloth_width"] == alone["cloth_width"]


def test_numbers_in_the_text_follow_what_follows_from_what_is_in_hand():
    """Arithmetic: 43 cm go three times into 131.9 cm and nine times into 400.8 cm."""
    written = {"finished_width": "36", "finished_length": "36", "hem": "2.5", "turn": "1", "unwashed_width": "138",
               "cloth_length": "4.2 m", "after_length": "48.2", "after_width": "48.9"}  # fmt: skip
    measures = {name: {"text": text, "readOn": "cm 1/10"} for name, text in written.items()}
    count = {"calculator": "pieces-from-cloth", "result": "count", "given": {}}
    reply = asked(ask="numbers", numbers=[count], measures=measures)
    assert (reply["numbers"], reply["hers"]) == (["27"], [True])


def test_a_job_that_begins_with_the_finished_size_has_it_in_hand():
    begun = {"format": "job", "version": 1, "name": "Napkins", "walk": "batch", "method": None}
    sizes = {"start_from": "finished", "width": "36 cm", "length": "40 cm"}
    reply = asked(ask="job measures", job=json.dumps({**begun, "typed": {"finished-size": sizes}}))
    assert reply["measures"] == {"finished_width": "36 cm", "finished_length": "40 cm"}
    assert reply["paths"]["finished_width"] == "typed.finished-size.width" and reply["without"] == []
    cut = asked(ask="job measures", job=json.dumps({**begun, "typed": {"finished-size": {"width": "36 cm"}}}))
    assert cut["measures"] == {} and cut["without"] == ["finished_width", "finished_length"]


SIZES = {
    name: {"text": "42", "readOn": "cm 1/10"} for name in ("finished_width", "finished_length")
} | {"hem": HEM, "turn": {"text": "1", "readOn": "cm 1/10"}}  # fmt: skip


HEMMED = {"finished-size": {"hem": "2.5 cm", "turn": "1 cm"}}  # as the page fills its blanks from what is in hand


def test_a_batch_its_ticket_and_a_job_begun_cut_for_the_finished_size_in_hand():
    """42 cm finished, a turn of 1 and a hem of 2.5 cm: 49 cm cut, on every page."""
    steps = asked(ask="walk", walk="batch", typed=HEMMED, measures=SIZES)["steps"]
    assert steps["pieces-from-cloth"]["texts"]["piece_width"] == "49 cm"
    assert steps["finished-size"]["texts"]["width"] == "49 cm" and "42 cm" in steps["finished-size"]["answer"]
    ticket = asked(ask="ticket", kind="loose", kept="", method="", typed=HEMMED, read_on="cm 1/10",
        home="../../", measures=SIZES)  # fmt: skip
    assert "cut 49 cm by 49 cm, finished 42 cm by 42 cm" in ticket["body"].replace("\N{NO-BREAK SPACE}", " ")
    job = asked(
        ask="new job", id="j", at="2026-11-25T10:00:00+01:00", walk="batch", typed=HEMMED, measures=SIZES, method=""
    )["job"]
    assert json.loads(job)["typed"] == {
        **HEMMED,
        "pieces-from-cloth": {"piece_width": "49 cm", "piece_length": "49 cm"},
    }


def test_what_is_typed_into_a_batch_or_given_back_in_it_goes_before_what_follows():
    typed = {"pieces-from-cloth": {"piece_width": "50 cm"}}
    texts = asked(ask="walk", walk="batch", typed=typed, measures=SIZES)["steps"]["pieces-from-cloth"]["texts"]
    assert (texts["piece_width"], texts["piece_length"]) == ("50 cm", "49 cm")
    typed = {"finished-size": {"start_from": "finished", "width": "40 cm", "length": "40 cm", "hem": "2 cm"}}
    steps = asked(ask="walk", walk="batch", typed=typed, measures=SIZES)["steps"]
    assert steps["pieces-from-cloth"]["texts"]["piece_width"] == "46 cm"
    assert asked(ask="walk", walk="batch", typed={})["steps"]["pieces-from-cloth"]["texts"]["piece_width"] == "46 cm"


def test_how_another_width_was_measured_is_no_matter_of_a_batch_that_begins_with_unwashed_cloth():
    assert "measured" not in known_as_in(BATCH)["usable-cloth"]
