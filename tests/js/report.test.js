import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";

import { judge, prepare, unpack } from "../../static/phone/engine/index.js";
import { capital } from "../../static/phone/engine/words.js";
import { entry, summed } from "../../static/phone/log/record.js";
import { fileName, page, report } from "../../static/phone/log/report.js";
import { escaped } from "../../static/phone/log/reportnodes.js";
import { id, json, NOW } from "./kept.js";
import { jpeg } from "./pictured.js";

const CLUES = { rings: "collar-rings", code: "hosel-code", toe: "toe-outline" };
const vectors = JSON.parse(
  readFileSync(new URL("../vectors/wrackham-teale-dotterel.json", import.meta.url), "utf-8"),
);
const guide = unpack(vectors.guide);
const tables = prepare(guide);
const stamp = "a1b2c3";

/** A find of one iron with these readings. */
const find = (readings, { gone = [], claim = null } = {}) => ({
  guide: guide.id,
  items: [{ member: null, readings, gone }],
  claim,
});

const READ = find(
  [
    [CLUES.rings, "red-gold"],
    [CLUES.toe, "square"],
    [CLUES.code, null],
  ],
  { claim: { model_year: 1957, cites: [CLUES.rings] } },
);

/** What a report is asked with; fields of the entry can be given. */
function asked(found = READ, fields = {}, photos = []) {
  const verdict = judge(tables, found);
  const notes = photos.map(([number, clue]) => ({
    id: id(number),
    clue,
    width: 40,
    height: 30,
    bytes: jpeg(number).length,
  }));
  const kept = entry(
    json({ guide: guide.id, find: found, verdict: summed(verdict), photos: notes, ...fields }),
  );
  return {
    guide,
    entry: kept,
    verdict,
    photos: photos.map(([number]) => ({ id: id(number), bytes: jpeg(number).buffer })),
    stamp,
    now: NOW,
  };
}

/** The text of a page as a reader sees it, a line an element. */
function shown(told) {
  const body = report(told).split("<body>")[1];
  const signs = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };
  const text = body.replace(/<[^>]*>/g, "\n").replace(/&([^;]+);/g, (_, sign) => signs[sign]);
  return text.replaceAll("\u00a0", " ").replace(/\n+/g, "\n");
}

test("the file names its language, policy and title", () => {
  const html = report(asked());

  assert.match(html, /^<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n/);
  assert.match(html, /content="default-src 'none'; img-src data:; style-src 'unsafe-inline'"/);
  assert.match(html, /<title>Irons from the fair<\/title>/);
  assert.match(html, /<h1 dir="auto">Irons from the fair<\/h1>/);
  assert.ok(html.endsWith("</main>\n</body>\n</html>\n"));
});

test("an entry without a title is named by the verdict that is told", () => {
  const told = asked(READ, { title: " " });
  const then = { ...told, entry: { ...told.entry, verdict: json().verdict } };

  for (const html of [report(told), report(then)]) {
    assert.match(html, /<h1 dir="auto">Wrackham &amp; Teale .* irons, probably 1960<\/h1>/);
  }
});

test("the same find gives the same bytes", () => {
  assert.equal(report(asked(READ, {}, [[1, null]])), report(asked(READ, {}, [[1, null]])));
});

for (const text of ['"><script>alert(1)</script>', '=HYPERLINK("http://x.invalid")', "</style>"]) {
  test(`${text} stays a text`, () => {
    const told = asked(READ, { title: text, note: text, place: text });
    const html = report({ ...told, with: { place: true } });
    const plain = report({
      ...asked(READ, { title: "A", note: "A", place: "A" }),
      with: { place: true },
    });

    assert.equal(html.split("<").length, plain.split("<").length);
    assert.equal(html.split('"').length, plain.split('"').length);
    assert.equal(html.split(escaped(text)).length - 1, 4);
  });
}

