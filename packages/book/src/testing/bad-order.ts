import type { BadBook } from "./bad-book.ts";

const GEAR = "groundGear:\n";
const order = (steps: string): [string, string] => [
  GEAR,
  `order: { source: "Handbook, 4.2", steps: ${steps} }\n${GEAR}`,
];

export const badOrder: readonly BadBook[] = [
  {
    wrong: "an order that names a stance that is not there",
    edits: [order("[seat, ▶nase]")],
    says: [
      "order.steps[1]: expected the id of a stance of this book, found `nase`, which no stance has; did you mean `nose`?",
    ],
  },
  {
    wrong: "an order that names a check at a point where it is not made",
    edits: [order("[{ check: tyre-look, at: ▶oil }]")],
    says: [
      "order.steps[0].at: expected a point at which `tyre-look` is made: right-main-tyre, left-main-tyre, found `oil`; name one of those, or leave `at` out for all of them",
    ],
  },
  {
    wrong: "an order that does a check twice",
    edits: [order("[{ check: tyre-look }, ▶{ check: tyre-look, at: left-main-tyre }]")],
    says: [
      "order.steps[1]: expected each step once, found `tyre-look.left-main-tyre` a second time; take one of the two out",
    ],
  },
  {
    wrong: "an order that goes to a stance twice",
    edits: [order("[seat, nose, ▶seat]")],
    says: ["order.steps[2]: expected each step once, found `seat` a second time; take one of the two out"],
  },
  {
    wrong: "an order that measures before it looks",
    edits: [order("[▶{ check: tyre-pressure }, right-wheel, left-wheel]")],
    says: [
      "order.steps[0]: expected `tyre-pressure.right-main-tyre` behind `tyre-look.right-main-tyre`, which comes before it, found it stands before it; change the order, or take `after` out of the check",
    ],
  },
  {
    wrong: "an order of no source",
    edits: [[GEAR, `order: ▶{ steps: [seat] }\n${GEAR}`]],
    says: ["order.source: expected text, found nothing; add `source:`"],
  },
  {
    wrong: "a last stance that is not there",
    edits: [[GEAR, `last: [▶tail]\n${GEAR}`]],
    says: [
      "last[0]: expected the id of a stance of this book, found `tail`, which no stance has; name one of those, or take it out",
    ],
  },
  {
    wrong: "a stance before an inlet",
    edits: [
      [GEAR, `hazards: [{ name: Engine inlet, kind: inlet, place: [-0.5, 0], radius: 1 }]\n${GEAR}`],
      ["name: Nose, place: [-0.9, 0]", "name: Nose, place: ▶[-0.9, 0]"],
    ],
    says: [
      'stances[2].place: expected a place outside "Engine inlet", 1 m round [-0.5, 0], found [-0.9, 0]; move the stance, or mend the hazard',
    ],
  },
  {
    wrong: "a reason to stand in the arc of a propeller, where none turns",
    edits: [["facing: 180, posture: stand }", "facing: 180, posture: stand, inArc: ▶The spinner is felt }"]],
    says: [
      'stances[2].inArc: expected no reason to stand where a propeller turns: none turns there, found "The spinner is felt"; take `inArc` out, or mend the place',
    ],
  },
];
