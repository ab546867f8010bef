import type { BadBook } from "./bad-book.ts";

/** Tanks that cannot hold what they say, and envelopes that enclose nothing. Edits of the flight book. */
export const badTanks: readonly BadBook[] = [
  {
    wrong: "a tank that holds nothing",
    edits: [
      ["capacity: 101 L\n      unusable: 3 L", "capacity: ▶0 L\n      unusable: ▶3 L"],
      ["{ volume: 101 L, arm: 2.96 m }", "{ volume: ▶101 L, arm: 2.96 m }"],
    ],
    says: [
      "loading.tanks[1].capacity: expected a capacity above 0, found 0 L",
      "loading.tanks[1].unusable: expected less than the capacity, 0 L, found 3 L",
      "loading.tanks[1].arms[1].volume: expected the capacity in the last row, 0 L, found 101 L; add a row for the full tank; nothing is made up beyond the last",
    ],
  },
  {
    wrong: "unusable fuel below nothing",
    edits: [["unusable: 2 L", "unusable: ▶-2 L"]],
    says: ["loading.tanks[0].unusable: expected a volume not below 0, found -2 L"],
  },
  {
    wrong: "a tank that can use nothing",
    edits: [["unusable: 2 L", "unusable: ▶100 L"]],
    says: ["loading.tanks[0].unusable: expected less than the capacity, 100 L, found 100 L"],
  },
  {
    wrong: "tank arms that do not begin at empty",
    edits: [["[{ volume: 0 L, arm: 3.10 m }", "[{ volume: ▶5 L, arm: 3.10 m }"]],
    says: [
      "loading.tanks[0].arms[0].volume: expected 0 in the first row: the arm of the last drop, found 5 L; add a row for the empty tank; nothing is made up below the first",
    ],
  },
  {
    wrong: "tank arms that end before it is full",
    edits: [["{ volume: 100 L, arm: 2.95 m }", "{ volume: ▶95 L, arm: 2.95 m }"]],
    says: [
      "loading.tanks[0].arms[2].volume: expected the capacity in the last row, 100 L, found 95 L; add a row for the full tank; nothing is made up beyond the last",
    ],
  },
  {
    wrong: "tank arms that end beyond full",
    edits: [["{ volume: 101 L, arm: 2.96 m }", "{ volume: ▶102 L, arm: 2.96 m }"]],
    says: [
      "loading.tanks[1].arms[1].volume: expected the capacity in the last row, 101 L, found 102 L; add a row for the full tank; nothing is made up beyond the last",
    ],
  },
  {
    wrong: "tank arms out of order",
    edits: [
      [
        "{ volume: 60 L, arm: 3.00 m }, { volume: 100 L, arm: 2.95 m }",
        "{ volume: 100 L, arm: 2.95 m }, { volume: ▶60 L, arm: 3.00 m }",
      ],
    ],
    says: [
      "loading.tanks[0].arms[2].volume: expected a volume above that of the row before, 100 L, found 60 L; put the rows in order, emptiest first",
    ],
  },
  {
    wrong: "a tank volume twice",
    edits: [
      [
        "{ volume: 60 L, arm: 3.00 m }, { volume: 100 L, arm: 2.95 m }",
        "{ volume: 100 L, arm: 3.00 m }, { volume: ▶100 L, arm: 2.95 m }",
      ],
    ],
    says: [
      "loading.tanks[0].arms[2].volume: expected a volume above that of the row before, 100 L, found 100 L; put the rows in order, emptiest first",
    ],
  },
  {
    wrong: "a tank with one arm",
    edits: [
      [
        "arms: [{ volume: 0 L, arm: 3.11 m }, { volume: 101 L, arm: 2.96 m }]",
        "arms: ▶[{ volume: 0 L, arm: 3.11 m }]",
      ],
    ],
    says: ["loading.tanks[1].arms: expected a list of at least 2, found a list of one"],
  },
  {
    wrong: "a tank arm behind the aircraft",
    edits: [["{ volume: 0 L, arm: 3.11 m }", "{ volume: 0 L, arm: ▶31.1 m }"]],
    says: [
      "loading.tanks[1].arms[0].arm: expected an arm inside the aircraft, -0.07 to 7.60 m aft of the datum, found 31.1 m; the datum is that of the drawing: x = 0",
    ],
  },
  {
    wrong: "tank arms by which the last litres lie behind the aircraft",
    edits: [["{ volume: 100 L, arm: 2.95 m }", "{ volume: 100 L, arm: ▶5.00 m }"]],
    says: [
      "loading.tanks[0].arms[2].arm: expected an arm inside the aircraft, -0.07 to 7.60 m aft of the datum, found 8 m; the datum is that of the drawing: x = 0",
    ],
  },
  {
    wrong: "a tank beyond the wing tip",
    edits: [["lateralArm: -2.0 m", "lateralArm: ▶-7.0 m"]],
    says: [
      "loading.tanks[0].lateralArm: expected an arm inside the aircraft, -5.20 to 5.20 m to the right, found -7 m; the left has a minus",
    ],
  },
  {
    wrong: "a left tank on the right",
    edits: [
      ["lateralArm: -2.0 m", "lateralArm: 2.0 m"],
      ["side: left\n      capacity", "side: ▶left\n      capacity"],
    ],
    says: [
      "loading.tanks[0].side: expected right, as y = 2 m is (y is to the right), found left; mend the side, or the sign of y",
    ],
  },
  {
    wrong: "a tank drawn beside the aircraft",
    edits: [["place: [3.0, 2.0, 1.1]", "place: ▶[6.0, 2.0, 1.1]"]],
    says: [
      "loading.tanks[1].place: expected a place on the aircraft as seen from above, found [6, 2, 1.1], 0.58 m outside; it is [x aft of the datum, y right, z up], in metres",
    ],
  },
  {
    wrong: "a tank of a gauge that is not there",
    edits: [["gauge: dipstick\n      readAt", "gauge: ▶dip-stick\n      readAt"]],
    says: [
      "loading.tanks[0].gauge: expected the id of a gauge of this book, found `dip-stick`, which no gauge has; did you mean `dipstick`?",
    ],
  },
  {
    wrong: "a tank of a gauge of pressure",
    edits: [["gauge: dipstick\n      readAt", "gauge: ▶tyre-gauge\n      readAt"]],
    says: [
      "loading.tanks[0].gauge: expected a gauge of volume or mass, found `tyre-gauge`, a gauge of pressure",
    ],
  },
  {
    wrong: "a tank read at a point that is not there",
    edits: [["readAt: [oil]", "readAt: [▶oill]"]],
    says: [
      "loading.tanks[0].readAt[0]: expected the id of a point of this book, found `oill`, which no point has; did you mean `oil`?",
    ],
  },
  {
    wrong: "a tank read twice at one point",
    edits: [["readAt: [oil]", "readAt: [oil, ▶oil]"]],
    says: [
      "loading.tanks[0].readAt[1]: expected each item only once, found `oil` a second time; take it out",
    ],
  },
  {
    wrong: "two tanks of one id",
    edits: [
      ["- id: right-tank", "- id: ▶left-tank"],
      ["order: [[left-tank, right-tank]]", "order: [[left-tank, ▶right-tank]]"],
    ],
    says: [
      "loading.tanks[1].id: expected an id that no other has, found `left-tank` a second time; give one of the two another id",
      "fuel.order[0][1]: expected the id of a tank of this book, found `right-tank`, which no tank has; add it under `loading.tanks`, or name another",
    ],
  },
  {
    wrong: "an envelope of two corners",
    edits: [
      [
        "        - { arm: 2.61 m, mass: 1000 kg }\n        - { arm: 2.70 m, mass: 1299 kg }\n        - { arm: 3.05 m, mass: 1298 kg }\n",
        "",
      ],
      ["        - { arm: 2.60 m, mass: 790 kg }", "        ▶- { arm: 2.60 m, mass: 790 kg }"],
    ],
    says: [
      "loading.envelopes[0].points: expected at least 3 corners, one after the other round the edge, found 2; the edge closes by itself from the last corner to the first",
    ],
  },
  {
    wrong: "an envelope that crosses itself",
    edits: [
      [
        "        - { arm: 2.70 m, mass: 1299 kg }\n        - { arm: 3.05 m, mass: 1298 kg }",
        "        - { arm: 3.05 m, mass: 1298 kg }\n        - { arm: 2.70 m, mass: 1299 kg }",
      ],
      ["- { arm: 3.04 m, mass: 791 kg }", "- ▶{ arm: 3.04 m, mass: 791 kg }"],
    ],
    says: [
      "loading.envelopes[0].points[4]: expected an edge that does not cross or touch itself, found the line from 2.7 m, 1299 kg to 3.04 m, 791 kg, which meets that from 2.61 m, 1000 kg to 3.05 m, 1298 kg; give the corners one after the other round the edge",
    ],
  },
  {
    wrong: "an envelope that touches itself",
    edits: [
      [
        "- { arm: 3.05 m, mass: 1298 kg }",
        "- { arm: 3.05 m, mass: 1298 kg }\n        - ▶{ arm: 2.61 m, mass: 1000 kg }",
      ],
    ],
    says: [
      "loading.envelopes[0].points[4]: expected an edge that does not cross or touch itself, found the line from 3.05 m, 1298 kg to 2.61 m, 1000 kg, which meets that from 2.6 m, 790 kg to 2.61 m, 1000 kg; give the corners one after the other round the edge",
    ],
  },
  {
    wrong: "an envelope that folds back on itself",
    edits: [
      [
        "- { arm: 3.05 m, mass: 1298 kg }",
        "- { arm: 3.05 m, mass: 1298 kg }\n        - { arm: 3.05 m, mass: 1000 kg }\n        - ▶{ arm: 3.05 m, mass: 1100 kg }",
      ],
    ],
    says: [
      "loading.envelopes[0].points[5]: expected an edge that does not cross or touch itself, found the line from 3.05 m, 1000 kg to 3.05 m, 1100 kg, which meets that from 3.05 m, 1298 kg to 3.05 m, 1000 kg; give the corners one after the other round the edge",
    ],
  },
  {
    wrong: "a corner twice in a row",
    edits: [
      [
        "- { arm: 3.05 m, mass: 1298 kg }",
        "- { arm: 3.05 m, mass: 1298 kg }\n        - ▶{ arm: 3.05 m, mass: 1298 kg }",
      ],
    ],
    says: [
      "loading.envelopes[0].points[4]: expected each corner once, found 3.05 m, 1298 kg twice in a row; take one of the two out; the edge closes by itself",
    ],
  },
  {
    wrong: "an envelope that is closed by hand",
    edits: [
      [
        "- { arm: 3.04 m, mass: 791 kg }",
        "- { arm: 3.04 m, mass: 791 kg }\n        - { arm: 2.60 m, mass: 790 kg }",
      ],
      [
        "- { arm: 2.60 m, mass: 790 kg }\n        - { arm: 2.61",
        "- ▶{ arm: 2.60 m, mass: 790 kg }\n        - { arm: 2.61",
      ],
    ],
    says: [
      "loading.envelopes[0].points[0]: expected each corner once, found 2.6 m, 790 kg twice in a row; take one of the two out; the edge closes by itself",
    ],
  },
  {
    wrong: "an envelope above the limits",
    edits: [["mass: 1299 kg", "mass: ▶1306 kg"]],
    says: [
      "loading.envelopes[0].points[2].mass: expected a mass within the limit, 1305 kg, found 1306 kg; mend the corner, or `loading.limits`",
    ],
  },
  {
    wrong: "an envelope behind the aircraft",
    edits: [["arm: 3.05 m, mass: 1298 kg", "arm: ▶30.5 m, mass: 1298 kg"]],
    says: [
      "loading.envelopes[0].points[3].arm: expected an arm inside the aircraft, -0.07 to 7.60 m aft of the datum, found 30.5 m; the datum is that of the drawing: x = 0",
    ],
  },
  {
    wrong: "an envelope below nothing",
    edits: [["mass: 791 kg", "mass: ▶-791 kg"]],
    says: ["loading.envelopes[0].points[4].mass: expected a mass above 0, found -791 kg"],
  },
  {
    wrong: "two envelopes of one id",
    edits: [
      [
        "\nfuel:\n",
        "    - { id: ▶normal, name: Utility, points: [{ arm: 2.6 m, mass: 790 kg }, { arm: 2.7 m, mass: 1000 kg }, { arm: 2.9 m, mass: 900 kg }] }\n\nfuel:\n",
      ],
    ],
    says: [
      "loading.envelopes[1].id: expected an id that no other has, found `normal` a second time; give one of the two another id",
    ],
  },
];
