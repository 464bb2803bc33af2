"""Answers that a test can order: plain ones, slow ones, broken ones."""

import json
import random
import time
from collections.abc import Iterator
from fractions import Fraction

import yaml


def replies(request: str) -> Iterator[str]:
    """Do as asked, in steps."""
    asked = json.loads(request)
    return (json.dumps(reply) for reply in globals()[asked.pop("do")](**asked))


def add(a: str, b: str) -> Iterator[dict]:
    yield {"final": True, "sum": str(Fraction(a) + Fraction(b)), "read": yaml.safe_load("depth: 25")["depth"]}


def improve(steps: int, seconds: float = 0.005) -> Iterator[dict]:
    for step in range(steps):
        until = time.perf_counter() + seconds
        while time.perf_counter() < until:
            pass
        yield {"final": step == steps - 1, "step": step}


def chance() -> Iterator[dict]:
    yield {"final": True, "random": random.random()}


def order() -> Iterator[dict]:
    yield {"final": True, "order": list({"warp", "weft", "bias", "selvedge", "grain"})}


def grow(mebibytes: int) -> Iterator[dict]:
    kept = bytearray(mebibytes << 20)
    yield {"final": True, "kept": len(kept)}


def never_end() -> Iterator[dict]:
    while True:
        pass
    yield {}


def fail() -> Iterator[dict]:
    raise ValueError("no such hem")
    yield {}


def forget_to_finish() -> Iterator[dict]:
    yield {"final": False}


def lack() -> Iterator[dict]:
    import quopri  # in the library, but nobody imported it before the snapshot was taken

    yield {"final": True, "found": quopri.__name__}


def lack_altogether() -> Iterator[dict]:
    import not_to_be_found_anywhere  # noqa: F401 - only that it cannot be found matters

    yield {}
