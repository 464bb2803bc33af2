"""However long a text is that was pasted into a blank, refusing it takes no longer than a look at each letter."""

from time import process_time

import pytest
from bs4 import BeautifulSoup

from calculators.asking.answering import Asking, read, written
from calculators.asking.declaration import InvalidInput
from calculators.asking.rows import LONGEST_TABLE
from calculators.catalogue import catalogue
from calculators.faces.page.form import form_html
from calculators.faces.page.markup import html
from calculators.values.kind import LONGEST_NUMBER
from tests.hostile_texts import MILLION, PARTS, filled
from tests.sentences import is_one_message

#: A field of every kind there is, each with its calculator.
KINDS = {
    (type(field.kind).__name__, repr(field.kind)): (calculator, field)
    for calculator in catalogue().values()
    for field in calculator.fields
}


def spent(act, *given) -> float:
    """The least of three runs, in time of this process alone [s]."""
    times = []
    for _ in range(3):
        begun = process_time()
        act(*given)
        times.append(process_time() - begun)
    return min(times)


def a_glance(text: str) -> float:
    """What looking at each letter once takes [s]."""
    return spent(lambda: [letter.isspace() for letter in text])


def at_a_glance(text: str, glance: float, act, *given) -> bool:
    """Whether something takes no longer than a glance at a text [s]; on a busy machine both are measured again, five
    times at most."""
    return spent(act, *given) <= glance or any(spent(act, *given) <= a_glance(text) for _ in range(5))


def refused(calculator, asking) -> dict[str, str]:
    try:
        read(calculator, asking)
    except InvalidInput as problem:
        return {name: str(each.values["sentence"]) for name, each in problem.sentences.items()}
    return {}


def read_and_written(calculator, asking) -> None:
    refused(calculator, asking)
    written(calculator, asking)


@pytest.mark.parametrize("part", PARTS, ids=repr)
def test_a_million_characters_are_refused_at_a_glance(part):
    texts = [filled("", part, "", MILLION), filled("1", part, "1", MILLION), filled('[["', part, '"]]', MILLION)]
    glance = a_glance(texts[0])
    for calculator, field in KINDS.values():
        for text in texts:
            asking = Asking(typed={field.name: text})
            begun = process_time()
            sentences = refused(calculator, asking)
            kept = written(calculator, asking)
            if process_time() - begun > glance:  # or the machine was busy
                assert at_a_glance(texts[0], glance, read_and_written, calculator, asking), (field.name, text[:20])
            assert not kept
            if text.strip() or not field.optional:
                assert is_one_message(sentences[field.name]) and len(sentences[field.name]) < 400


@pytest.mark.parametrize("part", PARTS, ids=repr)
def test_what_is_just_short_enough_for_a_table_takes_no_longer(part):
    texts = [
        filled(start, part, end, LONGEST_TABLE) for start, end in (("", ""), ("1", "1"), ('[["', '"]]'), ("[", "]"))
    ]
    tables = [(calculator, field) for calculator, field in KINDS.values() if field.kind.control == "rows"]
    assert tables
    glance = a_glance("x" * MILLION)
    for calculator, field in tables:
        for text in texts:
            asking = Asking(typed={field.name: text})
            assert at_a_glance("x" * MILLION, glance, read_and_written, calculator, asking), (field.name, text[:20])


@pytest.mark.parametrize("calculator", catalogue().values(), ids=lambda calculator: calculator.name)
def test_a_line_takes_more_than_any_number_has_and_no_book(calculator):
    """So that what was pasted is refused rather than cut to something else."""
    form = BeautifulSoup(html(form_html(calculator, Asking(typed={}), "here")), "html.parser")
    for line in form.select("input[type=text], textarea"):
        assert LONGEST_NUMBER < int(line["maxlength"]) <= 400
