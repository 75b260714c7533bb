/** Style sheets held against the syntax of CSS: node csscheck.js <css-tree> <file>... */

import { readFileSync } from "node:fs";
import { pathToFileURL } from "node:url";

const [tree, ...files] = process.argv.slice(2);
const { fork, generate, parse, walk } = await import(pathToFileURL(tree).href);

/** What is younger than css-tree's tables, with the draft that it is from. */
const { lexer } = fork({
  properties: {
    "field-sizing": "content | fixed", // CSS Basic User Interface 4
  },
});

const VAR = /var\((--[\w-]+)(?:,\s*([^()]*))?\)/g;
/** No value of ours is as long; one that takes itself in would be. */
const LONG = 2000;
const ENV = /env\([\w-]+\)/g;

const sheets = files.map((file) => {
  const wrong = [];
  const positions = { positions: true, onParseError: (error) => wrong.push(error) };
  return { file, wrong, sheet: parse(readFileSync(file, "utf8"), positions) };
});

/** The value of each property of our own, where it is given one first. */
const own = new Map();
for (const { sheet } of sheets) {
  walk(sheet, {
    visit: "Declaration",
    enter: ({ property, value }) => {
      if (property.startsWith("--") && !own.has(property)) own.set(property, generate(value));
    },
  });
}

/** A value as a browser takes it; null where a script gives a part of it. */
function taken(value) {
  let text = value;
  while (text.includes("var(")) {
    // With blanks, since what generates text leaves out those after a bracket.
    const next = text.replace(VAR, (all, name, other) => ` ${own.get(name) ?? other ?? all} `);
    if (next.trim() === text.trim() || next.length > LONG) return null;
    text = next;
  }
  return text.replace(ENV, "0px");
}

for (const { file, wrong, sheet } of sheets) {
  const tell = (line, what) => console.log(`${file}:${line}: ${what.split("\n")[0]}`);
  for (const { line, message } of wrong) tell(line, message);
  walk(sheet, {
    visit: "Declaration",
    enter({ property, value, loc }) {
      const text = property.startsWith("--") ? null : taken(generate(value));
      if (text === null) return;
      const given = parse(text, { context: "value" });
      // What stands in @property itself describes it; a page has properties like an element.
      const { error } =
        this.rule === null && this.atrule?.name === "property"
          ? lexer.matchAtruleDescriptor("property", property, given)
          : lexer.matchProperty(property, given);
      if (error) tell(loc.start.line, `${property}: ${text}: ${error.message}`);
    },
  });
  walk(sheet, {
    visit: "Atrule",
    enter({ name, prelude, loc }) {
      const { error } = prelude ? lexer.matchAtrulePrelude(name, prelude) : {};
      if (error) tell(loc.start.line, `@${name}: ${error.message}`);
    },
  });
}
