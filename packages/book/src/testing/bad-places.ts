import type { BadBook } from "./bad-book.ts";

/** Places where the aircraft is not, sides that disagree, and shapes that no aircraft has. */
export const badPlaces: readonly BadBook[] = [
  {
    wrong: "a point ahead of the aircraft",
    edits: [["place: [0.9, 0.2, 1.7]", "place: ▶[-2.9, 0.2, 1.7]"]],
    says: [
      "points[3].place: expected a place on the aircraft, or within 0.3 m of it as seen from above, found [-2.9, 0.2, 1.7], 2.83 m outside; it is [x aft of the datum, y right, z up], in metres",
    ],
  },
  {
    wrong: "a point with x and y changed over",
    edits: [
      ["place: [2.8, 0.3, 1.2]", "place: ▶[0.3, 2.8, 1.2]"],
      ["area: cabin, side: centre, ", "area: cabin, side: right, "],
    ],
    says: [
      "points[0].place: expected a place on the aircraft, or within 0.3 m of it as seen from above, found [0.3, 2.8, 1.2], 1.85 m outside; it is [x aft of the datum, y right, z up], in metres",
    ],
  },
  {
    wrong: "a point below the ground",
    edits: [["place: [0.9, 0.2, 1.7]", "place: [0.9, 0.2, ▶-0.1]"]],
    says: ["points[3].place[2]: expected a height above the ground, at most 3.10 m, found -0.1 m"],
  },
  {
    wrong: "a point above the top",
    edits: [["place: [0.9, 0.2, 1.7]", "place: [0.9, 0.2, ▶17]"]],
    says: ["points[3].place[2]: expected a height above the ground, at most 3.10 m, found 17 m"],
  },
  {
    wrong: "a left point on the right",
    edits: [["side: left\n    place: [3.5, -1.4, 0.25]", "side: ▶left\n    place: [3.5, 1.4, 0.25]"]],
    says: [
      "points[2].side: expected right, as y = 1.4 m is (y is to the right), found left; mend the side, or the sign of y",
    ],
  },
  {
    wrong: "a point of the centre far from it",
    edits: [
      ["side: right, place: [3.5", "side: ▶centre, place: [3.5"],
      ["    mirrors: right-main-tyre\n", ""],
      ["    oneSided: The other brake is of another make and has no fluid.\n", ""],
      ["name: Right main tyre", "name: Main tyre"],
    ],
    says: [
      "points[1].side: expected right, as y = 1.4 m is (y is to the right), found centre; mend the side, or the sign of y",
    ],
  },
  {
    wrong: "a name that disagrees with the side",
    edits: [["name: Oil filler", "name: ▶Left oil filler"]],
    says: [
      'points[3].name: expected a name for a point whose side is centre, found "Left oil filler"; the name and the side must say the same',
    ],
  },
  {
    wrong: "a mirror image that is none",
    edits: [["place: [3.5, -1.4, 0.25]", "place: ▶[3.5, -1.45, 0.25]"]],
    says: [
      "points[2].place: expected the mirror image of `right-main-tyre`, [3.5, -1.4, 0.25], found [3.5, -1.45, 0.25]; mend one of the two, or take out `mirrors`",
    ],
  },
  {
    wrong: "a mirror image at another height",
    edits: [["place: [3.5, -1.4, 0.25]", "place: ▶[3.5, -1.4, 0.27]"]],
    says: [
      "points[2].place: expected the mirror image of `right-main-tyre`, [3.5, -1.4, 0.25], found [3.5, -1.4, 0.27]; mend one of the two, or take out `mirrors`",
    ],
  },
  {
    wrong: "a point that mirrors itself",
    edits: [["mirrors: right-main-tyre", "mirrors: ▶left-main-tyre"]],
    says: [
      "points[2].mirrors: expected the id of the point on the other side, found `left-main-tyre`, the point itself",
    ],
  },
  {
    wrong: "a left point that mirrors the centre",
    edits: [
      ["mirrors: right-main-tyre", "mirrors: oil"],
      ["side: left\n    place: [3.5, -1.4, 0.25]", "side: ▶left\n    place: ▶[3.5, -1.4, 0.25]"],
    ],
    says: [
      "points[2].side: expected a point on one side, mirrored on the other, found left, where `oil` is centre",
      "points[2].place: expected the mirror image of `oil`, [0.9, -0.2, 1.7], found [3.5, -1.4, 0.25]; mend one of the two, or take out `mirrors`",
    ],
  },
  {
    wrong: "a check on one side only",
    edits: [
      ["at: [right-main-tyre, left-main-tyre]\n    title: Look", "at: [▶right-main-tyre]\n    title: Look"],
    ],
    says: [
      "checks[1].at[0]: expected the same check at `left-main-tyre`, the mirror image of `right-main-tyre`, found it on one side only; write at: [right-main-tyre, left-main-tyre], or say why not with `oneSided:`",
    ],
  },
  {
    wrong: "a reason for one side where both are checked",
    edits: [["    least: 20 s", "    oneSided: ▶no reason\n    least: 20 s"]],
    says: [
      "checks[2].oneSided: expected a check that is made on one side only, of a point that has a mirror image, found the same check on the other side; take `oneSided` out",
    ],
  },
  {
    wrong: "a stance inside the fuselage",
    edits: [["place: [2.0, 1.6], facing: 160", "place: ▶[2.0, 0.2], facing: 160"]],
    says: [
      "stances[1].place: expected a place beside the aircraft, or one with 1 m of room above it to crouch, found [2, 0.2], under metal 0.93 m above the ground; move it outwards, or take `inside` as posture",
    ],
  },
  {
    wrong: "an inside stance outside",
    edits: [["place: [2.6, -0.2]", "place: ▶[2.6, -1.2]"]],
    says: [
      "stances[0].place: expected a place inside the fuselage, for the posture inside, found [2.6, -1.2], outside it; mend the place, or take `stand` or `crouch` as posture",
    ],
  },
  {
    wrong: "a stance in the propeller",
    edits: [["place: [-0.9, 0]", "place: ▶[0, 0]"]],
    says: [
      "stances[2].place: expected a place at least 0.5 m before or behind where the blades turn, x = 0.3 m, found [0, 0]; look at it from outside its disc, or say under `inArc` why that cannot be done",
    ],
  },
  {
    wrong: "a left stance on the right",
    edits: [["name: Left main wheel, place: [2.0, -1.6]", "name: ▶Left main wheel, place: [2.0, 1.6]"]],
    says: [
      'stances[3].name: expected a name for a place on the right, as y = 1.6 m is, found "Left main wheel"; mend the name, or the sign of y',
    ],
  },
  {
    wrong: "stations that do not run aft",
    edits: [["[2.4, 0.55, 2.2, 0.9]", "[▶0.9, 0.55, 2.2, 0.9]"]],
    says: [
      "geometry.fuselage[2][0]: expected an x further aft than that of the station before, 1 m, found 0.9 m; put the stations in order, foremost first",
    ],
  },
  {
    wrong: "a station upside down",
    edits: [["[1.0, 0.4, 1.8, 1.0]", "[1.0, 0.4, ▶0.8, 1.0]"]],
    says: [
      "geometry.fuselage[1][2]: expected a top not below the bottom, 1 m, found 0.8 m; a station is [x, half width, top, bottom]",
    ],
  },
  {
    wrong: "a fuselage in the ground",
    edits: [["[1.0, 0.4, 1.8, 1.0]", "[1.0, 0.4, 1.8, ▶-0.1]"]],
    says: ["geometry.fuselage[1][3]: expected a bottom above the ground, found -0.1 m"],
  },
  {
    wrong: "a wing tip inside its root",
    edits: [
      ["tip: { y: 5.0, leadingEdge", "tip: { y: ▶0.4, leadingEdge"],
      [
        "    flap: { from: 0.7, to: 2.8, hinge: 0.75 }\n    aileron: { from: 3.0, to: 4.8, hinge: 0.75 }\n    boot: { span: [0.9, 4.9], joints: [2.5] }\n    tank: [0.9, 3.5]\n",
        "",
      ],
    ],
    says: [
      "geometry.wing.tip.y: expected a tip further out than the root, 0.5 m, found 0.4 m; y is the distance from the centre line",
    ],
  },
  {
    wrong: "a tailplane tip at its root",
    edits: [["tip: { y: 1.6, leadingEdge: 6.5", "tip: { y: ▶0.1, leadingEdge: 6.5"]],
    says: [
      "geometry.tailplane.tip.y: expected a tip further out than the root, 0.1 m, found 0.1 m; y is the distance from the centre line",
    ],
  },
  {
    wrong: "a flap beyond the tip",
    edits: [["flap: { from: 0.7, to: 2.8", "flap: ▶{ from: 0.7, to: 12.8"]],
    says: [
      "geometry.wing.flap: expected a part of the wing, from inside to outside, between root and tip (0.5 to 5 m), found 0.7 to 12.8 m",
    ],
  },
  {
    wrong: "a boot joint beyond the boot",
    edits: [["joints: [2.5]", "joints: [▶4.95]"]],
    says: [
      "geometry.wing.boot.joints[0]: expected a joint between the ends of the boot, 0.9 and 4.9 m, found 4.95 m",
    ],
  },
  {
    wrong: "a kink beyond the tip",
    edits: [
      [
        "  wing:\n    root",
        "  wing:\n    kinks:\n      - { y: ▶5.4, leadingEdge: 2.5, chord: 1.4, z: 1.2 }\n    root",
      ],
    ],
    says: [
      "geometry.wing.kinks[0].y: expected a place between 0.5 m and the tip, 5 m, found 5.4 m; put the kinks in order, from the inside out",
    ],
  },
  {
    wrong: "a strut on the left",
    edits: [
      [
        "  wing:\n    root",
        "  wing:\n    struts:\n      - ▶{ foot: [2.5, -0.5, 1.0], head: [2.7, -2.4, 2.0] }\n    root",
      ],
    ],
    says: [
      "geometry.wing.struts[0]: expected a strut on the right, from the fuselage out to the wing, at most 5 m, found y from -0.5 to -2.4 m; the left one is its mirror image and is not written",
    ],
  },
  {
    wrong: "a tail without a fin that is no V",
    edits: [
      [
        "  fin:\n    span: [5.8, 7.6]\n    outline: [[5.6, 1.8], [6.9, 2.8], [7.5, 2.8], [7.6, 1.6]]\n    hinge: [[7.1, 2.8], [7.2, 1.7]]\n",
        "",
      ],
      [
        "tip: { y: 1.6, leadingEdge: 6.5, chord: 0.6, z: 1.6 }",
        "tip: { y: 1.6, leadingEdge: 6.5, chord: 0.6, z: ▶1.6 }",
      ],
    ],
    says: [
      "geometry.tailplane.tip.z: expected a tip at 1.98 m or higher, as a tail without a fin is a V, found 1.6 m; add `fin:`, or let the tailplane rise",
    ],
  },
  {
    wrong: "a door the wrong way round",
    edits: [["door: { x: [3.3, 3.9]", "door: { x: ▶[3.9, 3.3]"]],
    says: ["geometry.door.x: expected from and to in metres, the lower value first, found [3.9, 3.3]"],
  },
  {
    wrong: "a leg below its axle",
    edits: [["diameter: 0.4, top: 1.0", "diameter: 0.4, top: ▶0.2"]],
    says: ["geometry.wheels[0].top: expected a leg that reaches above the axle, 0.2 m, found 0.2 m"],
  },
  {
    wrong: "all wheels on one side",
    edits: [
      ["- { x: 3.5, y: -1.4,", "- { x: 3.5, y: 1.4,"],
      ["wheels:\n    - { x: 1.2", "wheels:\n    ▶- { x: 1.2"],
    ],
    says: [
      "geometry.wheels: expected a wheel on each side of the centre line, found wheels at y = 0, 1.4, 1.4 m; y is to the right: the left wheel has a minus",
    ],
  },
  {
    wrong: "blades that strike the ground",
    edits: [["radius: 0.95", "radius: ▶1.5"]],
    says: [
      "geometry.propellers[0].radius: expected blades that clear the ground, shorter than 1.4 m, found 1.5 m",
    ],
  },
  {
    wrong: "an engine without a propeller",
    edits: [
      ["engines: 1", "engines: 2"],
      ["    - { x: 0.3, y: 0, z: 1.4", "    ▶- { x: 0.3, y: 0, z: 1.4"],
    ],
    says: [
      "geometry.propellers: expected one propeller for each engine, 2, found 1; mend `aircraft.engines`, or the list of propellers",
    ],
  },
];
