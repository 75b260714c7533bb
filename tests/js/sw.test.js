import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { bundle, origin, page, SCOPE, worker } from "./worker.js";

const A = bundle("aaa");
const B = bundle("bbb", { "v/bbb/b.js": "b changed" });
const NAME = (build) => `fieldid:${SCOPE}:${build}`;

/** An origin on which build A is installed and in use. */
async function installed() {
  const world = origin();
  world.serve(A);
  const first = worker(world, A);
  await first.install();
  await first.activate();
  return { world, first };
}

const text = async (answer) => (await answer)?.text();

test("install keeps every file", async () => {
  const { world } = await installed();
  assert.deepEqual([...world.stores.get(NAME("aaa")).keys()].sort(), [
    SCOPE,
    `${SCOPE}v/aaa/a.js`,
    `${SCOPE}v/aaa/b.js`,
  ]);
});

test("every fetch is fresh, checked and not redirected", async () => {
  const { world } = await installed();
  assert.equal(world.asked.length, 3);
  for (const asked of world.asked) {
    assert.equal(asked.cache, "reload");
    assert.equal(asked.redirect, "error");
    assert.equal(asked.credentials, "same-origin");
    assert.match(asked.integrity, /^sha256-/);
  }
});

for (const [what, served] of [
  ["a file with another byte", "x"],
  ["a missing file", undefined],
  ["a broken line", null],
]) {
  test(`${what} fails the whole install`, async () => {
    const { world, first } = await installed();
    world.serve(B);
    world.served.set(`${SCOPE}v/bbb/b.js`, served);
    await assert.rejects(worker(world, B, { active: {} }).install());
    assert.deepEqual(world.names(), [NAME("aaa")]);
    assert.equal(await text(first.ask("./", { mode: "navigate" })), "page aaa");
  });
}

test("what is the same is taken from the build before", async () => {
  const { world } = await installed();
  world.serve(B);
  world.asked.length = 0;
  await worker(world, B, { active: {} }).install();
  assert.deepEqual(
    world.asked.map(({ url }) => url).sort(),
    [SCOPE, `${SCOPE}v/bbb/b.js`],
  );
});

test("a reused script forgets its old address", async () => {
  // Or its imports would be looked up beside the old build.
  const { world } = await installed();
  world.serve(B);
  await worker(world, B, { active: {} }).install();
  assert.equal(world.stores.get(NAME("bbb")).get(`${SCOPE}v/bbb/a.js`).url, "");
});

test("a kept file that was damaged is not reused", async () => {
  const { world } = await installed();
  world.stores.get(NAME("aaa")).set(`${SCOPE}v/aaa/a.js`, { body: new ArrayBuffer(3), url: "" });
  world.serve(B);
  const next = worker(world, B, { active: {} });
  await next.install();
  assert.deepEqual((await next.tell("verify")).missing, []);
});

test("install never takes over", async () => {
  const { first } = await installed();
  assert.ok(!first.did.includes("skipWaiting"));
});

test("a page takes over by asking", async () => {
  const { first } = await installed();
  await first.tell("take-over");
  assert.ok(first.did.includes("skipWaiting"));
});

test("only the first worker claims pages", async () => {
  const { world, first } = await installed();
  assert.deepEqual(first.did, ["claim"]);
  world.serve(B);
  const next = worker(world, B, { active: {} });
  await next.install();
  await next.activate();
  assert.deepEqual(next.did, []);
});

test("kept files are answered without a signal", async () => {
  const { world, first } = await installed();
  world.served.clear();
  assert.equal(await text(first.ask("./", { mode: "navigate" })), "page aaa");
  assert.equal(await text(first.ask("./?from=home", { mode: "navigate" })), "page aaa");
  assert.equal(await text(first.ask("v/aaa/b.js")), "b");
});

test("an unknown page leads home", async () => {
  const { first } = await installed();
  const answer = await first.ask("some/where", { mode: "navigate" });
  assert.equal(answer.status, 302);
  assert.equal(answer.headers.get("Location"), SCOPE);
});

test("an old page gets its own files", async () => {
  const { world } = await installed();
  world.serve(B);
  const next = worker(world, B, { active: {}, pages: [page("aaa")] });
  await next.install();
  await next.activate();
  world.served.clear();
  assert.equal(await text(next.ask("v/aaa/b.js")), "b");
  assert.equal(await text(next.ask("v/bbb/b.js")), "b changed");
});

for (const [path, options] of [
  ["judge", { mode: "navigate" }],
  ["judge?a", { mode: "navigate" }],
  ["workbench/", { mode: "navigate" }],
  ["workbench/photos/1", {}],
  ["./", { method: "POST", mode: "navigate" }],
  ["https://host.example/other/", { mode: "navigate" }],
  ["https://else.example/", {}],
]) {
  test(`${options.method ?? "GET"} ${path} is left to the network`, async () => {
    const { first } = await installed();
    assert.equal(await first.ask(path, options), undefined);
  });
}

test("what the network answers is never kept", async () => {
  const { world, first } = await installed();
  world.served.set(`${SCOPE}extra.txt`, "extra");
  assert.equal(await text(first.ask("extra.txt")), "extra");
  world.served.clear();
  assert.equal((await first.ask("extra.txt")).status, 404);
});

