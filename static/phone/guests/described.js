/**
 * What a guide that is given must look like, and how a mistake is said: drawn from
 * Python's records and schemas. Written by tests/make_given.py, not by hand.
 */

export const LIMITS = {
  "bytes": 1500000,
  "json": 60,
  "head": 400,
  "told": 10,
  "file": 1,
  "chain": 6,
  "window": 120,
  "months": 12000,
  "steps": 4000000,
  "answers": 40,
  "whole": 10,
};

export const REFUSALS = {
  "too-large": "is larger than {most} bytes",
  "too-deep": "is nested too deeply",
  "later-format": "format {value} cannot be read by this version",
  "missing": "is missing",
  "unknown-key": "is not a key that is known here",
  "not-that": "{value} does not fit here",
  "too-few": "has {count}",
  "listed-twice": "{value} is listed twice",
  "unread-kind": "{value} is a kind that this version cannot read",
  "backwards": "{value} ends before it starts",
  "id-twice": "{value} is used twice",
  "unknown-name": "{value} is no {what}",
  "like-itself": "{value} is this option itself",
  "circle": "parts follow in a circle: {chain}",
  "chain": "{count} parts follow one after the other",
  "no-set": "the guide has no [set] to name members of",
  "range-set": "the verdict on a set is a year, and that of this guide a range",
  "unknown-drawing": "{value} is no drawing that is here",
  "no-spot": "the drawing {drawing} has no spot {value}",
  "year-twice": "{value} is a model year twice",
  "year-order": "{value} stands after {before}",
  "built-far": "the window lies more than a year from {year}",
  "built-long": "the window has {count} months",
  "year-outside": "{value} is no {what} of this guide",
  "fade-alone": "has no month to fade from",
  "members-and-except": "stands beside members",
  "outside-range": "{value} is outside the range",
  "overlap": "size {other} covers {year} too, for the same members",
  "number-order": "{value} is not above {before}, the first number of the year before",
  "number-last": "{value} is below {least}, the first number of {year}",
  "outside-numbers": "{value} is outside the numbers of this clue",
  "lag-unwanted": "stands beside {means}",
  "field-and-layout": "stands beside field",
  "layout-year": "{value} is not among the years of its layout",
  "no-model-year": "a mark of a kind that means not-before knows no model year",
  "weeks-unwanted": "a field of kind {kind} counts no weeks",
  "alphabet-repeats": "{value} stands twice in the alphabet",
  "alphabet-mark": "{value} cannot be a character of an alphabet",
  "alphabet-short": "the alphabet has {count}",
  "alphabet-digits": "{value} is not all the digits",
  "width": "{value} is too wide for a field of kind {kind}",
  "width-exact": "{value} is not the width of a {kind}",
  "codes-unwanted": "a field of kind {kind} has no codes",
  "code-length": "{value} has the length {count}",
  "code-character": "{value} has {character}, which is not in the alphabet of {field}",
  "when-empty": "waits for nothing",
  "when-alone": "stands alone",
  "when-kind": "does not suit {clue}, which is a {kind}",
  "prices-set": "the guide has no [set] to price",
  "no-guide": "is no file of a guide",
  "damaged": "is not what it was when it was given",
  "too-many": "has {count}, of at most {most}",
  "drawing-element": "{value} is no part of a drawing",
  "drawing-attribute": "{value} is no attribute of {tag}",
  "drawing-value": "{value} does not fit the attribute {name}",
  "drawing-large": "is no drawing of at most {most} parts, {deep} deep",
  "too-much": "takes {count} steps to judge with, of at most {most}",
};

export const SCENES = [
  [
    "iron",
    [
      "whole",
      "head",
      "shaft",
      "collar",
      "label",
      "band",
      "grip",
      "cap",
      "face",
      "toe",
      "hosel",
      "pin",
      "back",
      "sole",
      "pad",
    ],
  ],
  [
    "unmarked-iron",
    [
      "whole",
      "head",
      "shaft",
      "collar",
      "label",
      "band",
      "grip",
      "cap",
      "face",
      "toe",
      "hosel",
      "pin",
      "back",
      "sole",
      "pad",
    ],
  ],
  [
    "wood",
    [
      "headcover",
      "whole",
      "head",
      "shaft",
      "whipping",
      "label",
      "band",
      "grip",
      "cap",
      "face",
      "insert",
      "pins",
      "brand",
      "crown",
      "mark",
      "plate",
      "screws",
      "code",
    ],
  ],
  [
    "reel",
    [
      "whole",
      "foot",
      "frame",
      "spool",
      "holes",
      "handle",
      "guard",
      "width",
      "pouch",
      "ends",
      "stamp",
      "number",
      "patent",
      "check",
    ],
  ],
  ["thing", ["whole", "flex", "plug", "body", "label", "lid", "box", "tag", "base"]],
];

