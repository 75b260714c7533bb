// A want and prices of one's own, invented, with sane values in every field.

import { id, NOW } from "./kept.js";

/** What a want is read from. */
export const wanted = (number = 1, fields = {}) => ({
  id: id(number),
  guide: "wrackham-teale-dotterel",
  since: 1957,
  until: 1958,
  member: "5",
  most: 120,
  currency: "EUR",
  note: "for the long set",
  created: NOW,
  changed: NOW,
  ...fields,
});

/** What prices for a guide are read from. */
export const priced = (fields = {}) => ({
  guide: "wrackham-teale-dotterel",
  changed: NOW,
  currency: "EUR",
  date: "",
  source: "",
  worth: [
    [1957, 90],
    [1958, 70.5],
  ],
  other: 20,
  condition: [["worn", { amount: 0, share: 0.3 }]],
  parts: [{ part: "grip", off: { amount: 5, share: 0 }, put_right: 12 }],
  set: null,
  ...fields,
});
