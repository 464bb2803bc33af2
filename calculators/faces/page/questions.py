"""What questions of the browser have in common: whose method they are asked in, the ruler, and that no document makes
them fail."""

import re
from collections.abc import Callable, Iterator, Mapping
from typing import Any

from calculators.asking.answering import Asking
from calculators.asking.house_method import HouseMethod
from calculators.asking.site_method import site_method
from calculators.documents.house_method.reading import method_in_hand, read_method, written_down
from calculators.documents.json_text import InvalidDocument

#: A question as the page sends it, and what is sent back; both are JSON objects.
Request = Mapping[str, Any]
Reply = dict[str, Any]
#: What answers a question: with one reply, or step by step.
Question = Callable[[Request], Reply | Iterator[Reply]]
#: Between two steps of long work: others may be answered, and this one may be broken off.
WORKING: Reply = {"working": True}


def house(request: Request) -> HouseMethod:
    """The method a question is to be answered with: the one it carries, or the site's where that cannot be read."""
    try:
        return method_in_hand(request.get("method", ""))
    except InvalidDocument:
        return site_method()


def followed(request: Request) -> str:
    """The text of the method a question carries, written the one way; empty for the site's own or one that cannot be
    read."""
    try:
        return written_down(read_method(request["method"])[0]) if request.get("method") else ""
    except InvalidDocument:
        return ""


def ruler_wanted(request: Request) -> str:
    """The ruler a question asks for; one that does not exist, kept from a visit long ago, counts as none."""
    wanted = request.get("ruler", "")
    return wanted if site_method().offers(wanted) else ""


def asking_of(request: Request, typed: Mapping[str, str]) -> Asking:
    """The circumstances that a question carries, with what is typed into one calculator."""
    return Asking(dict(typed), method=house(request), wanted_ruler=ruler_wanted(request))


def measures_of(request: Request) -> dict[str, Asking]:
    """Every measure in hand that a question carries, by its name, as it was written."""
    return {
        name: asking_of({**request, "ruler": each["readOn"]}, {name: each["text"]})
        for name, each in request.get("measures", {}).items()
    }


def file_name(kind: str, name: str) -> str:
    """A name for a saved file, such as house-method-summer-linen.json."""
    return "-".join([kind, *re.findall(r"[a-z0-9]+", name.lower())])[:60] + ".json"


def careful(question: Question) -> Callable[[Request], Iterator[Reply]]:
    """A question whose last reply is a sentence where a document cannot be read; one that goes on in steps yields
    WORKING between them."""

    def asked(request: Request) -> Iterator[Reply]:
        try:
            found = question(request)
            if isinstance(found, dict):
                yield found
            else:
                yield from found
        except InvalidDocument as error:
            yield {"trouble": str(error)}

    return asked
