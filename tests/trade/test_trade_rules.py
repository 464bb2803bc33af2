"""The rules of the trade stand once: nothing else says them in words of its own, and no two sentences of the handbook
nearly say the same."""

import math
import re
from collections import Counter, defaultdict
from collections.abc import Iterable, Iterator
from fractions import Fraction

import pytest

from calculators.asking.bibliography import bibliography
from calculators.trade.corners.constructions import CONSTRUCTIONS, Measures
from calculators.trade.sections.edge import EdgeMeasures
from calculators.trade.sections.edges import EDGES
from calculators.trade.trade_rules import PRACTICE, rule, trade_rules
from scripts.pages.markers import RULE, PageMarkers, UnknownMarker, with_rules
from tests.pages.test_page_numbers import bare_numbers
from tests.pages.told_words import PAGES, SOURCES, sentences, told

RULES = pytest.mark.parametrize("each", trade_rules().values(), ids=lambda each: each.key)


def own_words(sentence: str) -> list[str]:
    """The rules that a sentence from elsewhere says in words of its own."""
    plain = sentence.replace("’", "'")
    return [
        each.key
        for each in trade_rules().values()
        if any(re.search(pattern.replace("’", "'"), plain, re.IGNORECASE) for pattern in each.speaks_of)
    ]


def told_sentences() -> Iterator[tuple[str, str]]:
    """(where, sentence) of all that is told outside the table of rules."""
    for where, text in told():
        yield from ((where, each) for each in sentences(text))


def test_nothing_says_a_rule_in_words_of_its_own():
    assert [(where, each, own_words(each)) for where, each in told_sentences() if own_words(each)] == []


@RULES
def test_a_rule_said_in_other_words_would_be_noticed(each):
    """Each pattern finds what it is for in the rule's own words, or stands for words that the rule replaced."""
    assert each.key in own_words(f"{each.brief} {each.said} {each.why}")


@RULES
def test_a_rule_is_told_with_its_source_and_no_bare_number(each):
    assert each.known and all(source == PRACTICE or source in bibliography() for source in each.known)
    assert each.brief.endswith(".") and each.said.strip().rstrip("*").endswith((".", "}}"))
    assert bare_numbers(each.said) == [] == bare_numbers(each.why)
    for how in ("", " brief", " said"):
        PageMarkers(home="").take_out(f"{{{{ rule {each.key}{how} }}}}")


@RULES
def test_a_rule_is_used(each):
    used = {key for page in PAGES for key, _ in RULE.findall(page.read_text("utf-8"))}
    assert each.key in used or any(re.search(rf'"{each.key}"', path.read_text("utf-8")) for path in SOURCES)


def begins_a_row(steps: str) -> bool:
    """Whether a list of steps tells where a row of machine stitches begins or how it is fastened."""
    return bool(re.search(r"rule (?:begin|fasten)\b", steps))


@pytest.mark.parametrize("page", PAGES, ids=lambda page: page.stem)
def test_steps_that_begin_a_row_of_stitches_say_to_hold_the_threads(page):
    lists = re.findall(r"(?m)(?:^1?\d\. .*\n(?:^ {3}.*\n)*)+", page.read_text("utf-8"))
    assert [each for each in lists if begins_a_row(each) and "rule start-seam" not in each] == []
    assert page.stem != "edge-stitch" or any(map(begins_a_row, lists))


@pytest.mark.parametrize("name", EDGES)
def test_steps_of_an_edge_that_fasten_a_row_of_stitches_say_to_hold_the_threads(name):
    steps = EDGES[name].steps(EdgeMeasures(Fraction(10), Fraction(20), Fraction(2), Fraction(10)))
    fastened = [set(step.rules) for step in steps if "fasten" in step.rules]
    assert all("start-seam" in rules for rules in fastened)
    assert fastened or not EDGES[name].seamed


@pytest.mark.parametrize("way", CONSTRUCTIONS)
def test_corner_steps_that_fasten_a_row_of_stitches_say_to_hold_the_threads(way):
    steps = CONSTRUCTIONS[way].steps(Measures(20.0, 20.0, 90.0, 8.0))
    assert [step.name for step in steps if "fasten" in step.rules and "start-seam" not in step.rules] == []
    assert way != "mitre" or any("fasten" in step.rules for step in steps)


