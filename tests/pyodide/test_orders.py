"""Orders of several articles are planned and costed alike in CPython and in the browser's Python."""

import json

from calculators.faces.browser import replies
from tests.orders import random_orders


def test_random_orders(in_pyodide):
    for typed in random_orders(seed=3):
        for ask in ("calculator", "plain"):
            request = {"ask": ask, "calculator": "whole-order", "given": {}, "typed": typed, "ruler": ""}
            assert in_pyodide(request) == [json.loads(text) for text in replies(json.dumps(request))], typed