test("signs of HTML are escaped, and unfit characters gone", () => {
  assert.equal(escaped("a & <b> \"c\" 'd'"), "a &amp; &lt;b&gt; &quot;c&quot; &#39;d&#39;");
  assert.equal(escaped("a\r\nb\0c\ud800\ufffe"), "a\nb\ufffdc\ufffd\ufffd");
  assert.equal(escaped("71 %"), "71\u00a0%");
});

test("place and prices are told only if ticked", () => {
  const told = asked(READ, { place: "Market hall", asked: 120.5, paid: 80 });

  for (const ticked of [undefined, {}, { place: false, prices: false }]) {
    assert.doesNotMatch(report({ ...told, with: ticked }), /Market hall|120\.50|80 EUR/);
  }
  assert.match(shown({ ...told, with: { place: true } }), /\nPlace\nMarket hall\n/);
  assert.doesNotMatch(shown({ ...told, with: { place: true } }), /EUR/);
  assert.match(shown({ ...told, with: { prices: true } }), /\nAsked\n120\.50 EUR\nPaid\n80 EUR\n/);
});

test("the year stands in large figures, by itself", () => {
  const sure = asked(vectors.cases.find(({ verdict }) => verdict.say.startsWith("1957: ")).find);
  const lean = asked(
    vectors.cases.find(({ verdict }) => verdict.say === "leaning to 1954: likely, 87 %").find,
  );
  const open = asked(
    vectors.cases.find(({ verdict }) => /^cannot tell yet: \d{4} leads/.test(verdict.say)).find,
  );

  assert.match(report(sure), /<p class="say"><strong class="figure figure--year">1957<\/strong> v/);
  assert.match(
    report(lean),
    /<p class="say">Leaning to <strong class="figure figure--year">1954<\/strong> likely, 87\u00a0%/,
  );
  assert.match(report(open), /Cannot tell yet: <strong class="figure figure--open">/);
  // Of a year that is no answer yet nothing more is said.
  assert.match(shown(lean), /\n1954: The first Dotterel: /);
  assert.doesNotMatch(shown(open), /\n19\d\d: /);
});

test("the ribbon has a column a year that is at all likely", () => {
  const { verdict, ...rest } = asked();
  const likely = {
    ...verdict,
    model_years: [
      [1954, 0.7],
      [1955, 0.3],
      [1956, 0],
    ],
    outside: 0,
  };
  const html = report({
    ...rest,
    verdict: { ...likely, leading: 1954, say: "1954: likely, 70 %" },
  });
  const columns = [...html.matchAll(/<rect class="(column[^"]*)"[^>]* height="([\d.]+)"/g)];

  assert.deepEqual(
    columns.map(([, kind, height]) => [kind, height]),
    [
      ["column column--lead", "110.0"],
      ["column", "47.1"],
    ],
  );
  assert.match(
    shown({ ...rest, verdict: likely }),
    /\n1954\n70 %\n1955\n30 %\n1956\nunder 1 %\nnone of these\n/,
  );
});

test("a find of which nothing was read is told", () => {
  const text = shown(asked(find([])));

  assert.match(text, /\nWhich year, and how sure\nNothing read yet\n/);
  assert.doesNotMatch(report(asked(find([]))), /class="column column--lead"/);
  assert.doesNotMatch(text, /Why:|What was read\n|Runner-up/);
});

test("each reading has its weight and its photo", () => {
  const told = asked(READ, {}, [
    [1, CLUES.toe],
    [2, CLUES.code],
    [3, null],
  ]);
  const html = report(told);
  const readings = html.split('<li class="reading">').slice(1);
  const says = told.verdict.weights.map(({ say }) => say);

  assert.equal(readings.length, 2);
  says.forEach((say, i) =>
    assert.ok(
      readings.some((each) => each.includes(escaped(say))),
      i,
    ),
  );
  const [toe] = readings.filter((each) => each.includes("Line of the toe (square)"));
  assert.match(toe, /alt="Photo of the line of the toe, read as: square"/);
  assert.match(shown(told), /\nCould not be told: hosel code\.\n/);
  // What could not be told has no reading to stand beside.
  const [, others] = html.split("<h2>Photos</h2>");
  assert.deepEqual(
    [...others.matchAll(/<figcaption>([^<]*)/g)].map(([, caption]) => caption),
    ["Hosel code", "Photo 3"],
  );
  assert.equal(html.split("<img ").length - 1, 3);
});

