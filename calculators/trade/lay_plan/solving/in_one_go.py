"""Work that pauses often, without its pauses."""

from collections.abc import Callable, Generator
from typing import ParamSpec, TypeVar

Asked = ParamSpec("Asked")
Found = TypeVar("Found")


def in_one_go(steps: Callable[Asked, Generator[object, None, Found]]) -> Callable[Asked, Found]:
    """What asks for the same, and gives at once what the work returns at its end."""

    def done(*args: Asked.args, **kwargs: Asked.kwargs) -> Found:
        working = steps(*args, **kwargs)
        while True:
            try:
                next(working)
            except StopIteration as end:
                found: Found = end.value
                return found

    return done
