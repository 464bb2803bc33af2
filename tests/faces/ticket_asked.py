"""What a browser asks about the work ticket, for the tests of what it is answered."""

import json

from calculators.faces.browser import replies

NASTY = '<img src=x onerror="alert(1)">'
LOOSE = {"kind": "loose", "kept": "", "typed": {}, "read_on": "", "home": "../../"}


def ask(question, **more):
    *_, last = replies(json.dumps({"ask": question, **LOOSE, **more}))
    return json.loads(last)
