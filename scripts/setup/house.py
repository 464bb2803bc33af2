"""Check a studio's house method and lay it ready for the build; run by serve.py, inside .venv.

    .venv/bin/python scripts/setup/house.py FILE FOLDER

FOLDER then holds what stands in `calculators/asking` in the studio's handbook. A file that cannot be built with leaves
it as it was, and is told of in one sentence.
"""

import shutil
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from calculators.asking import site_method
from calculators.documents.house_method.sites_own import sites_own
from calculators.documents.json_text import InvalidDocument, write_json
from scripts.tools.command_error import CommandError, run_main, why


def main() -> int:
    file, folder = map(Path, sys.argv[1:])
    try:
        own = sites_own(file.read_text(encoding="utf-8-sig"))
    except UnicodeDecodeError:
        raise CommandError("It is not a text file: choose a method saved on the page House method.") from None
    except OSError as problem:
        raise CommandError(f"It cannot be read ({why(problem)}).") from None
    except InvalidDocument as problem:
        raise CommandError(str(problem)) from None
    shutil.rmtree(folder, ignore_errors=True)
    folder.mkdir(parents=True)
    packaged = site_method.place().joinpath(site_method.PACKAGED).read_bytes()
    (folder / site_method.PACKAGED).write_bytes(packaged)
    (folder / site_method.SITES_OWN).write_text(write_json(own), encoding="utf-8")
    return 0


if __name__ == "__main__":
    run_main(main)
