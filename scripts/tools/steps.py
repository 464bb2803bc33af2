"""A build as a list of steps, each run only when something that it reads has changed."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from scripts.tools.stamps import Stamp, fingerprint, fingerprint_of_files


@dataclass(frozen=True)
class Step:
    """One step of the build.

    Parameters: name, a word for the person watching; run, does the work; reads, the files and folders (from the
    root) whose contents decide whether it must be done again; makes, the files and folders that must be there
    afterwards; settings, other values that decide, such as the address of the site.
    """

    name: str
    run: Callable[[], None]
    reads: Sequence[str]
    makes: Sequence[str] = ()
    settings: Sequence[str] = ()

    def key(self, root: Path) -> str:
        return fingerprint(self.name, fingerprint_of_files(root, self.reads), *self.settings)

    def is_done(self, root: Path, stamp: Stamp) -> bool:
        return stamp.matches(self.key(root)) and all((root / made).exists() for made in self.makes)


def run_steps(steps: Sequence[Step], root: Path, stamps: Path) -> list[str]:
    """Run the steps in order, from the first that is not up to date: each may build on the ones before it.

    Returns: the names of the steps that were run.
    """
    stamp = {step.name: Stamp(stamps / step.name.replace(" ", "-")) for step in steps}
    stale = next((i for i, step in enumerate(steps) if not step.is_done(root, stamp[step.name])), len(steps))
    to_run = steps[stale:]
    # All at once, so that a build broken off between two steps still knows that the later ones are to be done.
    for step in to_run:
        stamp[step.name].lift()
    for step in to_run:
        print(f"Building: {step.name}", flush=True)
        key = step.key(root)
        step.run()
        stamp[step.name].press(key)
    return [step.name for step in to_run]
