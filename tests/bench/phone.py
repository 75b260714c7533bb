"""The arithmetic in Chromium with the processor slowed four times.

One judge with the full ranking, six readings on the guide; for a set of ten, with
readings that differ, after an answer on one of them.
"""

from fieldid.paths import STATIC
from pocket import GUIDE, chromium, page_of, served, slow, spread
from report import Record

SLOWED = 4
READINGS = [
    ["toe-outline", "round"],
    ["sole-numerals", "plain"],
    ["face-scoring", "dotted"],
    ["pad", 6.1],
    ["collar-shape", "straight"],
    ["hosel-code", "C72?"],
]
ARITHMETIC = """async ([base, guide, readings, often]) => {
  const engine = await import(new URL("bench/engine/index.js", location));
  const packed = await (await fetch(base + `guides/${guide}.json`)).json();
  const tables = engine.prepare(engine.unpack(packed));
  const find = { guide, items: [{ readings, gone: [], member: null }], claim: null };
  const times = [];
  for (let i = 0; i < 50 + often; i++) {
    const start = performance.now();
    engine.judge(tables, find);
    times.push(performance.now() - start);
  }
  return times.slice(50);
}"""
MEMBERS = "23456789WS"
SET = """async ([base, guide, items, often]) => {
  const engine = await import(new URL("bench/engine/index.js", location));
  const packed = await (await fetch(base + `guides/${guide}.json`)).json();
  const tables = engine.prepare(engine.unpack(packed));
  const once = [], anew = [];
  for (let i = 0; i < 10 + often; i++) {
    const fresh = structuredClone(items);
    const changed = fresh.with(i % 10, structuredClone(fresh[i % 10]));
    for (const [all, times] of [[fresh, once], [changed, anew]]) {
      const start = performance.now();
      engine.judge(tables, { guide, items: all, claim: null });
      times.push(performance.now() - start);
    }
  }
  return [anew.slice(10), once.slice(10)];
}"""


def measure(*, quick: bool) -> list[Record]:
    """Median and worst of each."""
    often = 10 if quick else 100
    # A worker would answer for the engine's own modules.
    with served([GUIDE]) as server, chromium() as browser:
        page = page_of(browser, service_workers="block")
        page.goto(server.url)
        slow(page, SLOWED)
        page.route("**/bench/engine/*.js", _engine)
        base = page.evaluate("document.body.dataset.base")
        one = page.evaluate(ARITHMETIC, [base, GUIDE, READINGS, often])
        anew, once = page.evaluate(SET, [base, GUIDE, ten(), often // 2])
    return [
        *spread("judge and rank", one),
        *spread("set of ten, one member changed", anew),
        *spread("set of ten, for the first time", once),
    ]


def ten() -> list[dict]:
    """A set of which every member has been read differently far."""
    return [
        {
            "member": member,
            "gone": [],
            "readings": [r for j, r in enumerate(READINGS) if (i + j) % 3],
        }
        for i, member in enumerate(MEMBERS)
    ]


def _engine(route) -> None:
    """The engine's modules by themselves, which the bundle has in its one script."""
    name = route.request.url.rpartition("/")[2]
    route.fulfill(path=STATIC / "phone" / "engine" / name)
