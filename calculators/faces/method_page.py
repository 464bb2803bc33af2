"""The page of the house method: the sheet as the site has it; with a script, the reader's own methods, to change and to compare."""

import xml.etree.ElementTree as ET

from calculators.faces.markup import element
from calculators.faces.method_sheet import sheet
from calculators.house_method import site_method


def method_page() -> ET.Element:
    """The whole page below its heading, complete with the site's own method."""
    method = site_method()
    return element("div", {"class": "house-method"}, element("div", {"class": "house-body"}, *sheet(method, method.ruler())))
