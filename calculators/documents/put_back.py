"""What was typed last and may not have been kept, put back into its document: only where nothing newer stands."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Any, Protocol

from calculators.documents.versions import Document
from calculators.values.kind import InvalidValue


@dataclass(frozen=True)
class Draft:
    """What was typed into one blank since its document was last kept.

    path: of the entry. texts: one after another; all but the last may have been kept.
    ruler: on which bare numbers among them are read. base: the document as it stood then; None where it is not known.
    """

    path: str
    texts: tuple[str, ...]
    ruler: str
    base: Document | None


class Form(Protocol):
    """How a document of some kind is filled in, entry by entry."""

    def changed(self, document: Document, path: str, text: str, ruler: str) -> Document:
        """The document with a text in one blank. Raises InvalidValue with a sentence."""

    def at(self, document: Document, path: str) -> Any:
        """What the document has there."""

    def moved(self, path: str, base: Document, now: Document) -> str | None:
        """The path of the same entry in a later state; None where it is gone."""

    def label(self, path: str, document: Document) -> str:
        """What the entry is called."""

    def words(self, value: Any) -> str:
        """What stands at an entry, in words."""


@dataclass(frozen=True)
class PutBack:
    """What came of it.

    document: with what was put back. paths: of what was put back, or now stands in its blank refused.
    refused: path → the text, and the sentence that says why.
    overtaken: path → its label, and what was typed there: something newer stands in its place.
    """

    document: Document
    paths: list[str] = field(default_factory=list)
    refused: dict[str, dict[str, str]] = field(default_factory=dict)
    overtaken: dict[str, tuple[str, str]] = field(default_factory=dict)

    @property
    def said(self) -> str:
        """One sentence for the maker, empty when all had been kept."""
        done = "ticked" if all(path.startswith("ticks.") for path in self.paths) else "typed"
        return f"What you {done} last was restored." if self.paths else ""

    @property
    def told(self) -> str:
        """One sentence of what was not put back, empty when all was."""
        listed = "; ".join(f"{label} “{typed or 'nothing'}”" for label, typed in self.overtaken.values())
        return f"Not put back, since something newer stands there: {listed}." if listed else ""

    def reply(self) -> dict[str, Any]:
        """What a page is told of it."""
        return {
            "refused": self.refused,
            "said": self.said,
            "overtaken": {"paths": [*self.overtaken], "said": self.told},
        }


def put_back(now: Document, drafts: Iterable[Draft], form: Form) -> PutBack:
    """A document as it is kept now, with what was typed last.

    An entry counts as newer when it has changed since the typing to anything but one of the texts typed.
    """
    done = PutBack(now)
    for draft in drafts:
        try:
            done = _with(draft, now, done, form)
        except (LookupError, StopIteration, TypeError, ValueError):  # typed where an edition now gone had a blank
            done = replace(done, overtaken=done.overtaken | {draft.path: (draft.path, draft.texts[-1])})
    return done


def _with(draft: Draft, now: Document, done: PutBack, form: Form) -> PutBack:
    base = now if draft.base is None else draft.base
    stood, sentence = _stood(draft, base, form)
    path = form.moved(draft.path, base, now)
    current = form.at(now, path) if path else None
    if path and current == stood[-1] and not sentence:
        return done  # it was kept
    if not path or current not in stood or draft.base is None:
        typed = draft.texts[-1] if sentence else form.words(stood[-1])
        return replace(done, overtaken=done.overtaken | {draft.path: (form.label(draft.path, base), typed)})
    document = done.document
    for text in draft.texts[_last(stood, current) :] or draft.texts[-1:]:
        try:
            document, sentence = form.changed(document, path, text, draft.ruler), ""
        except InvalidValue as error:
            sentence = str(error)
    refused = {path: {"text": draft.texts[-1], "sentence": sentence}} if sentence else {}
    return replace(done, document=document, paths=[*done.paths, path], refused=done.refused | refused)


def _stood(draft: Draft, document: Document, form: Form) -> tuple[list[Any], str]:
    """What stood at the entry before each text and after the last; why the last could not be taken, else empty."""
    stood, sentence = [form.at(document, draft.path)], ""
    for text in draft.texts:
        try:
            document, sentence = form.changed(document, draft.path, text, draft.ruler), ""
        except InvalidValue as error:
            sentence = str(error)
        stood.append(form.at(document, draft.path))
    return stood, sentence


def _last(stood: list[Any], current: Any) -> int:
    return max(index for index, each in enumerate(stood) if each == current)