test("beams lean to their side, as far as they tell", () => {
  const { verdict, ...told } = asked();
  const weights = [150, 1 / 150, 1e9, 0, 1].map((factor) => ({
    clue: CLUES.toe,
    factor,
    say: "A.",
  }));
  const html = report({ ...told, verdict: { ...verdict, weights } });
  const beams = [
    ...html.matchAll(/<rect class="(for|against)" x="([\d.]+)%" y="2" width="([\d.]+)%"/g),
  ];

  assert.deepEqual(
    beams.map(([, ...beam]) => beam.join(" ")),
    ["for 50.0 50.0", "against 0.0 50.0", "for 50.0 50.0", "against 0.0 50.0", "for 50.0 1.0"],
  );
});

test("a reading on a part that is gone is not weighed", () => {
  const gone = find(
    [
      [CLUES.rings, "red-gold"],
      [CLUES.toe, "square"],
    ],
    { gone: ["collar"] },
  );
  const text = shown(asked(gone));

  assert.match(text, /\nRead and not weighed: collar rings \(red, then gold\)\.\n/);
  assert.match(text, /\nCollar\nGone\n/);
});

test("readings that the guide has dropped are still told", () => {
  const { verdict, ...told } = asked();
  const old = find([
    ["old-clue", "seen"],
    ["old-size", { value: 61.5, error: 0.4 }],
    [CLUES.rings, "old-option"],
    [CLUES.toe, "square"],
  ]);
  const text = shown({
    ...told,
    entry: { ...told.entry, find: old },
    verdict: { ...verdict, weights: [] },
  });

  assert.match(
    text,
    /Read and not weighed: old-clue \(seen\), old-size \(61\.5, give or take 0\.4\), collar rings \(old-option\) and line of the toe \(square\)\./,
  );
});

test("a measure has its error", () => {
  const pad = guide.clues.find(({ kind }) => kind.name === "measure");
  const { value, error } = { value: (pad.kind.low + pad.kind.high) / 2, error: 0.4 };
  const gone = asked(find([[pad.id, { value, error }]], { gone: [pad.part] }));

  assert.match(shown(gone), /mm, give or take 0\.4\)/);
});

test("photos are the very bytes, within the page", () => {
  const told = asked(READ, {}, [
    [1, null],
    [2, null],
  ]);
  const sources = [...report(told).matchAll(/src="data:image\/jpeg;base64,([^"]*)"/g)];

  assert.deepEqual(
    sources.map(([, base64]) => [...Buffer.from(base64, "base64")]),
    [[...jpeg(1)], [...jpeg(2)]],
  );
});

test("a large photo is written without a seam", () => {
  const told = asked(READ, {}, [[1, null]]);
  const large = jpeg(5, { length: 50_001 });
  const [photo] = told.photos;
  const html = report({ ...told, photos: [{ ...photo, bytes: large.buffer }] });

  assert.ok(html.includes(`base64,${Buffer.from(large).toString("base64")}"`));
});

test("a photo with a note in it comes bare", () => {
  const note = [0xff, 0xe1, 0, 8, ...Buffer.from("Exif\0\0")];
  const told = asked(READ, {}, [[1, null]]);
  const whole = Uint8Array.from([...jpeg(1).slice(0, 2), ...note, ...jpeg(1).slice(2)]);
  const html = report({ ...told, photos: [{ ...told.photos[0], bytes: whole.buffer }] });

  assert.ok(html.includes(Buffer.from(jpeg(1)).toString("base64")));
});

test("photos that are lost or damaged are named", () => {
  const told = asked(READ, {}, [
    [1, null],
    [2, null],
    [3, null],
  ]);
  const [first, second] = told.photos;
  const cut = { ...second, bytes: jpeg(2).slice(0, 30).buffer };
  const text = shown({ ...told, photos: [first, cut] });

  assert.match(
    text,
    /\nPhoto 2 is left out: it is damaged\.\nPhoto 3 is left out: it is not on this phone\.\n/,
  );
});