def test_a_page_writes_a_rule_out_with_its_mark():
    assert with_rules("1. {{ rule milder }}") == f"1. {rule('milder').said} {{{{ cite ginetex }}}}"
    assert with_rules("{{ rule cool }}").endswith("{{ practice }}") and not with_rules("{{ rule cool said }}").endswith(
        "}}"
    )
    assert with_rules("{{ rule cool brief }}") == rule("cool").brief


def test_a_rule_that_is_not_there_stops_the_build():
    with pytest.raises(UnknownMarker, match="no rule"):
        with_rules("{{ rule hearsay }}")


#: Sentences about forms, files and faults of a fold, parallel on purpose.
NOT_THE_TRADE = re.compile(
    r"docs/(?:reference|house)/|calculators/(?!ticket/(?:steps|care)|trade/corners/|asking/house-method)"
)
SMALL = frozenset(
    [
        "a",
        "an",
        "the",
        "and",
        "or",
        "of",
        "to",
        "in",
        "on",
        "at",
        "it",
        "is",
        "are",
        "be",
        "as",
        "by",
        "with",
        "for",
        "from",
        "that",
        "this",
        "so",
        "if",
        "then",
        "not",
        "no",
        "its",
        "you",
        "your",
        "one",
        "each",
        "they",
        "them",
        "was",
        "were",
        "has",
        "have",
    ]
)
ALIKE, FEWEST = 0.78, 4


def stems(sentence: str) -> list[str]:
    """The words of a sentence that carry it, without their endings."""
    return [
        re.sub(r"(?<=\w{3})(?:ing|ed|es|s)$", "", word)
        for word in re.findall(r"[a-z’]+", sentence.lower())
        if word not in SMALL
    ]


def nearly_said_twice(said: Iterable[tuple[str, str]]) -> list[tuple[float, str, str]]:
    """Pairs of sentences that nearly say the same, by the words they share, rare ones counting most.

    The very same sentence in two places is no pair: if one of the two is changed, it becomes one.
    """
    known = {
        re.sub(r"\W+", " ", each.lower()).strip(): (where, each)
        for where, each in said
        if len(set(stems(each))) >= FEWEST
    }
    counted = [(where, each, Counter(stems(each))) for where, each in known.values()]
    often = Counter(word for *_, words in counted for word in words)
    lines, pairs, having = [], [], defaultdict(list)
    for number, (where, each, words) in enumerate(counted):
        weights = {word: times * (1 + math.log(len(counted) / often[word])) for word, times in words.items()}
        length = math.sqrt(sum(weight**2 for weight in weights.values()))
        shared: dict[int, float] = defaultdict(float)
        for word, weight in weights.items():
            for earlier, its_weight in having[word]:
                shared[earlier] += weight / length * its_weight
            having[word].append((number, weight / length))
        lines.append(f"{where}: {each}")
        pairs += [
            (round(share, 2), lines[earlier], lines[number]) for earlier, share in shared.items() if share > ALIKE
        ]
    return sorted(pairs, reverse=True)


def test_no_step_or_caution_is_said_twice_in_different_words():
    """Pages, steps and the rules themselves, each of which stands once in the table."""
    trade = ((where, sentence) for where, sentence in told_sentences() if not NOT_THE_TRADE.match(where))
    steps = ((where, sentence) for where, sentence in trade if where.startswith("docs/") or sentence.endswith("."))
    rules = (
        (f"rule {each.key}", sentence)
        for each in trade_rules().values()
        for sentence in sentences(f"{each.said} {each.why}")
    )
    assert nearly_said_twice([*steps, *rules]) == []


def test_a_caution_said_twice_in_different_words_would_be_noticed():
    steps = [
        ("a ticket", "Stand the iron on its heel and keep the fingers out of the steam."),
        ("a page", "Keep fingers out of the steam, and stand the iron on its heel."),
        ("a page", "Mark along the selvedge before you cut."),
    ]
    assert [pair[1:] for pair in nearly_said_twice(steps)] == [
        (f"{steps[0][0]}: {steps[0][1]}", f"{steps[1][0]}: {steps[1][1]}")
    ]
    assert nearly_said_twice([steps[0], ("another page", steps[0][1])]) == []
