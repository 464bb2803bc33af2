"""Small libraries from npm that the pages' scripts import, copied into the site as they come."""

import shutil

from tools.places import NODE_MODULES, SITE
from tools.steps import Step

SCRIPTS = SITE / "assets/javascript"
#: Where each lies in node_modules → its name beside our own scripts.
FILES = {"idb/build/index.js": "idb.js", "uqr/dist/index.mjs": "uqr.js"}


def copy_files() -> None:
    for source, name in FILES.items():
        shutil.copyfile(NODE_MODULES / source, SCRIPTS / name)


after_pages = [Step("libraries from npm", copy_files, reads=["package-lock.json", "scripts/npm_files.py"], makes=[f"site/assets/javascript/{name}" for name in FILES.values()])]