test("an older build goes when no page needs it", async () => {
  const { world } = await installed();
  world.serve(B);
  const next = worker(world, B, { active: {}, pages: [page("bbb")] });
  await next.install();
  await next.activate();
  assert.deepEqual(world.names(), [NAME("bbb")]);
});

for (const [what, open] of [
  ["that came from it", page("aaa")],
  ["that does not answer", page(null)],
]) {
  test(`an older build stays for a page ${what}`, async () => {
    const { world } = await installed();
    world.serve(B);
    const next = worker(world, B, { active: {}, pages: [page("bbb"), open] });
    await next.install();
    await next.activate();
    assert.deepEqual(world.names(), [NAME("aaa"), NAME("bbb")]);
  });
}

test("a page of another app has no say", async () => {
  const { world } = await installed();
  world.serve(B);
  const pages = [page(null, "https://host.example/other/")];
  const next = worker(world, B, { active: {}, pages });
  await next.install();
  await next.activate();
  assert.deepEqual(world.names(), [NAME("bbb")]);
});

test("a build that waits is not tidied away", async () => {
  const { world, first } = await installed();
  world.serve(B);
  await worker(world, B, { active: {} }).install();
  first.registration.waiting = {};
  await first.tell("verify");
  assert.deepEqual(world.names(), [NAME("aaa"), NAME("bbb")]);
});

test("caches of others are never touched", async () => {
  const { world } = await installed();
  const others = ["other-app", `fieldid:${SCOPE}deeper/:aaa`, "fieldid:https://host.example/:aaa"];
  for (const name of others) world.stores.set(name, new Map());
  world.serve(B);
  const next = worker(world, B, { active: {} });
  await next.install();
  await next.activate();
  assert.deepEqual(world.names(), [...others, NAME("bbb")]);
});

test("verify reads every byte again", async () => {
  const { world, first } = await installed();
  assert.deepEqual(await first.tell("verify"), { build: "aaa", files: 3, missing: [] });
  const store = world.stores.get(NAME("aaa"));
  store.set(`${SCOPE}v/aaa/a.js`, { body: new ArrayBuffer(1), url: "" });
  store.delete(SCOPE);
  assert.deepEqual((await first.tell("verify")).missing, ["./", "v/aaa/a.js"]);
});

test("mend gets what is broken", async () => {
  const { world, first } = await installed();
  world.stores.get(NAME("aaa")).delete(SCOPE);
  assert.deepEqual(await first.tell("mend"), { build: "aaa", files: 3, missing: [] });
});

test("mend without a signal says what is missing", async () => {
  const { world, first } = await installed();
  world.stores.get(NAME("aaa")).delete(SCOPE);
  world.served.set(SCOPE, null);
  assert.deepEqual((await first.tell("mend")).missing, ["./"]);
});

test("no-cache removes what is ours and nothing else", async () => {
  const { world, first } = await installed();
  world.stores.set("other-app", new Map());
  world.served.set(`${SCOPE}?no-cache`, "fresh");
  assert.equal(await text(first.ask("?no-cache", { mode: "navigate" })), "fresh");
  assert.deepEqual(world.names(), ["other-app"]);
  assert.ok(first.did.includes("unregister"));
});

test("no-cache without a signal removes nothing", async () => {
  const { world, first } = await installed();
  world.served.set(`${SCOPE}?no-cache`, null);
  await assert.rejects(first.ask("?no-cache", { mode: "navigate" }));
  assert.deepEqual(world.names(), [NAME("aaa")]);
});

test("reading makes no cache", async () => {
  const { world, first } = await installed();
  world.stores.clear();
  await first.ask("v/aaa/a.js");
  await first.tell("verify");
  assert.deepEqual(world.names(), []);
});

test("an unfilled worker retires and removes what is ours", async () => {
  const { world } = await installed();
  world.stores.set("other-app", new Map());
  const off = worker(world, {}, { active: {} });
  await off.install();
  await off.activate();
  assert.deepEqual(world.names(), ["other-app"]);
  assert.deepEqual(off.did, ["unregister"]);
  assert.equal(await off.ask("./", { mode: "navigate" }), undefined);
});

test("an unfilled worker has the browser forget the page", async () => {
  const { world } = await installed();
  const off = worker(world, {}, { active: {} });
  await off.install();
  assert.deepEqual(
    world.asked.slice(-1).map(({ url, cache }) => [url, cache]),
    [[SCOPE, "reload"]],
  );
  // Without a signal it is no worker yet, and the browser tries again.
  world.served.set(SCOPE, null);
  await assert.rejects(worker(world, {}, { active: {} }).install());
});

test("the page and its worker speak the same words", () => {
  const read = (name) => readFileSync(new URL(`../../static/phone/${name}`, import.meta.url), "utf8");
  const sent = [...read("offline.js").matchAll(/"(verify|mend|take-over)"/g)].map(([, word]) => word);
  assert.deepEqual(new Set(sent), new Set(["verify", "mend", "take-over"]));
  assert.match(read("offline.js"), /type === "build"/);
  assert.match(read("sw.js"), /type: "build"/);
});
