import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { Geometry } from "../schema/geometry.ts";
import type { Rule } from "./rule.ts";

/** The shape can be that of an aircraft standing on the ground. */
export const geometryMakesSense: Rule = ({ geometry, aircraft }, report) => {
  if (geometry === undefined) return;
  const tell: Report = (path, fault) => report(["geometry", ...path], fault);
  stationsRunAft(geometry.fuselage, ["fuselage"], tell);
  for (const [i, { stations }] of geometry.nacelles.entries()) {
    stationsRunAft(stations, ["nacelles", i, "stations"], tell);
  }
  halfReachesOut(geometry.wing, ["wing"], tell);
  halfReachesOut(geometry.tailplane, ["tailplane"], tell);
  if (geometry.wing.tip.y > geometry.wing.root.y) wingPartsFit(geometry.wing, tell);
  kinksRunOut(geometry.wing, tell);
  strutsBrace(geometry.wing, tell);
  hasATail(geometry, tell);
  spansRunUp(geometry, tell);
  outlinesDoNotCross(geometry, tell);
  standsOnItsWheels(geometry, aircraft?.gear === "mono-wheel", tell);
  const engines = aircraft?.engines;
  if (aircraft !== undefined && (aircraft.engine === "none") !== (engines === 0)) {
    report(["aircraft", "engines"], {
      expected: aircraft.engine === "none" ? "0, as the engine is none" : "1 or more, as it has an engine",
      found: String(engines),
      remedy: "mend the engine, or how many there are",
    });
  }
  if (engines !== undefined && engines !== geometry.propellers.length) {
    tell(["propellers"], {
      expected: `one propeller for each engine, ${engines}`,
      found: String(geometry.propellers.length),
      remedy: "mend `aircraft.engines`, or the list of propellers",
    });
  }
};

function stationsRunAft(stations: Geometry["fuselage"], path: Path, tell: Report): void {
  for (const [i, [x, , top, bottom]] of stations.entries()) {
    const before = stations[i - 1];
    if (before !== undefined && x <= before[0]) {
      tell([...path, i, 0], {
        expected: `an x further aft than that of the station before, ${before[0]} m`,
        found: `${x} m`,
        remedy: "put the stations in order, foremost first",
      });
    }
    if (top < bottom) {
      tell([...path, i, 2], {
        expected: `a top not below the bottom, ${bottom} m`,
        found: `${top} m`,
        remedy: "a station is [x, half width, top, bottom]",
      });
    }
    if (bottom < 0) tell([...path, i, 3], { expected: "a bottom above the ground", found: `${bottom} m` });
  }
}

function halfReachesOut(
  { root, tip }: Geometry["wing"] | Geometry["tailplane"],
  path: Path,
  tell: Report,
): void {
  if (tip.y > root.y) return;
  tell([...path, "tip", "y"], {
    expected: `a tip further out than the root, ${root.y} m`,
    found: `${tip.y} m`,
    remedy: "y is the distance from the centre line",
  });
}

function kinksRunOut({ root, kinks = [], tip }: Geometry["wing"], tell: Report): void {
  for (const [i, { y }] of kinks.entries()) {
    const inner = kinks[i - 1]?.y ?? root.y;
    if (y > inner && y < tip.y) continue;
    tell(["wing", "kinks", i, "y"], {
      expected: `a place between ${inner} m and the tip, ${tip.y} m`,
      found: `${y} m`,
      remedy: "put the kinks in order, from the inside out",
    });
  }
}

function strutsBrace({ struts = [], tip }: Geometry["wing"], tell: Report): void {
  for (const [i, { foot, head }] of struts.entries()) {
    if (foot[1] >= 0 && head[1] > foot[1] && head[1] <= tip.y) continue;
    tell(["wing", "struts", i], {
      expected: `a strut on the right, from the fuselage out to the wing, at most ${tip.y} m`,
      found: `y from ${foot[1]} to ${head[1]} m`,
      remedy: "the left one is its mirror image and is not written",
    });
  }
}

/** How steeply the halves of a V tail rise at least. Flatter, they are a tailplane, and a fin was forgotten. */
const V_RISE_1 = 0.25;

function hasATail({ fin, tailplane: { root, tip } }: Geometry, tell: Report): void {
  if (fin !== undefined || tip.z - root.z >= V_RISE_1 * (tip.y - root.y)) return;
  tell(["tailplane", "tip", "z"], {
    expected: `a tip at ${(root.z + V_RISE_1 * (tip.y - root.y)).toFixed(2)} m or higher, as a tail without a fin is a V`,
    found: `${tip.z} m`,
    remedy: "add `fin:`, or let the tailplane rise",
  });
}

