import type { BadBook } from "./bad-book.ts";

/** Names of what is not there, or is there twice; checks that cannot be done in order. */
export const badReferences: readonly BadBook[] = [
  {
    wrong: "a misspelt gauge",
    edits: [["gauge: tyre-gauge", "gauge: ▶tire-gauge"]],
    says: [
      "checks[2].reading.gauge: expected the id of a gauge of this book, found `tire-gauge`, which no gauge has; did you mean `tyre-gauge`?",
    ],
  },
  {
    wrong: "a gauge that is not there",
    edits: [["gauge: tyre-gauge", "gauge: ▶manometer"]],
    says: [
      "checks[2].reading.gauge: expected the id of a gauge of this book, found `manometer`, which no gauge has; add it under `gauges`, or name another",
    ],
  },
  {
    wrong: "a check at no point",
    edits: [["    at: oil\n", "    at: ▶oill\n"]],
    says: [
      "checks[3].at: expected the id of a point of this book, found `oill`, which no point has; did you mean `oil`?",
    ],
  },
  {
    wrong: "one of several points that is not there",
    edits: [
      [
        "at: [right-main-tyre, left-main-tyre]\n    title: Look",
        "at: [right-main-tyre, left-main-tyre, ▶tail-tyre]\n    title: Look",
      ],
    ],
    says: [
      "checks[1].at[2]: expected the id of a point of this book, found `tail-tyre`, which no point has; add it under `points`, or name another",
    ],
  },
  {
    wrong: "a check from no stance",
    edits: [["from: nose", "from: ▶noze"]],
    says: [
      "checks[3].from: expected the id of a stance of this book, found `noze`, which no stance has; did you mean `nose`?",
    ],
  },
  {
    wrong: "a point in no area",
    edits: [["area: engine", "area: ▶motor"]],
    says: [
      "points[3].area: expected the id of an area of this book, found `motor`, which no area has; add it under `areas`, or name another",
    ],
  },
  {
    wrong: "a point with no stance",
    edits: [["stance: nose }", "stance: ▶nosee }"]],
    says: [
      "points[3].stance: expected the id of a stance of this book, found `nosee`, which no stance has; did you mean `nose`?",
    ],
  },
  {
    wrong: "a mirror image of nothing",
    edits: [["mirrors: right-main-tyre", "mirrors: ▶right-tyre"]],
    says: [
      "points[2].mirrors: expected the id of a point of this book, found `right-tyre`, which no point has; add it under `points`, or name another",
    ],
  },
  {
    wrong: "a check after one that is not there",
    edits: [["after: [tyre-look]", "after: [▶tyre-lok]"]],
    says: [
      "checks[2].after[0]: expected the id of a check of this book, found `tyre-lok`, which no check has; did you mean `tyre-look`?",
    ],
  },
  {
    wrong: "ground gear at no point",
    edits: [["count: 2, point: right-main-tyre", "count: 2, point: ▶right-tyre"]],
    says: [
      "groundGear[0].point: expected the id of a point of this book, found `right-tyre`, which no point has; add it under `points`, or name another",
    ],
  },
  {
    wrong: "ground gear taken off from no stance",
    edits: [["stance: right-wheel, stowedIn", "stance: ▶right-wheal, stowedIn"]],
    says: [
      "groundGear[0].stance: expected the id of a stance of this book, found `right-wheal`, which no stance has; did you mean `right-wheel`?",
    ],
  },
  {
    wrong: "equipment at no point",
    edits: [["points: [oxygen]", "points: [▶oxigen]"]],
    says: [
      "equipment[0].points[0]: expected the id of a point of this book, found `oxigen`, which no point has; did you mean `oxygen`?",
    ],
  },
  {
    wrong: "two checks of one id",
    edits: [["id: right-brake", "id: ▶oil-level"]],
    says: [
      "checks[4].id: expected an id that no other has, found `oil-level` a second time; give one of the two another id",
    ],
  },
  {
    wrong: "two gauges of one id",
    edits: [
      ["id: dipstick, name", "id: ▶oxygen-gauge, name"],
      ["gauge: dipstick", "gauge: ▶dipstick"],
    ],
    says: [
      "gauges[2].id: expected an id that no other has, found `oxygen-gauge` a second time; give one of the two another id",
      "checks[3].reading.gauge: expected the id of a gauge of this book, found `dipstick`, which no gauge has; add it under `gauges`, or name another",
    ],
  },
  {
    wrong: "two faults of one id",
    edits: [["{ id: cord, name", "{ id: ▶cut, name"]],
    says: [
      "checks[1].faults[1].id: expected an id that no other has, found `cut` a second time; give one of the two another id",
    ],
  },
  {
    wrong: "a happening twice",
    edits: [["until: [flown, maintenance], atMost: 24 h", "until: [flown, ▶flown], atMost: 24 h"]],
    says: [
      "checks[0].holds.until[1]: expected each item only once, found `flown` a second time; take it out",
    ],
  },
  {
    wrong: "a walk twice",
    edits: [["walks: [first-of-day, turnaround]", "walks: [first-of-day, ▶first-of-day]"]],
    says: [
      "checks[1].walks[1]: expected each item only once, found `first-of-day` a second time; take it out",
    ],
  },
  {
    wrong: "a check twice at one point",
    edits: [
      [
        "at: [right-main-tyre, left-main-tyre]\n    title: Look",
        "at: [right-main-tyre, left-main-tyre, ▶left-main-tyre]\n    title: Look",
      ],
    ],
    says: [
      "checks[1].at[2]: expected each item only once, found `left-main-tyre` a second time; take it out",
    ],
  },
  {
    wrong: "the same check under another id",
    edits: [
      ["title: Look at the brake for leaks", "title: ▶Look at the tread"],
      ["    oneSided: The other brake is of another make and has no fluid.\n", ""],
    ],
    says: [
      'checks[4].title: expected a check that is not yet made at `right-main-tyre`, found "Look at the tread" a second time, after `tyre-look`; take one of the two out, or say how `right-brake` differs',
    ],
  },
  {
    wrong: "a stowage twice",
    edits: [["stowedIn: [Baggage locker]", "stowedIn: [Baggage locker, ▶Baggage locker]"]],
    says: [
      "groundGear[0].stowedIn[1]: expected each item only once, found `Baggage locker` a second time; take it out",
    ],
  },
  {
    wrong: "two checks after each other",
    edits: [
      [
        "    walks: [first-of-day, turnaround]\n",
        "    after: [tyre-pressure]\n    walks: [first-of-day, turnaround]\n",
      ],
      ["after: [tyre-look]", "after: [▶tyre-look]"],
    ],
    says: [
      "checks[2].after[0]: expected an order in which checks can be done, found a circle: `tyre-look` after `tyre-pressure` after `tyre-look`; take one of them out of `after`",
    ],
  },
  {
    wrong: "a check after itself",
    edits: [["after: [tyre-look]", "after: [▶tyre-pressure]"]],
    says: [
      "checks[2].after[0]: expected an order in which checks can be done, found a circle: `tyre-pressure` after `tyre-pressure`; take one of them out of `after`",
    ],
  },
  {
    wrong: "a check after one of a later stance",
    edits: [
      ['    jasc: "3510"\n  - id: tyre-look', '    after: [▶oil-level]\n    jasc: "3510"\n  - id: tyre-look'],
    ],
    says: [
      "checks[0].after[0]: expected a check that is done before this one on the walk, found `oil-level`, done from stance `nose`, later; move one of the two in the file, or to another stance",
    ],
  },
  {
    wrong: "a check after a later one of the same stance",
    edits: [
      [
        "    hazard: { severity: medium, ifMissed: Tyre bursts on landing. }\n",
        "    after: [▶right-brake]\n    hazard: { severity: medium, ifMissed: Tyre bursts on landing. }\n",
      ],
    ],
    says: [
      "checks[1].after[0]: expected a check that is done before this one on the walk, found `right-brake`, done from stance `right-wheel`, later; move one of the two in the file, or to another stance",
    ],
  },
  {
    wrong: "a JASC code of two figures",
    edits: [['jasc: "7932"', 'jasc: ▶"79"']],
    says: ['checks[3].jasc: expected four figures of the JASC table, in quotes, found "79"'],
  },
  {
    wrong: "a JASC code that is not in the table",
    edits: [['jasc: "7932"', 'jasc: ▶"7999"']],
    says: [
      'checks[3].jasc: expected a code of the JASC table, found "7999"; write "7900" for Engine oil as a whole',
    ],
  },
  {
    wrong: "a JASC code of no system",
    edits: [['jasc: "3244"', 'jasc: ▶"0044"']],
    says: [
      'checks[2].jasc: expected a code of the JASC table, found "0044"; the first two figures name the system, as 32 for landing gear',
    ],
  },
];
