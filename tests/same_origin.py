"""The rule that every page keeps: nothing is asked of any other site."""

from urllib.parse import urlsplit


def strangers(addresses: list[str], home: str) -> list[str]:
    """Those addresses that lie neither on the served site nor inside the page itself."""
    origin = "{0.scheme}://{0.netloc}".format(urlsplit(home))
    inside = (home + "/", "data:", f"blob:{origin}/", "about:")
    return [address for address in addresses if not address.startswith(inside)]