function wingPartsFit({ root, tip, flap, aileron, boot, tank }: Geometry["wing"], tell: Report): void {
  const parts: readonly (readonly [Path, readonly [number, number] | undefined])[] = [
    [["wing", "flap"], flap && [flap.from, flap.to]],
    [["wing", "aileron"], aileron && [aileron.from, aileron.to]],
    [["wing", "boot", "span"], boot?.span],
    [["wing", "tank"], tank],
  ];
  for (const [path, span] of parts) {
    if (span === undefined) continue;
    const [from, to] = span;
    if (from < to && from >= root.y && to <= tip.y) continue;
    tell(path, {
      expected: `a part of the wing, from inside to outside, between root and tip (${root.y} to ${tip.y} m)`,
      found: `${from} to ${to} m`,
    });
  }
  for (const [i, joint] of (boot?.joints ?? []).entries()) {
    const [from, to] = boot?.span ?? [joint, joint];
    if (joint > from && joint < to) continue;
    tell(["wing", "boot", "joints", i], {
      expected: `a joint between the ends of the boot, ${from} and ${to} m`,
      found: `${joint} m`,
    });
  }
}

function spansRunUp(geometry: Geometry, tell: Report): void {
  const { fin, windscreen, windows, sideWindows, door, hatch } = geometry;
  const spans: readonly (readonly [Path, readonly [number, number] | undefined])[] = [
    [["fin", "span"], fin?.span],
    [["windscreen", "x"], windscreen?.x],
    ...windows.map((span, i) => [["windows", i], span] as const),
    ...sideWindows.flatMap(({ x, z }, i) => [
      [["sideWindows", i, "x"], x] as const,
      [["sideWindows", i, "z"], z] as const,
    ]),
    [["door", "x"], door?.x],
    [["door", "z"], door?.z],
    [["hatch", "x"], hatch?.x],
  ];
  for (const [path, span] of spans) {
    if (span === undefined || span[0] < span[1]) continue;
    tell(path, {
      expected: "from and to in metres, the lower value first",
      found: `[${span.join(", ")}]`,
    });
  }
}

/** The side outlines go once round what they enclose. */
function outlinesDoNotCross({ fin, windscreen }: Geometry, tell: Report): void {
  const outlines = [
    [["fin", "outline"], fin?.outline],
    [["windscreen", "side"], windscreen?.side],
  ] as const;
  for (const [path, outline] of outlines) {
    const found = outline === undefined ? undefined : crossing(outline);
    if (found === undefined) continue;
    tell([...path, found[1]], {
      expected: "an outline that does not cross itself",
      found: `the edge after corner ${found[1] + 1} crosses that after corner ${found[0] + 1}`,
      remedy: "put the corners in order, one after the other round the edge",
    });
  }
}

type Corner = readonly [x_m: number, z_m: number];

/** The first two edges of a closed outline that cross, each by the corner it begins at. */
function crossing(outline: readonly Corner[]): readonly [number, number] | undefined {
  const edge = (at: number) => [outline[at], outline[(at + 1) % outline.length]] as const;
  for (let i = 0; i < outline.length; i++) {
    for (let j = i + 2; j < outline.length; j++) {
      if (i === 0 && j === outline.length - 1) continue; // they share a corner
      const [[a, b], [c, d]] = [edge(i), edge(j)];
      if (a === undefined || b === undefined || c === undefined || d === undefined) continue;
      if (isBetween(turn(a, b, c), turn(a, b, d)) && isBetween(turn(c, d, a), turn(c, d, b))) return [i, j];
    }
  }
  return undefined;
}

const turn = (a: Corner, b: Corner, c: Corner): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
const isBetween = (one: number, other: number): boolean => (one > 0 && other < 0) || (one < 0 && other > 0);

const LEAST_WHEELS = 3;

function standsOnItsWheels({ wheels, propellers }: Geometry, isMono: boolean, tell: Report): void {
  for (const [i, { top, diameter }] of wheels.entries()) {
    if (top > diameter / 2) continue;
    tell(["wheels", i, "top"], {
      expected: `a leg that reaches above the axle, ${diameter / 2} m`,
      found: `${top} m`,
    });
  }
  if (!isMono && wheels.length < LEAST_WHEELS) {
    tell(["wheels"], {
      expected: `${LEAST_WHEELS} wheels or more, or the landing gear of a mono-wheel`,
      found: String(wheels.length),
      remedy: "add the wheel, or say `gear: mono-wheel`",
    });
  } else if (!isMono && (!wheels.some(({ y }) => y < 0) || !wheels.some(({ y }) => y > 0))) {
    tell(["wheels"], {
      expected: "a wheel on each side of the centre line",
      found: `wheels at y = ${wheels.map(({ y }) => y).join(", ")} m`,
      remedy: "y is to the right: the left wheel has a minus",
    });
  }
  for (const [i, { z, radius }] of propellers.entries()) {
    if (z > radius) continue;
    tell(["propellers", i, "radius"], {
      expected: `blades that clear the ground, shorter than ${z} m`,
      found: `${radius} m`,
    });
  }
}
