"""The page fixture itself: it opens the site, and would notice a request that leaves it."""

from tests.same_origin import strangers


def test_the_home_page_opens(page):
    answer = page.goto("./")
    assert answer.ok
    assert page.get_by_role("heading", level=1).is_visible()


def test_a_request_to_elsewhere_is_noticed(browser, served):
    # Without the policy, which would stop the request before anybody could notice it.
    context = browser.new_context(base_url=f"{served}/", bypass_csp=True)
    asked_for = []
    context.on("request", lambda request: asked_for.append(request.url))
    page = context.new_page()
    page.goto("./")
    assert strangers(asked_for, served) == []
    page.evaluate("fetch('http://elsewhere.example/x').catch(() => 0)")
    context.close()
    assert strangers(asked_for, served) == ["http://elsewhere.example/x"]