test("images can lie elsewhere, for printing", () => {
  const made = page(asked(READ, {}, [[1, null]]), (bytes) => `blob:${bytes.length}`);

  assert.match(JSON.stringify(made), new RegExp(`\\["src","blob:${jpeg(1).length}"\\]`));
});

test("the claim is weighed with all that is cited", () => {
  const told = asked();
  const { say, cited } = told.verdict.claim;
  const text = shown(told);

  assert.match(text, /\nWhat the seller says\nThe seller says that it is of 1957\.\n/);
  for (const each of [say, ...cited.map((one) => one.say)]) assert.ok(text.includes(`\n${each}\n`));
  assert.doesNotMatch(shown(asked(find([]))), /What the seller says/);
});

test("red flags come with their questions", () => {
  const told = asked();
  const text = shown(told);

  assert.ok(told.verdict.flags.length > 0);
  for (const { say, ask } of told.verdict.flags) {
    assert.ok(text.includes(ask ? `\n${say}\nAsk: “${ask}”\n` : `\n${say}\n`));
  }
  assert.match(shown(asked(find([]))), /\nRed flags\nNone was raised by what was read\.\n/);
});

test("it says what it is and what it is not", () => {
  const text = shown(asked());

  assert.match(
    text,
    /\nThis is an estimate from what was read, not an authentication or an appraisal\.\n/,
  );
  assert.match(text, /ask a qualified appraiser\./);
  assert.match(text, /\nInvented for demonstration: no such object exists\.\n/);
  for (const caution of guide.cautions) assert.ok(text.includes(`\n${caution}\n`));
  assert.match(text, /, version a1b2c3\. What is known here is of 1 June 2025\.\n/);
  assert.match(
    text,
    /\nJudged on 25 November 2026; this report was written on 25 November 2026\.\n/,
  );
  assert.doesNotMatch(shown({ ...asked(), guide: { ...guide, fiction: false } }), /Invented/);
});

test("a verdict that still holds is told once", () => {
  assert.doesNotMatch(shown(asked()), /Judged anew/);
});

test("the verdict at the time is told where it differs", () => {
  const told = asked();
  const then = {
    ...told.entry.verdict,
    say: "1957: likely, 71 %",
    leading: 1957,
    probability: 0.71,
  };
  const text = shown({ ...told, entry: { ...told.entry, verdict: { ...then, flags: [] } } });

  assert.match(
    text,
    /\nJudged anew\nIt was judged on 25 November 2026 by the guide of 1 February 2026: 1957: likely, 71 %\./,
  );
  assert.match(text, /\n1957, 71 %, is now /);
  assert.ok(text.includes(`\nNew red flag: ${told.verdict.flags[0].say}\n`));
});

test("another guide with the same verdict is told", () => {
  const text = shown({ ...asked(), stamp: "ffffff" });

  assert.match(text, /\nThe guide has changed since; what follows from it is the same\.\n/);
});

test("a set of ten is told member by member", () => {
  const set = vectors.cases.find((each) => each.find.items.length === 10).find;
  const told = asked(set, {}, [[1, CLUES.code]]);
  const text = shown(told);

  assert.match(text, /\nSet\n10: 2 to 9, W and S\n/);
  assert.ok(text.includes(`\n${told.verdict.set_say}\n`));
  assert.match(text, /\n5 iron\n1957: very likely, 94 %\.\nstray\n/);
  assert.match(text, /\nPitching wedge\nLeaning to 1958: likely, 67 %\.\napart\n/);
  assert.match(text, /\n4 iron\n1962: very likely, 92 %\.\nfits\n/);
  for (const { stray_say: say, factor_say: factor } of told.verdict.members) {
    assert.ok(text.includes(`\n${factor}\n`));
    assert.ok(text.includes(say));
  }
  assert.match(
    text,
    /\nWhat was read\nClue\nRead, and on which\nHosel code\nCan’t tell: 4 and 9\n/,
  );
  const clues = guide.clues.map(({ name }) => text.indexOf(`\n${capital(name)}\n`));
  const placed = clues.filter((at) => at >= 0);
  assert.deepEqual(
    placed,
    [...placed].sort((one, other) => one - other),
  );
  assert.match(text, /\nPitching wedge\nHead gone\.\n/);
  assert.match(text, /\nShape of the collar\nLike a bell: 4 and 6 to 8\nShort: 9\n/);
  assert.match(
    text,
    /\n9 iron\nShaft replaced: likely, 85 %; collar replaced: virtually certain, over 99 %\.\n/,
  );
  assert.match(text, /\nShaft\nNot replaced on the whole set: /);
  const [cell] = report(told).match(/<th scope="row">Hosel code<\/th><td>.*?<\/td>/);
  assert.match(cell, /<img [^>]*alt="Photo of the hosel code"/);
});

