"""A job from the text it is kept as, and its walk with every number worked out anew."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from calculators.asking.answering import Asking, written
from calculators.asking.house_method import HouseMethod
from calculators.asking.site_method import site_method
from calculators.asking.usual_cloth import for_cloth
from calculators.batch.walk import WALKS, StepResult, Walk, stops
from calculators.catalogue import calculator_named
from calculators.documents.house_method.reading import read_within
from calculators.documents.job.format import migrated, normal
from calculators.documents.json_text import InvalidDocument, read_json, write_json
from calculators.documents.versions import Document
from calculators.values.measure import quote

LONGEST = 800_000  # [characters], with the method in it
UNNAMED = "A job without a name"


@dataclass(frozen=True)
class Job:
    """A job that can be worked on.

    document: as it is kept, each number with its unit. method: the house method it was made with. walk: the way it
    goes.
    typed: calculator name → field name → text, with its unit, as far as this handbook asks for it.
    messages: a sentence for everything in it that is not used here; it stays in the document as it stands.
    """

    document: Document
    method: HouseMethod
    walk: Walk
    typed: Mapping[str, Mapping[str, str]]
    messages: Mapping[str, str]

    @property
    def name(self) -> str:
        name: str = self.document["name"]
        return name

    def step_results(self, wanted_ruler: str = "") -> list[StepResult]:
        """Every step of the walk, worked out now with this job's numbers. wanted_ruler: as for HouseMethod.ruler."""
        return [*self.stops(wanted_ruler)]

    def stops(self, wanted_ruler: str = "") -> Iterator[StepResult]:
        """The same one after another, for who needs no more than the first of them."""
        method = for_cloth(self.method, self.document.get("cloth", ""))
        return stops(self.walk, self.typed, Asking({}, method=method, wanted_ruler=wanted_ruler))


@lru_cache(maxsize=64)
def read_job(text: str) -> Job:
    """The job kept as that text. Raises InvalidDocument with a sentence."""
    return opened(read_json(text, LONGEST))


def opened(data: object) -> Job:
    """The job that some data describes. Raises InvalidDocument with a sentence."""
    document = migrated(data)
    document = normal({**document, "name": document["name"].strip() or UNNAMED})
    messages: dict[str, str] = {}
    method = site_method()
    if "method" in document:
        document["method"], method, of_method = read_within(document["method"])
        messages |= {f"method.{path}": sentence for path, sentence in of_method.items()}
    walk = WALKS.get(document["walk"])
    if not walk:
        raise InvalidDocument(
            f"This job goes by a way of working, “{quote(document['walk'])}”, that this handbook does not have. It "
            "is left as it is."
        )
    typed = _with_units(_asked_here(document, walk, messages), _read_on(document, method), method)
    if "typed" in document:
        document["typed"] = {name: {**texts, **typed.get(name, {})} for name, texts in document["typed"].items()}
    return Job(document, method, walk, typed, messages)


def _read_on(document: Document, method: HouseMethod) -> str:
    """The ruler on which a bare number in the job is read, such as "cm 1/10"."""
    wanted = document.get("read_on", "")
    ruler = method.ruler(wanted if method.offers(wanted) else "")
    return f"{ruler.unit} {ruler.step}"


def written_down(document: Document) -> str:
    """The text a job is kept as: the same for the same job."""
    return write_json(document)


def _asked_here(document: Document, walk: Walk, messages: dict[str, str]) -> dict[str, dict[str, str]]:
    asked = {step.calculator: {field.name for field in calculator_named(step.calculator).fields} for step in walk.steps}
    kept: dict[str, dict[str, str]] = {}
    for calculator, texts in document.get("typed", {}).items():
        for name, text in texts.items():
            if name in asked.get(calculator, ()):
                kept.setdefault(calculator, {})[name] = text
            else:
                messages[f"typed.{calculator}.{name}"] = (
                    f"“{quote(text)}” was written under “{quote(name)}”, which is not asked here. It is kept, but "
                    "not used."
                )
    return kept


def _with_units(typed: dict[str, dict[str, str]], ruler: str, method: HouseMethod) -> dict[str, dict[str, str]]:
    return {
        name: {**texts, **written(calculator_named(name), Asking(texts, method=method, wanted_ruler=ruler))}
        for name, texts in typed.items()
    }
