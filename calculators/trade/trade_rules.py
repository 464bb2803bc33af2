"""The rules of the trade that pages, corner steps and tickets share: each stands once, and is told from here."""

from dataclasses import dataclass
from functools import cache
from importlib.resources import files

import yaml

PRACTICE = "practice"


@dataclass(frozen=True)
class Rule:
    """A rule of the trade.

    key: its name. brief: as a ticket and a step beside its drawing tell it.
    said: as a page tells it, in Markdown with markers. why: the reason, empty where it needs none.
    known: ``practice``, or keys of the bibliography.
    speaks_of: patterns; a sentence elsewhere that fits one of them says this rule in words of its own.
    """

    key: str
    brief: str
    said: str
    known: tuple[str, ...]
    speaks_of: tuple[str, ...]
    why: str = ""


@cache
def trade_rules() -> dict[str, Rule]:
    """All rules by key."""
    data = yaml.safe_load(files(__package__).joinpath("trade-rules.yaml").read_text(encoding="utf-8"))
    return {
        key: Rule(key, known=tuple(entry.pop("known")), speaks_of=tuple(entry.pop("speaks_of").splitlines()), **entry)
        for key, entry in data.items()
    }


def rule(key: str) -> Rule:
    """The rule of that key; raises KeyError naming it."""
    if key not in trade_rules():
        raise KeyError(f"There is no rule “{key}” in calculators/trade/trade-rules.yaml.")
    return trade_rules()[key]


def brief(key: str) -> str:
    """A rule as a ticket tells it."""
    return rule(key).brief
