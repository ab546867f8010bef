import { Geometry } from "../schema/geometry.ts";

/** A small invented single-engine aircraft with every drawn thing on it; it is the shape of `smallBookText` too. */
export const smallGeometry: Geometry = Geometry.parse({
  fuselage: [
    [0.3, 0.2, 1.6, 1.2],
    [1.0, 0.4, 1.8, 1.0],
    [2.4, 0.55, 2.2, 0.9],
    [4.0, 0.55, 2.2, 0.95],
    [6.5, 0.2, 1.8, 1.3],
    [7.4, 0.05, 1.7, 1.5],
  ],
  wing: {
    root: { y: 0.5, leadingEdge: 2.4, chord: 1.6, z: 1.0 },
    tip: { y: 5.0, leadingEdge: 2.7, chord: 1.0, z: 1.4 },
    tipRound: 0.2,
    flap: { from: 0.7, to: 2.8, hinge: 0.75 },
    aileron: { from: 3.0, to: 4.8, hinge: 0.75 },
    boot: { span: [0.9, 4.9], joints: [2.5] },
    tank: [0.9, 3.5],
  },
  tailplane: {
    root: { y: 0.1, leadingEdge: 6.3, chord: 0.9, z: 1.6 },
    tip: { y: 1.6, leadingEdge: 6.5, chord: 0.6, z: 1.6 },
    tipRound: 0.1,
    elevator: 0.6,
    boot: true,
    trimTab: "right",
  },
  fin: {
    span: [5.8, 7.6],
    outline: [
      [5.6, 1.8],
      [6.9, 2.8],
      [7.5, 2.8],
      [7.6, 1.6],
    ],
    hinge: [
      [7.1, 2.8],
      [7.2, 1.7],
    ],
  },
  propellers: [{ x: 0.3, y: 0, z: 1.4, radius: 0.95, spinner: true }],
  wheels: [
    { x: 1.2, y: 0, width: 0.15, diameter: 0.4, top: 1.0 },
    { x: 3.5, y: 1.4, width: 0.18, diameter: 0.5, top: 1.0 },
    { x: 3.5, y: -1.4, width: 0.18, diameter: 0.5, top: 1.0 },
  ],
  frames: [0.9],
  exhaust: 0.8,
  windscreen: {
    x: [1.9, 2.4],
    halfWidth: 0.5,
    side: [
      [1.95, 1.95],
      [2.4, 2.15],
      [2.4, 1.85],
    ],
  },
  windows: [[2.6, 3.2]],
  sideWindows: [{ x: [2.6, 3.2], z: [1.65, 2.0] }],
  door: { x: [3.3, 3.9], z: [1.1, 2.0], side: "left" },
  hatch: { x: [4.6, 5.0], halfWidth: 0.2 },
});