test("a set of which nothing was read weighs nothing", () => {
  const items = ["5", "6"].map((member) => ({ member, readings: [], gone: [] }));
  const html = report(asked({ ...READ, items, claim: null }));

  assert.doesNotMatch(html, /class="(beam|clues)"/);
  assert.match(html, /<th scope="row">5 iron<\/th>/);
});

test("one iron of a set is named", () => {
  const [item] = READ.items;

  assert.match(shown(asked({ ...READ, items: [{ ...item, member: "5" }] })), /\nMember\n5 iron\n/);
});

test("a guide that brackets gives a range and decades", () => {
  const { verdict, ...told } = asked();
  const years = Array.from({ length: 60 }, (_, i) => [
    1921 + i,
    i >= 12 && i < 27 ? 0.066 : 0.0002,
  ]);
  const range = { since: 1933, until: 1947, probability: 0.99, say: "1933 to 1947" };
  const ends = {
    start_say: "Not before 1933: the label.",
    stop_say: "Hardly after 1947: the code.",
  };
  const bracketed = {
    ...verdict,
    model_years: years,
    leading: 1933,
    say: "1933 to 1947: virtually certain, 99 %",
    runner_up: "",
    built_say: "",
    outside: 0.001,
    range: { ...range, ...ends },
  };
  const html = report({ ...told, verdict: bracketed });
  const text = shown({ ...told, verdict: bracketed });

  assert.match(html, /<strong class="figure figure--range">1933 to 1947<\/strong> virtually/);
  assert.match(text, /\nNot before 1933: the label\.\nHardly after 1947: the code\.\n/);
  assert.match(text, /\nDecade\nProbability\n1920s\nunder 1 %\n1930s\n46 %\n1940s\n/);
  assert.equal(html.split('"column column--lead"').length - 1, 15);
  assert.match(text, /\n1921\n1933\n1947\nnone\n/);
  // Names keep their distance from one another.
  const narrow = {
    ...bracketed,
    say: "1933 to 1935: likely, 70 %",
    range: { ...range, until: 1935, say: "1933 to 1935" },
  };
  assert.match(shown({ ...told, verdict: narrow }), /\n1921\n1933\nnone\n/);
});

test("of many years those that count have a row", () => {
  const { verdict, ...told } = asked();
  const years = Array.from({ length: 30 }, (_, i) => [1921 + i, i < 2 ? 0.45 : 0.003]);
  const text = shown({
    ...told,
    verdict: { ...verdict, model_years: years, leading: 1921, say: "x" },
  });

  assert.match(
    text,
    /\nModel year\nProbability\n1921\n45 %\n1922\n45 %\nall other years\n8 %\nnone of these\n/,
  );
});

test("the file has a name that every phone takes", () => {
  const named = (title) => fileName({ entry: { title, guide: "some-guide" } });

  assert.equal(named("Irons, from the fair!"), "find-irons-from-the-fair.html");
  assert.equal(named("../../Été\0.exe"), "find-e-te-exe.html");
  assert.equal(named("鉄"), "find-some-guide.html");
  assert.ok(named("x".repeat(200)).length <= 70);
});
