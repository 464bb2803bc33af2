"""Every made-up article of the handbook. A file in this folder that sets ARTICLE is found by itself."""

import pkgutil
from functools import cache
from importlib import import_module

from calculators.articles.article import Article


@cache
def articles() -> dict[str, Article]:
    """All articles by name, in alphabetical order."""
    modules = (import_module(f"{__name__}.{found.name}") for found in pkgutil.iter_modules(__path__))
    found = [module.ARTICLE for module in modules if hasattr(module, "ARTICLE")]
    return {article.name: article for article in sorted(found, key=lambda each: each.name)}
