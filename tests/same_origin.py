"""The rule that every page keeps: nothing is asked of any other site."""


def strangers(addresses: list[str], home: str) -> list[str]:
    """Those addresses that lie neither on the served site nor inside the page itself."""
    inside = (home + "/", "data:", f"blob:{home}/", "about:")
    return [address for address in addresses if not address.startswith(inside)]