export const DRAWING = {
  "deep": 16,
  "most": 800,
  "long": 6000,
  "elements": [
    ["svg", ["class", "viewBox", "stroke-width", "aria-hidden", "focusable"]],
    ["g", ["class", "data-spot", "stroke-width", "transform"]],
    ["path", ["class", "d", "fill", "fill-rule", "transform", "stroke-width", "stroke-dasharray"]],
    ["circle", ["class", "cx", "cy", "r", "stroke-width"]],
    ["rect", ["class", "x", "y", "width", "height", "rx", "stroke-width"]],
    ["text", ["class", "x", "y", "font-size", "text-anchor", "textLength", "lengthAdjust"]],
  ],
  "values": [
    ["class", "(drawing|swatch)[a-z-]*(__[a-z-]+)?( (drawing|swatch)[a-z_-]+)?"],
    ["data-spot", "[a-z0-9]+(-[a-z0-9]+)*"],
    ["viewBox", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["aria-hidden", "true"],
    ["focusable", "false"],
    ["d", "[MmLlHhVvCcSsQqTtAaZz0-9 .,-]*"],
    ["fill", "url\\(#swatch-[a-z]+\\)"],
    ["fill-rule", "evenodd"],
    [
      "transform",
      "(translate|rotate|scale|skewX)\\(-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}\\)( (translate|rotate|scale|skewX)\\(-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}\\)){0,3} ?",
    ],
    ["text-anchor", "middle"],
    ["lengthAdjust", "spacingAndGlyphs"],
    ["stroke-width", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["stroke-dasharray", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["cx", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["cy", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["r", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["x", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["y", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["width", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["height", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["rx", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["font-size", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
    ["textLength", "-?[0-9]{1,4}(\\.[0-9]{1,4})?( -?[0-9]{1,4}(\\.[0-9]{1,4})?){0,11}"],
  ],
};

export const DESCRIBED = {
  "is": "record",
  "fields": [
    ["format", {"is": "whole", "least": 1, "most": 1}],
    ["id", {"is": "id", "most": 200}],
    ["title", {"is": "text", "least": 1, "most": 4000}],
    ["maker", {"is": "text", "least": 0, "most": 4000}],
    ["kind", {"is": "text", "least": 1, "most": 4000}],
    ["fiction", {"is": "truth"}],
    ["about", {"is": "text", "least": 1, "most": 4000}],
    ["source", {"is": "text", "least": 1, "most": 4000}],
    ["updated", {"is": "day"}],
    ["drawing", {"is": "text", "least": 1, "most": 4000}],
    ["floor", {"is": "number", "least": 1e-06, "most": 0.999999}],
    ["misread", {"is": "number", "least": 0.0, "most": 1.0}],
    ["outside", {"is": "number", "least": 1e-06, "most": 0.999999}],
    [
      "years",
      {
        "is": "list",
        "of": {
          "is": "record",
          "fields": [
            ["year", {"is": "whole", "least": 1000, "most": 2999}],
            ["opens", {"is": "whole", "least": 12000, "most": 35999}],
            ["closes", {"is": "whole", "least": 12000, "most": 35999}],
            ["volume", {"is": "number", "least": 1e-06, "most": 1000000.0}],
            ["note", {"is": "text", "least": 0, "most": 4000}],
          ],
        },
        "least": 1,
        "most": 500,
        "once": false,
      },
    ],
    [
      "parts",
      {
        "is": "list",
        "of": {
          "is": "record",
          "fields": [
            ["id", {"is": "id", "most": 200}],
            ["name", {"is": "text", "least": 1, "most": 4000}],
            ["replaced", {"is": "number", "least": 0.0, "most": 1.0}],
            ["follows", {"is": "maybe", "of": {"is": "text", "least": 1, "most": 200}}],
            ["share", {"is": "number", "least": 0, "most": 1}],
            ["whole_set", {"is": "number", "least": 0.0, "most": 1.0}],
          ],
        },
        "least": 1,
        "most": 40,
        "once": false,
      },
    ],
    [
      "clues",
      {
        "is": "list",
        "of": {
          "is": "record",
          "fields": [
            ["id", {"is": "id", "most": 200}],
            ["part", {"is": "text", "least": 1, "most": 4000}],
            ["name", {"is": "text", "least": 1, "most": 200}],
            [
              "kind",
              {
                "is": "kinds",
                "by": "name",
                "of": [
                  [
                    "choice",
                    {
                      "is": "record",
                      "fields": [
                        ["name", {"is": "word", "of": ["choice"]}],
                        [
                          "options",
                          {
                            "is": "list",
                            "of": {
                              "is": "record",
                              "fields": [
                                ["id", {"is": "id", "most": 200}],
                                ["label", {"is": "text", "least": 1, "most": 4000}],
                                [
                                  "like",
                                  {
                                    "is": "list",
                                    "of": {"is": "text", "least": 1, "most": 200},
                                    "least": 0,
                                    "most": 100,
                                    "once": true,
                                  },
                                ],
                                [
                                  "seen",
                                  {
                                    "is": "list",
                                    "of": {
                                      "is": "record",
                                      "fields": [
                                        [
                                          "years",
                                          {
                                            "is": "maybe",
                                            "of": {
                                              "is": "row",
                                              "of": [
                                                {"is": "whole", "least": 1000, "most": 2999},
                                                {"is": "whole", "least": 1000, "most": 2999},
                                              ],
                                              "rises": true,
                                            },
                                          },
                                        ],
                                        [
                                          "since",
                                          {
                                            "is": "maybe",
                                            "of": {"is": "whole", "least": 12000, "most": 35999},
                                          },
                                        ],
                                        [
                                          "until",
                                          {
                                            "is": "maybe",
                                            "of": {"is": "whole", "least": 12000, "most": 35999},
                                          },
                                        ],
                                        ["fade", {"is": "whole", "least": 0, "most": 120}],
                                        ["share", {"is": "number", "least": 0.0, "most": 1.0}],
                                        [
                                          "members",
                                          {
                                            "is": "list",
                                            "of": {"is": "text", "least": 1, "most": 200},
                                            "least": 0,
                                            "most": 100,
                                            "once": true,
                                          },
                                        ],
                                        [
                                          "excluded",
                                          {
                                            "is": "list",
                                            "of": {"is": "text", "least": 1, "most": 200},
                                            "least": 0,
                                            "most": 100,
                                            "once": true,
                                          },
                                        ],
                                      ],
                                    },
                                    "least": 0,
                                    "most": 100,
                                    "once": false,
                                  },
                                ],
                                ["picture", {"is": "maybe", "of": {"is": "drawing"}}],
                                ["source", {"is": "text", "least": 0, "most": 4000}],
                              ],
                            },
                            "least": 2,
                            "most": 100,
                            "once": false,
                          },
                        ],
                        [
                          "replacement",
                          {
                            "is": "list",
                            "of": {
                              "is": "row",
                              "of": [
                                {"is": "text", "least": 1, "most": 200},
                                {"is": "number", "least": 0, "most": 1},
                              ],
                            },
                            "least": 0,
                            "most": 100,
                            "once": true,
                          },
                        ],
                      ],
                    },
                  ],
                  [
                    "measure",
                    {
                      "is": "record",
                      "fields": [
                        ["name", {"is": "word", "of": ["measure"]}],
                        ["unit", {"is": "text", "least": 1, "most": 4000}],
                        ["low", {"is": "number", "least": -1000000000.0, "most": 1000000000.0}],
                        ["high", {"is": "number", "least": -1000000000.0, "most": 1000000000.0}],
                        ["wear", {"is": "number", "least": 0, "most": 1000000000.0}],
                        [
                          "sizes",
                          {
                            "is": "list",
                            "of": {
                              "is": "record",
                              "fields": [
                                [
                                  "years",
                                  {
                                    "is": "row",
                                    "of": [
                                      {"is": "whole", "least": 1000, "most": 2999},
                                      {"is": "whole", "least": 1000, "most": 2999},
                                    ],
                                    "rises": true,
                                  },
                                ],
                                [
                                  "mean",
                                  {"is": "number", "least": -1000000000.0, "most": 1000000000.0},
                                ],
                                ["sd", {"is": "number", "least": 1e-06, "most": 1000000000.0}],
                                [
                                  "members",
                                  {
                                    "is": "list",
                                    "of": {"is": "text", "least": 1, "most": 200},
                                    "least": 0,
                                    "most": 100,
                                    "once": true,
                                  },
                                ],
                                [
                                  "excluded",
                                  {
                                    "is": "list",
                                    "of": {"is": "text", "least": 1, "most": 200},
                                    "least": 0,
                                    "most": 100,
                                    "once": true,
                                  },
                                ],
                              ],
                            },
                            "least": 1,
                            "most": 100,
                            "once": false,
                          },
                        ],
                        ["helper", {"is": "word", "of": ["", "swing-weight"]}],
                      ],
                    },
                  ],
                  [
                    "code",
                    {
                      "is": "record",
                      "fields": [
                        ["name", {"is": "word", "of": ["code"]}],
                        [
                          "fields",
                          {
                            "is": "list",
                            "of": {
                              "is": "record",
                              "fields": [
                                ["name", {"is": "text", "least": 1, "most": 4000}],
                                [
                                  "means",
                                  {
                                    "is": "word",
                                    "of": [
                                      "month",
                                      "year",
                                      "year-letter",
                                      "model-year",
                                      "week",
                                      "day",
                                      "plain",
                                    ],
                                  },
                                ],
                                ["width", {"is": "whole", "least": 1, "most": 12}],
                                ["alphabet", {"is": "text", "least": 1, "most": 4000}],
                                ["odd", {"is": "number", "least": 0.0, "most": 1.0}],
                                [
                                  "codes",
                                  {
                                    "is": "list",
                                    "of": {
                                      "is": "row",
                                      "of": [
                                        {"is": "whole", "least": 1000, "most": 2999},
                                        {"is": "text", "least": 1, "most": 200},
                                      ],
                                    },
                                    "least": 0,
                                    "most": 4000,
                                    "once": true,
                                  },
                                ],
                                ["weeks", {"is": "word", "of": ["", "iso", "sunday"]}],
                              ],
                            },
                            "least": 0,
                            "most": 12,
                            "once": false,
                          },
                        ],
                        ["means", {"is": "word", "of": ["made", "not-before"]}],
                        ["lag", {"is": "number", "least": 0, "most": 1000}],
                        [
                          "layouts",
                          {
                            "is": "list",
                            "of": {
                              "is": "record",
                              "fields": [
                                [
                                  "years",
                                  {
                                    "is": "maybe",
                                    "of": {
                                      "is": "row",
                                      "of": [
                                        {"is": "whole", "least": 1000, "most": 2999},
                                        {"is": "whole", "least": 1000, "most": 2999},
                                      ],
                                      "rises": true,
                                    },
                                  },
                                ],
                                [
                                  "fields",
                                  {
                                    "is": "list",
                                    "of": {
                                      "is": "record",
                                      "fields": [
                                        ["name", {"is": "text", "least": 1, "most": 4000}],
                                        [
                                          "means",
                                          {
                                            "is": "word",
                                            "of": [
                                              "month",
                                              "year",
                                              "year-letter",
                                              "model-year",
                                              "week",
                                              "day",
                                              "plain",
                                            ],
                                          },
                                        ],
                                        ["width", {"is": "whole", "least": 1, "most": 12}],
                                        ["alphabet", {"is": "text", "least": 1, "most": 4000}],
                                        ["odd", {"is": "number", "least": 0.0, "most": 1.0}],
                                        [
                                          "codes",
                                          {
                                            "is": "list",
                                            "of": {
                                              "is": "row",
                                              "of": [
                                                {"is": "whole", "least": 1000, "most": 2999},
                                                {"is": "text", "least": 1, "most": 200},
                                              ],
                                            },
                                            "least": 0,
                                            "most": 4000,
                                            "once": true,
                                          },
                                        ],
                                        ["weeks", {"is": "word", "of": ["", "iso", "sunday"]}],
                                      ],
                                    },
                                    "least": 1,
                                    "most": 12,
                                    "once": false,
                                  },
                                ],
                              ],
                            },
                            "least": 0,
                            "most": 40,
                            "once": false,
                          },
                        ],
                      ],
                    },
                  ],
                  [
                    "number",
                    {
                      "is": "record",
                      "fields": [
                        ["name", {"is": "word", "of": ["number"]}],
                        ["means", {"is": "word", "of": ["made", "not-before"]}],
                        ["lag", {"is": "number", "least": 0, "most": 1000}],
                        [
                          "first",
                          {
                            "is": "list",
                            "of": {
                              "is": "row",
                              "of": [
                                {"is": "whole", "least": 1000, "most": 2999},
                                {"is": "whole", "least": 0, "most": 1000000000000},
                              ],
                            },
                            "least": 1,
                            "most": 4000,
                            "once": true,
                          },
                        ],
                        ["last", {"is": "whole", "least": 0, "most": 1000000000000}],
                      ],
                    },
                  ],
                ],
              },
            ],
            ["ask", {"is": "text", "least": 1, "most": 4000}],
            ["where", {"is": "text", "least": 0, "most": 4000}],
            ["why", {"is": "text", "least": 0, "most": 4000}],
            ["photo", {"is": "text", "least": 0, "most": 4000}],
            ["seconds", {"is": "number", "least": 0.1, "most": 86400}],
            ["unreadable", {"is": "number", "least": 0.0, "most": 1.0}],
            ["seen_from", {"is": "word", "of": ["hand", "away"]}],
            ["needs", {"is": "text", "least": 0, "most": 4000}],
            ["misread", {"is": "number", "least": 0, "most": 1}],
            ["spot", {"is": "text", "least": 1, "most": 200}],
            ["picture", {"is": "maybe", "of": {"is": "drawing"}}],
            ["source", {"is": "text", "least": 0, "most": 4000}],
            ["popular", {"is": "truth"}],
          ],
        },
        "least": 1,
        "most": 150,
        "once": false,
      },
    ],
    [
      "members",
      {
        "is": "maybe",
        "of": {
          "is": "record",
          "fields": [
            [
              "all",
              {
                "is": "list",
                "of": {"is": "text", "least": 1, "most": 200},
                "least": 1,
                "most": 40,
                "once": true,
              },
            ],
            [
              "usual",
              {
                "is": "list",
                "of": {"is": "text", "least": 1, "most": 200},
                "least": 0,
                "most": 100,
                "once": true,
              },
            ],
            ["stray", {"is": "number", "least": 0.0, "most": 1.0}],
            [
              "stray_for",
              {
                "is": "list",
                "of": {
                  "is": "row",
                  "of": [
                    {"is": "text", "least": 1, "most": 200},
                    {"is": "number", "least": 0, "most": 1},
                  ],
                },
                "least": 0,
                "most": 100,
                "once": true,
              },
            ],
            [
              "names",
              {
                "is": "list",
                "of": {
                  "is": "row",
                  "of": [
                    {"is": "text", "least": 1, "most": 200},
                    {"is": "text", "least": 1, "most": 200},
                  ],
                },
                "least": 0,
                "most": 100,
                "once": true,
              },
            ],
          ],
        },
      },
    ],
    [
      "flags",
      {
        "is": "list",
        "of": {
          "is": "record",
          "fields": [
            [
              "when",
              {
                "is": "list",
                "of": {
                  "is": "record",
                  "fields": [
                    ["clue", {"is": "maybe", "of": {"is": "text", "least": 1, "most": 4000}}],
                    [
                      "among",
                      {
                        "is": "list",
                        "of": {"is": "text", "least": 1, "most": 200},
                        "least": 0,
                        "most": 100,
                        "once": true,
                      },
                    ],
                    [
                      "over",
                      {
                        "is": "maybe",
                        "of": {"is": "number", "least": -1000000000.0, "most": 1000000000.0},
                      },
                    ],
                    [
                      "under",
                      {
                        "is": "maybe",
                        "of": {"is": "number", "least": -1000000000.0, "most": 1000000000.0},
                      },
                    ],
                    ["part", {"is": "maybe", "of": {"is": "text", "least": 1, "most": 4000}}],
                    [
                      "replaced_over",
                      {"is": "maybe", "of": {"is": "number", "least": 0.0, "most": 1.0}},
                    ],
                    [
                      "years",
                      {
                        "is": "maybe",
                        "of": {
                          "is": "row",
                          "of": [
                            {"is": "whole", "least": 1000, "most": 2999},
                            {"is": "whole", "least": 1000, "most": 2999},
                          ],
                          "rises": true,
                        },
                      },
                    ],
                  ],
                },
                "least": 1,
                "most": 20,
                "once": false,
              },
            ],
            ["say", {"is": "text", "least": 1, "most": 4000}],
            ["ask", {"is": "text", "least": 0, "most": 4000}],
          ],
        },
        "least": 0,
        "most": 100,
        "once": false,
      },
    ],
    [
      "cautions",
      {
        "is": "list",
        "of": {"is": "text", "least": 1, "most": 4000},
        "least": 0,
        "most": 50,
        "once": false,
      },
    ],
    ["verdict", {"is": "word", "of": ["year", "range"]}],
    ["anything", {"is": "truth"}],
    [
      "prices",
      {
        "is": "maybe",
        "of": {
          "is": "record",
          "fields": [
            ["currency", {"is": "currency"}],
            ["date", {"is": "day"}],
            ["source", {"is": "text", "least": 1, "most": 4000}],
            [
              "worth",
              {
                "is": "list",
                "of": {
                  "is": "row",
                  "of": [
                    {"is": "whole", "least": 1000, "most": 2999},
                    {"is": "number", "least": 0, "most": 1000000000.0},
                  ],
                },
                "least": 1,
                "most": 4000,
                "once": true,
              },
            ],
            ["other", {"is": "number", "least": 0, "most": 1000000000.0}],
            [
              "condition",
              {
                "is": "list",
                "of": {
                  "is": "row",
                  "of": [
                    {"is": "text", "least": 1, "most": 200},
                    {
                      "is": "record",
                      "fields": [
                        ["amount", {"is": "number", "least": 0, "most": 1000000000.0}],
                        ["share", {"is": "number", "least": 0, "most": 1}],
                      ],
                    },
                  ],
                },
                "least": 0,
                "most": 100,
                "once": true,
              },
            ],
            [
              "parts",
              {
                "is": "list",
                "of": {
                  "is": "record",
                  "fields": [
                    ["part", {"is": "text", "least": 1, "most": 200}],
                    [
                      "off",
                      {
                        "is": "record",
                        "fields": [
                          ["amount", {"is": "number", "least": 0, "most": 1000000000.0}],
                          ["share", {"is": "number", "least": 0, "most": 1}],
                        ],
                      },
                    ],
                    [
                      "put_right",
                      {"is": "maybe", "of": {"is": "number", "least": 0, "most": 1000000000.0}},
                    ],
                  ],
                },
                "least": 0,
                "most": 100,
                "once": false,
              },
            ],
            [
              "set",
              {
                "is": "maybe",
                "of": {
                  "is": "record",
                  "fields": [
                    [
                      "worth",
                      {
                        "is": "list",
                        "of": {
                          "is": "row",
                          "of": [
                            {"is": "whole", "least": 1000, "most": 2999},
                            {"is": "number", "least": 0, "most": 1000000000.0},
                          ],
                        },
                        "least": 1,
                        "most": 4000,
                        "once": true,
                      },
                    ],
                    ["other", {"is": "number", "least": 0, "most": 1000000000.0}],
                    [
                      "missing",
                      {
                        "is": "record",
                        "fields": [
                          ["amount", {"is": "number", "least": 0, "most": 1000000000.0}],
                          ["share", {"is": "number", "least": 0, "most": 1}],
                        ],
                      },
                    ],
                    [
                      "stray",
                      {
                        "is": "record",
                        "fields": [
                          ["amount", {"is": "number", "least": 0, "most": 1000000000.0}],
                          ["share", {"is": "number", "least": 0, "most": 1}],
                        ],
                      },
                    ],
                  ],
                },
              },
            ],
          ],
        },
      },
    ],
    ["scene", {"is": "drawing"}],
    [
      "own",
      {
        "is": "list",
        "of": {
          "is": "row",
          "of": [
            {"is": "text", "least": 1, "most": 200},
            {"is": "text", "least": 1, "most": 200},
            {"is": "maybe", "of": {"is": "text", "least": 1, "most": 200}},
            {"is": "drawing"},
          ],
        },
        "least": 0,
        "most": 4000,
        "once": false,
      },
    ],
  ],
};
