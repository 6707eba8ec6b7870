"""A page in Chromium that has loaded an engine's module and nothing else."""

from contextlib import contextmanager

ADDRESS = "http://engine.invalid/"  # answered right here, nothing goes out


@contextmanager
def engine_page(browser, module):
    """A page whose `window.engine` is the module of this text."""
    context = browser.new_context()
    page = context.new_page()

    def answer(route):
        if route.request.url.endswith(".js"):
            route.fulfill(body=module, content_type="text/javascript")
        else:
            route.fulfill(body="<!doctype html>", content_type="text/html")

    page.route("**/*", answer)
    page.goto(ADDRESS)
    page.evaluate("async () => { window.engine = await import('/engine.js'); }")
    yield page
    context.close()
