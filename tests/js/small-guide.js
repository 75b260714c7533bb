// A packed guide, cut down to what a session asks of it; invented.

const field = (name, width, alphabet) => ({ name, width, alphabet });

export const small = Object.freeze({
  id: "ashlar-kittiwake",
  years: [{ year: 1951 }, { year: 1952 }],
  parts: [
    { id: "head", name: "head", replaced: 0 },
    { id: "collar", name: "collar", replaced: 0.1 },
    { id: "grip", name: "grip", replaced: 0.6 },
  ],
  clues: [
    {
      id: "pad",
      part: "head",
      name: "pad thickness",
      kind: { name: "measure", unit: "mm", low: 3, high: 12 },
    },
    {
      id: "rings",
      part: "collar",
      name: "collar rings",
      kind: { name: "choice", options: [{ id: "green" }, { id: "navy" }] },
    },
    {
      id: "code",
      part: "head",
      name: "hosel code",
      kind: {
        name: "code",
        fields: [
          { name: "month", width: 1, alphabet: "ABC" },
          { name: "pattern", width: 2, alphabet: "0123456789" },
        ],
        layouts: [],
      },
    },
    {
      id: "cap",
      part: "grip",
      name: "grip cap",
      kind: { name: "choice", options: [{ id: "plain" }, { id: "bird" }] },
    },
    {
      id: "serial",
      part: "grip",
      name: "serial number",
      kind: {
        name: "number",
        first: [
          [1951, 120],
          [1952, 20000],
        ],
        last: 31999,
      },
    },
    {
      id: "diamond",
      part: "head",
      name: "diamond",
      // Two of one shape, one the other way round,
      // and one that is longer.
      kind: {
        name: "code",
        fields: [],
        layouts: [
          { fields: [field("top", 1, "XHC"), field("left", 2, "0123456789")] },
          { fields: [field("letter", 1, "XW"), field("left", 2, "0123456789")] },
          { fields: [field("top", 2, "0123456789"), field("left", 1, "XHC")] },
          { fields: [field("works", 2, "0123456789"), field("year", 2, "0123456789")] },
        ],
      },
    },
  ],
  members: {
    all: ["3", "4", "5", "6", "7"],
    usual: ["3", "4", "5", "6"],
    stray: 0.04,
    stray_for: [["3", 0.4]],
    names: [["6", "6 iron"]],
  },
});
