import type { BadBook } from "./bad-book.ts";

/** Values that are missing, misspelt or of another kind than the schema wants. */
export const badShapes: readonly BadBook[] = [
  {
    wrong: "a later version",
    edits: [["witnessmark: 1", "witnessmark: ▶2"]],
    says: ["witnessmark: expected a book of version 1, found 2; a newer Witnessmark reads it"],
  },
  {
    wrong: "a version of nothing",
    edits: [["witnessmark: 1", "witnessmark: ▶0"]],
    says: ["witnessmark: expected a book of version 1, found 0; write `witnessmark: 1`"],
  },
  {
    wrong: "no version",
    edits: [["witnessmark: 1\n", "▶"]],
    says: ["witnessmark: expected `1`, found nothing; add `witnessmark: 1`"],
  },
  {
    wrong: "a version in words",
    edits: [["witnessmark: 1", "witnessmark: ▶one"]],
    says: ['witnessmark: expected `1`, found "one"'],
  },
  {
    wrong: "a misspelt key",
    edits: [["    shouldBe: Dry.", "    ▶shouldbe: Dry."]],
    says: [
      "checks[4].shouldbe: expected a key that a book has here, found `shouldbe`; did you mean `shouldBe`?",
    ],
  },
  {
    wrong: "a key that is not known",
    edits: [["  seats: 4", "  seats: 4\n  ▶colour: blue"]],
    says: [
      "aircraft.colour: expected one of the keys `registration`, `type`, `description`, `engine`, `engines`, `gear`, `retractable`, `class`, `carburettor`, `typeRating`, `seats` or `certification`, found `colour`",
    ],
  },
  {
    wrong: "a misspelt key of the book itself",
    edits: [["revision: 3", "▶revison: 3"]],
    says: ["revison: expected a key that a book has here, found `revison`; did you mean `revision`?"],
  },
  {
    wrong: "a key of the book itself that is not known",
    edits: [["revision: 3", "revision: 3\n▶colour: blue"]],
    says: [
      "colour: expected one of the keys `witnessmark`, `revision`, `issued`, `notice`, `aircraft`, `drawnFrom`, `geometry`, `gauges`, `areas`, `stances`, `points`, `checks`, `groundGear`, `equipment`, `order`, `last`, `hazards`, `relief`, `counters`, `timedItems`, `loading`, `fuel`, `oxygen`, `cabin`, `performance`, `iceProtection` or `fields`, found `colour`",
    ],
  },
  {
    wrong: "a key left out",
    edits: [
      ["  seats: 4\n", ""],
      ["  registration", "  ▶registration"],
    ],
    says: ["aircraft.seats: expected a number, found nothing; add `seats:`"],
  },
  {
    wrong: "a key without a value",
    edits: [["title: Read the dipstick", "▶title:"]],
    says: [
      "checks[3].title: expected text, found nothing; write the value after the colon, or take the key out",
    ],
  },
  {
    wrong: "a whole section left out",
    edits: [
      [
        "areas:\n  - { id: cabin, name: Cabin }\n  - { id: wings, name: Wings and wheels }\n  - { id: engine, name: Engine }\n",
        "",
      ],
      ["witnessmark", "▶witnessmark"],
    ],
    says: ["areas: expected a list, found nothing; add `areas:`"],
  },
  {
    wrong: "a number where text belongs",
    edits: [['jasc: "7932"', "jasc: ▶7932"]],
    says: ['checks[3].jasc: expected text, found 7932; put it in quotes: "7932"'],
  },
  {
    wrong: "text where a number belongs",
    edits: [["seats: 4", 'seats: ▶"4"']],
    says: ['aircraft.seats: expected a number, found "4"; write 4, without quotes'],
  },
  {
    wrong: "half a seat",
    edits: [["seats: 4", "seats: ▶4.5"]],
    says: ["aircraft.seats: expected a whole number, found 4.5"],
  },
  {
    wrong: "a decimal comma",
    edits: [["tipRound: 0.2", "tipRound: ▶0,2"]],
    says: ['geometry.wing.tipRound: expected a number, found "0,2"; write 0.2, without quotes'],
  },
  {
    wrong: "a number out of its range",
    edits: [["seats: 4", "seats: ▶400"]],
    says: ["aircraft.seats: expected a number, at most 20, found 400"],
  },
  {
    wrong: "a negative half width",
    edits: [["[1.0, 0.4, 1.8, 1.0]", "[1.0, ▶-0.4, 1.8, 1.0]"]],
    says: ["geometry.fuselage[1][1]: expected a number, at least 0, found -0.4"],
  },
  {
    wrong: "millimetres in place of metres",
    edits: [["place: [0.9, 0.2, 1.7]", "place: [0.9, 0.2, ▶1700]"]],
    says: ["points[3].place[2]: expected metres, at most 100 from the datum, found 1700"],
  },
  {
    wrong: "a number that is none",
    edits: [["tipRound: 0.2", "tipRound: ▶.nan"]],
    says: ["geometry.wing.tipRound: expected a number, found NaN"],
  },
  {
    wrong: "a station of three numbers",
    edits: [["[1.0, 0.4, 1.8, 1.0]", "▶[1.0, 0.4, 1.8]"]],
    says: ["geometry.fuselage[1]: expected a list of 4, found a list of 3"],
  },
  {
    wrong: "a misspelt method",
    edits: [["method: measure\n    shouldBe: 3.0", "method: ▶mesure\n    shouldBe: 3.0"]],
    says: [
      'checks[2].method: expected `look`, `touch`, `move`, `measure`, `count`, `drain` or `listen`, found "mesure"; did you mean `measure`?',
    ],
  },
  {
    wrong: "a happening that is not known",
    edits: [["until: [flown, maintenance], atMost: 24 h", "until: [flown, ▶washed], atMost: 24 h"]],
    says: [
      'checks[0].holds.until[1]: expected `fuelled`, `unattended`, `rain`, `frost`, `maintenance`, `flown`, `towed` or `loaded`, found "washed"',
    ],
  },
  {
    wrong: "a misspelt kind of limit",
    edits: [["by: cylinder", "by: ▶cilinder"]],
    says: [
      'checks[0].reading.limit.by: expected `fixed`, `gas-law`, `cylinder`, `tyre` or `table`, found "cilinder"; did you mean `cylinder`?',
    ],
  },
  {
    wrong: "a limit without a kind",
    edits: [["{ by: tyre, service", "▶{ service"]],
    says: [
      "checks[2].reading.limit.by: expected `fixed`, `gas-law`, `cylinder`, `tyre` or `table`, found nothing; add `by:`",
    ],
  },
  {
    wrong: "an id with capitals and a space",
    edits: [["id: oil-level", "id: ▶Oil Level"]],
    says: ['checks[3].id: expected lower-case letters and figures joined by hyphens, found "Oil Level"'],
  },
  {
    wrong: "one value where a list belongs",
    edits: [
      [
        "walks: [first-of-day]\n    holds: { until: [flown], atMost: 3 d }",
        "walks: ▶first-of-day\n    holds: { until: [flown], atMost: 3 d }",
      ],
    ],
    says: ['checks[2].walks: expected a list, found "first-of-day"; put it in brackets: [first-of-day]'],
  },
  {
    wrong: "an empty list",
    edits: [
      [
        "walks: [first-of-day]\n    holds: { until: [flown], atMost: 3 d }",
        "walks: ▶[]\n    holds: { until: [flown], atMost: 3 d }",
      ],
    ],
    says: ["checks[2].walks: expected a list of at least 1, found an empty list"],
  },
  {
    wrong: "blank text",
    edits: [["title: Read the dipstick", 'title: ▶"  "']],
    says: ["checks[3].title: expected at least one word, found blanks only"],
  },
  {
    wrong: "a date that is not in the calendar",
    edits: [["on: 2026-11-09", "on: ▶2026-02-30"]],
    says: ['issued.on: expected a date of the calendar, as 2026-11-12, found "2026-02-30"'],
  },
  {
    wrong: "a date written another way",
    edits: [["on: 2026-11-09", "on: ▶09.11.2026"]],
    says: ['issued.on: expected a date of the calendar, as 2026-11-12, found "09.11.2026"'],
  },
  {
    wrong: "a registration in small letters",
    edits: [["registration: ZZ-SML", "registration: ▶zz-sml"]],
    says: [
      'aircraft.registration: expected capital letters and figures, as painted on the aircraft, found "zz-sml"',
    ],
  },
  {
    wrong: "keys where the id of a point belongs",
    edits: [["    at: oil\n", "    at: ▶{ point: oil }\n"]],
    says: ["checks[3].at: expected the id of a point, or a list of ids, found keys and values"],
  },
  {
    wrong: "a number in a list of ids",
    edits: [
      [
        "at: [right-main-tyre, left-main-tyre]\n    title: Look",
        "at: [right-main-tyre, ▶7]\n    title: Look",
      ],
    ],
    says: ['checks[1].at[1]: expected text, found 7; put it in quotes: "7"'],
  },
];
