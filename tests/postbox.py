"""The inbox's pages as a browser uses them: files dropped, finds decided on."""

import io

from bs4 import BeautifulSoup

import hostile
from fieldid.guides.load import load
from fieldid.inbox.choice import chosen
from make import PLOVER

SCRIPT = "<script>alert(1)</script>"
READ = {"rings": "green-ivory", "pad": 6.1, "stamp": "A017"}


def plover(items=None, **changes):
    """A kept find under the small guide."""
    items = items or [{"member": "4", "readings": READ, "gone": []}]
    find = {"format": 1, "guide": "plover", "items": items}
    return hostile.entry(**{"find": find} | changes)


def drop(browser, *files):
    """The answer to files that were dropped, each a name and its bytes."""
    data = {
        "csrf_token": browser.token(),
        "files": [(io.BytesIO(content), name) for name, content in files],
    }
    answer = browser.post("/inbox", data=data, content_type="multipart/form-data")
    # A large form is kept in a file, which the test client leaves open.
    answer.request.environ["wsgi.input"].close()
    return answer


def page(answer):
    return BeautifulSoup(answer.text, "html.parser")


def became(answer):
    """What was said of each file."""
    return [
        " ".join(each.get_text(" ", strip=True).split())
        for each in page(answer).select(".became")
    ]


def problems(answer):
    return {a["href"]: a.text for a in page(answer).select(".problems a")}


def accept(browser, number=1, **changes):
    fields = {
        "accept-years": "1952",
        "accept-how": "receipt",
        "accept-note": "of May 1953",
        "accept-name": "Iron from the fair",
    } | {f"accept-{name}": value for name, value in changes.items()}
    return browser.post(
        f"/inbox/{number}/accept", data={"csrf_token": browser.token(), **fields}
    )


def refuse(browser, number=1, reason="too dark"):
    fields = {"csrf_token": browser.token(), "refuse-reason": reason}
    return browser.post(f"/inbox/{number}/refuse", data=fields)


def undo(browser, number=1):
    return browser.post(
        f"/inbox/decisions/{number}/undo", data={"csrf_token": browser.token()}
    )


def chosen_numbers(inbox, census):
    guide = load(census.with_name(PLOVER.name))
    return [each.number for each in chosen(inbox, guide)]
