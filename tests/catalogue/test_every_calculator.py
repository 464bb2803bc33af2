"""What holds for every calculator, whoever declares the next one."""

import json
import xml.etree.ElementTree as ET
from fractions import Fraction

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calculators.asking.answering import Asking, answers, filled, read
from calculators.asking.bibliography import source_named
from calculators.asking.declaration import InvalidInput
from calculators.asking.house_method import RULER_STEPS
from calculators.asking.site_method import site_method
from calculators.catalogue import calculator_named, catalogue
from calculators.drawing.picture import pictures_of
from calculators.faces.page.answer_html import answer_html
from calculators.faces.page.form import form_html
from calculators.faces.page.markup import html
from calculators.faces.page.plain import plain_answer, refusals
from calculators.trade.corners.constructions import CONSTRUCTIONS
from calculators.values.kinds import Length
from calculators.values.measure import show_exactly
from calculators.values.phrase import without_marks
from tests.sentences import PROGRAMMERS_WORDS, is_one_message

RULERS = [f"{unit} {step}" for unit, steps in RULER_STEPS.items() for step in steps]
every_calculator = pytest.mark.parametrize("calculator", catalogue().values(), ids=lambda each: each.name)


def improved(calculator, asking, steps):
    """The best answer of so many steps, of more where none has come by then, and whether that was all; raises
    InvalidInput as `answers` does."""
    best = None
    for number, better in enumerate(answers(calculator, asking)):
        best = better or best
        if best and number >= steps:
            return best, False
    return best, True


def answers_fully(calculator, asking, steps=100_000):
    """Work out, show on every face and return the answer; raises InvalidInput as `answer` does.

    steps: after so many of an answer that becomes better and better, what stands is judged.
    """
    reply, is_whole = improved(calculator, asking, steps)
    assert set(reply.results) == {result.name for result in calculator.results}
    for phrase in (reply.spoken, *reply.notes, *reply.working):
        text = filled(phrase, calculator, asking.ruler)
        assert without_marks(text)[:1] and text.rstrip("*").endswith((".", "…", ":")) and "{" not in text
    if is_whole:
        json.dumps(plain_answer(calculator, asking), allow_nan=False)
    page = "".join(html(each) for each in answer_html(calculator, reply, asking))
    assert "nan" not in page.lower().split() and "inf" not in page.lower().split()
    return reply


def test_the_five_of_the_first_issue_are_there():
    assert {"wash-test", "usable-cloth", "finished-size", "pieces-from-cloth", "mitre-marks"} <= set(catalogue())


@pytest.mark.parametrize(
    ("name", "fields", "results"),
    [
        ("wash-test", "before_length after_length "
            "before_width after_width needed_length needed_width", "change_length change_width cut_length cut_width"),
        ("usable-cloth", "layers folded_length "
            "extra_length full_width selvedge end_loss skew", "usable_length usable_width skew_percent"),
        ("finished-size", "start_from width length turn hem "
            "hem_top hem_bottom hem_left hem_right", "cut_width cut_length finished_width finished_length "
                "border_share"),
        (
            "pieces-from-cloth", "cloth_width cloth_length piece_width piece_length may_turn least_width least_length",
            "count across along turned marks_across marks_along left_width left_length other_counts",
        ),
        ("mitre-marks", "hem_1 hem_2 angle turn seam_allowance", "mark_1 mark_2 half_line corner_to_line trim_1 "
            "trim_2 seam_length"),
    ],
)  # fmt: skip
def test_asks_and_answers_at_least_what_was_agreed(name, fields, results):
    calculator = calculator_named(name)
    assert set(fields.split()) <= {field.name for field in calculator.fields}
    assert set(results.split()) <= {result.name for result in calculator.results}


@every_calculator
@pytest.mark.parametrize("ruler", RULERS)
def test_the_house_numbers_answer_without_trouble(calculator, ruler):
    answers_fully(calculator, Asking({}, wanted_ruler=ruler))


@every_calculator
def test_its_worked_examples_come_out(calculator):
    assert calculator.examples, "a calculator shows at least one worked example"
    for example in calculator.examples:
        results = plain_answer(calculator, Asking(example.given))["results"]
        for name, expected in example.expected.items():
            assert results[name] == pytest.approx(expected, abs=example.tolerance or 1e-9), (example, name)
        assert example.source and set(example.given) <= {field.name for field in calculator.fields}


@every_calculator
def test_its_worked_examples_do_not_hang_on_the_ruler_or_the_house(calculator):
    for example in calculator.examples:
        on_cm, on_inches = (
            plain_answer(calculator, Asking(example.given, wanted_ruler=ruler))["results"] for ruler in ("cm", "in")
        )
        assert {name: on_cm[name] for name in example.expected} == {name: on_inches[name] for name in example.expected}


