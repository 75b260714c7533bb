import assert from "node:assert/strict";
import { test } from "node:test";

import { needsFind, route, toClue, toMember, WHICH } from "../../static/phone/routes.js";

test("an address names a screen, a clue and a member", () => {
  const nothing = { clue: null, member: null, id: null, rest: false };
  const look = { ...nothing, screen: "look" };

  assert.deepEqual(route("#look"), look);
  assert.deepEqual(route("#rest"), { ...look, rest: true });
  assert.deepEqual(route("#look/pad"), { ...look, clue: "pad" });
  assert.deepEqual(route("#look/pad/6"), { ...look, clue: "pad", member: "6" });
  assert.deepEqual(route("#verdict/6"), { ...nothing, screen: "verdict", member: "6" });
  assert.deepEqual(route("#set/6"), { ...nothing, screen: "set" });
  assert.deepEqual(route("#practice/oxmere-grebe"), { ...nothing, screen: "practice", id: "oxmere-grebe" });
});

test("an address that nobody wrote leads Home", () => {
  for (const hash of ["", "#", "#nowhere", "#look%", "#/look"]) {
    assert.equal(route(hash).screen, "home", hash);
  }
});

test("addresses come back as they were written", () => {
  for (const member of ["6", "10½", "a/b", "%", WHICH]) {
    assert.equal(route(toClue("pad", member)).member, member);
    assert.equal(route(toMember(member)).member, member);
  }
  assert.equal(toClue("pad"), "#look/pad");
});

test("only Home and the check do without a find", () => {
  const screens = ["home", "look", "places", "verdict", "set", "claim", "seller", "check"];

  assert.deepEqual(
    screens.filter((screen) => !needsFind(screen)),
    ["home", "check"],
  );
});
