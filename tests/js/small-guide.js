// A packed guide, cut down to what a session asks of it; invented.

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
          { width: 1, alphabet: "ABC" },
          { width: 2, alphabet: "0123456789" },
        ],
      },
    },
    {
      id: "cap",
      part: "grip",
      name: "grip cap",
      kind: { name: "choice", options: [{ id: "plain" }, { id: "bird" }] },
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