@every_calculator
def test_its_words_are_plain_and_its_sources_known(calculator):
    method = site_method()
    for key in calculator.sources:
        source_named(key)
    words = [calculator.title, calculator.purpose, *(each.label for each in (*calculator.fields, *calculator.results))]
    sentences = [
        *(field.help for field in calculator.fields),
        *(result.meaning for result in calculator.results),
        calculator.purpose,
    ]
    assert all(sentence.endswith(".") for sentence in sentences)
    spoken = {word.strip(".,;:()“”").lower() for text in (*words, *sentences) for word in text.split()}
    assert not spoken & PROGRAMMERS_WORDS
    assert len({field.label for field in calculator.fields}) == len(calculator.fields)
    assert len({result.label for result in calculator.results}) == len(calculator.results)
    for field in calculator.fields:
        assert field.default is None or field.default in method.measures
        assert field.optional or field.default or field.fixed is not None, f"{field.name} has nothing to start from"


def typed(calculator, chance):
    """Anything that the kinds of a calculator's fields let through, near the house's numbers or far from them, some
    fields left alone."""
    fields = [field for field in calculator.fields if chance.random() < 0.5]
    near = {field.name: Asking({}).text(field) if chance.random() < 0.7 else "" for field in fields}
    return {field.name: chance.choice(field.kind.samples(chance, near[field.name])) for field in fields}


@every_calculator
@settings(max_examples=30, suppress_health_check=[HealthCheck.data_too_large, HealthCheck.too_slow])
@given(chance=st.randoms(use_true_random=False), ruler=st.sampled_from(["cm", "in"]))
def test_whatever_its_blanks_let_through_is_answered_or_asked_again(calculator, chance, ruler):
    asking = Asking(typed(calculator, chance), wanted_ruler=ruler)
    try:
        reply = answers_fully(calculator, asking, 12)
    except InvalidInput as error:
        sentences = refusals(error, calculator, asking)
        assert sentences and set(sentences) <= {field.name for field in calculator.fields}
        assert all(is_one_message(sentence) for sentence in sentences.values()), sentences
    else:
        if calculator.drawing:
            drawn = calculator.drawing(reply.drawn_from, asking.ruler)
            for picture in pictures_of(drawn):
                assert_is_drawn_on_its_sheet(picture.svg)


HAIRS = [Fraction(1, 10**power) for power in (4, 5, 6, 7, 8, 9)]  # [mm]
CORNER_WAYS = [{"way": way} for way in CONSTRUCTIONS]


@pytest.mark.parametrize(
    "calculator",
    [each for each in catalogue().values() if any(isinstance(field.kind, Length) for field in each.fields)],
    ids=lambda each: each.name,
)
@settings(max_examples=12, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data(), hair=st.sampled_from(HAIRS), longer=st.booleans())
def test_a_length_a_hair_off_nothing_or_off_another_length_is_answered_or_asked_again(calculator, data, hair, longer):
    """A turn of 0.0000001 mm is no turn, and one that much short of the hem is as deep as the hem."""
    fields = [field for field in calculator.fields if isinstance(field.kind, Length)]
    field = data.draw(st.sampled_from(fields))
    values = [
        Fraction(0),
        *(
            value
            for name, value in read(calculator, Asking({})).items()
            if value and name in {each.name for each in fields}
        ),
    ]
    value = data.draw(st.sampled_from(values)) + (hair if longer else -hair)
    ways = data.draw(st.sampled_from(CORNER_WAYS)) if "way" in {each.name for each in calculator.fields} else {}
    try:
        answers_fully(calculator, Asking({**ways, field.name: show_exactly(max(value, hair), "mm")}))
    except InvalidInput as error:
        assert error.sentences


def assert_is_drawn_on_its_sheet(svg: ET.Element) -> None:
    _, _, width, height = map(float, svg.get("viewBox").split())
    if "true-size" in svg.get("class"):
        assert svg.get("width").endswith("mm") and width < 800 and height < 1100  # a sheet of paper, in CSS pixels
    else:
        assert width == 360 and 60 < height < 900
    assert len(list(svg.iter())) < 4000
    for node in svg.iter():
        for pair in node.get("points", "").split():
            x, y = map(float, pair.split(","))
            assert -1 <= x <= width + 1 and -1 <= y <= height + 1, (node.tag, node.attrib)


@every_calculator
def test_each_blank_has_a_name_a_help_and_a_place_for_its_refusal(calculator):
    form = form_html(calculator, Asking({}), "here")
    ids = [node.get("id") for node in form.iter() if node.get("id")]
    assert len(set(ids)) == len(ids)
    for field in calculator.fields:
        assert {f"here-{field.name}", f"here-{field.name}-help", f"here-{field.name}-refusal"} <= set(ids)


def test_an_unknown_calculator_is_answered_with_those_there_are():
    with pytest.raises(KeyError, match="mitre-marks"):
        calculator_named("no-such")
    for calculator in catalogue().values():
        for field in calculator.fields:
            if isinstance(field.kind, Length):
                assert isinstance(field.kind.least, Fraction | int) and isinstance(field.kind.most, Fraction | int)
