"""What is done to the built pages, as steps of the build."""

from scripts.after_pages import fewer_requests, join_scripts, offline, policy, search_parts
from scripts.runtime import bundle
from scripts.runtime.steps import BUNDLE
from scripts.tools.places import SITE
from scripts.tools.steps import Step


def after_pages(address: str) -> list[Step]:
    """In this order: the service worker comes last, since it knows the hash of every file."""
    reads = ["build/runtime", "scripts/runtime", "scripts/after_pages", "scripts/tools"]
    return [
        *join_scripts.after_pages,
        *search_parts.after_pages,
        *fewer_requests.after_pages,
        Step("Python in the site", lambda: bundle.put_into(SITE, BUNDLE), reads, makes=["site/assets/runtime"]),
        Step("policy in the pages", lambda: policy.put_into(SITE), reads),
        Step("offline copy", lambda: offline.put_service_worker_into(SITE, address), reads, makes=["site/sw.js"]),
    ]
