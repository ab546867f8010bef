import type { Geometry } from "../schema/geometry.ts";
import type { Figures } from "./figures.ts";

/** Lengths below are those of an aircraft of this length, and grow with it. From memory of such drawings. */
const DRAWN_AT_m = 7.5;
/** How a tail-wheel aircraft sits, as rise for each metre forward. About ten degrees; from memory. */
const TAIL_DOWN_1 = 0.17;
const BLADE_CLEARANCE_m = 0.28;

/** The shape, and the heights and stations at which other things are put. */
export interface Shape {
  readonly geometry: Geometry;
  readonly halfWidth_m: number;
  /** Fuselage top and bottom at a station. */
  readonly topAt_m: (x_m: number) => number;
  readonly bottomAt_m: (x_m: number) => number;
  readonly mainWheel: { readonly x_m: number; readonly y_m: number };
  readonly engines: readonly { readonly x_m: number; readonly y_m: number; readonly z_m: number }[];
}

const cm = (metres: number): number => Math.round(metres * 100) / 100;

/** A drawing of the aircraft from a few figures: the layout is right, each measure is there to be mended. */
export function shapeOf(figures: Figures): Shape {
  const { span_m, length_m, wing, gear, engines, seats, engine } = figures;
  const grow = length_m / DRAWN_AT_m;
  const isTwin = engines === 2;
  const halfWidth_m = cm(Math.min(0.85, Math.max(0.38, seats <= 2 && length_m < 8 ? 0.5 : 0.075 * length_m)));
  const radius_m = cm(Math.min(1.3, Math.max(0.75, 0.12 * length_m * (isTwin ? 0.85 : 1))));
  const axis_m = radius_m + BLADE_CLEARANCE_m;
  const main_x_m = gear === "tail-wheel" ? 0.22 * length_m : 0.47 * length_m;
  /** How much higher a place is than it would be with the fuselage level. */
  const tilt_m = (x_m: number): number => (gear === "tail-wheel" ? (main_x_m - x_m) * TAIL_DOWN_1 : 0);
  // with its tail down an aircraft must stand higher, or the fuselage aft would lie on the ground
  const base_m = gear === "tail-wheel" ? axis_m + 0.1 : axis_m;
  const at = (
    share_1: number,
    width_1: number,
    up_m: number,
    down_m: number,
  ): Geometry["fuselage"][number] => {
    const x_m = share_1 * length_m;
    const z_m = base_m + tilt_m(x_m);
    const bottom_m = cm(Math.max(0.2, z_m + down_m * grow));
    return [cm(x_m), cm(halfWidth_m * width_1), cm(Math.max(bottom_m + 0.06, z_m + up_m * grow)), bottom_m];
  };
  const fuselage = [
    at(isTwin ? 0.01 : 0.035, isTwin ? 0.1 : 0.35, isTwin ? 0.05 : 0.2, -0.2),
    at(0.12, 0.78, 0.42, -0.46),
    at(0.26, 0.95, 0.52, -0.56),
    at(0.36, 1, 0.96, -0.58),
    at(0.52, 1, 0.94, -0.54),
    at(0.74, 0.42, 0.48, -0.16),
    at(0.92, 0.14, 0.38, 0.06),
    at(0.985, 0.06, 0.34, 0.14),
  ];
  const heights = (pick: 2 | 3) => (x_m: number) => between(fuselage, x_m, pick);
  const [topAt_m, bottomAt_m] = [heights(2), heights(3)];

  const half_m = span_m / 2;
  const tipRound = 0.15;
  const rootChord = cm(Math.min(0.26 * length_m, 0.145 * span_m));
  const rootLeading = cm((wing === "high" ? 0.27 : 0.31) * length_m);
  const rootZ = wing === "high" ? topAt_m(rootLeading + rootChord / 2) : bottomAt_m(rootLeading) + 0.08;
  const rise_1 = wing === "high" ? 0.025 : 0.09;
  const tip_y_m = cm(half_m - tipRound);
  const root_y_m = cm(halfWidth_m * 0.95);
  const tail = 0.86 * length_m;
  const finTop_m = base_m + tilt_m(0.95 * length_m) + 1.45 * grow;
  const engineSpots = isTwin
    ? ([1, -1] as const).map((side) => ({
        x_m: cm(rootLeading - 0.13 * length_m),
        y_m: cm(side * Math.max(halfWidth_m + radius_m + 0.2, 0.16 * span_m)),
        z_m: cm(axis_m),
      }))
    : [{ x_m: cm(0.03 * length_m), y_m: 0, z_m: cm(base_m + tilt_m(0.03 * length_m)) }];
  const main_y_m = isTwin
    ? Math.abs(engineSpots[0]?.y_m ?? 1.7)
    : cm(
        wing === "low"
          ? Math.max(halfWidth_m + 0.6, 0.13 * span_m)
          : Math.max(halfWidth_m + 0.45, 0.1 * span_m),
      );
  const legTop_m = cm(
    Math.max(0.5, wing === "low" ? rootZ + (main_y_m - root_y_m) * rise_1 : bottomAt_m(main_x_m) + 0.1),
  );
  const mainWheel = (y: number) => ({
    x: cm(main_x_m),
    y,
    width: 0.16,
    diameter: 0.42,
    top: legTop_m,
  });
  const last_x_m = 0.94 * length_m;

  const geometry: Geometry = {
    fuselage,
    wing: {
      root: { y: root_y_m, leadingEdge: rootLeading, chord: rootChord, z: cm(rootZ) },
      tip: {
        y: tip_y_m,
        leadingEdge: cm(rootLeading + 0.15 * rootChord),
        chord: cm(rootChord * 0.7),
        z: cm(rootZ + (tip_y_m - root_y_m) * rise_1),
      },
      tipRound,
      flap: { from: cm(root_y_m + 0.08), to: cm(0.54 * half_m), hinge: 0.74 },
      aileron: { from: cm(0.58 * half_m), to: cm(0.94 * half_m), hinge: 0.75 },
      tank: [cm(root_y_m + 0.3), cm(0.6 * half_m)],
    },
    tailplane: {
      root: {
        y: 0.1,
        leadingEdge: cm(tail),
        chord: cm(0.12 * length_m),
        z: cm(base_m + tilt_m(tail) + 0.36 * grow),
      },
      tip: {
        y: cm(0.16 * span_m),
        leadingEdge: cm(tail + 0.02 * length_m),
        chord: cm(0.085 * length_m),
        z: cm(base_m + tilt_m(tail) + 0.36 * grow),
      },
      tipRound: 0.08,
      elevator: 0.6,
      trimTab: "right",
    },
    fin: {
      span: [cm(0.8 * length_m), cm(length_m)],
      outline: [
        [cm(0.78 * length_m), cm(topAt_m(0.78 * length_m))],
        [cm(0.9 * length_m), cm(finTop_m - 0.05)],
        [cm(0.97 * length_m), cm(finTop_m)],
        [cm(length_m), cm(base_m + tilt_m(length_m) + 0.3 * grow)],
      ],
      hinge: [
        [cm(0.935 * length_m), cm(finTop_m)],
        [cm(0.955 * length_m), cm(base_m + tilt_m(0.955 * length_m) + 0.3 * grow)],
      ],
    },
    nacelles: isTwin ? engineSpots.map(({ x_m, y_m, z_m }) => nacelle(x_m, y_m, z_m, length_m)) : [],
    propellers: engineSpots.map(({ x_m, y_m, z_m }) => ({
      x: x_m,
      y: y_m,
      z: z_m,
      radius: radius_m,
      spinner: true,
    })),
    wheels: [
      gear === "nose-wheel"
        ? {
            x: cm(0.15 * length_m),
            y: 0,
            width: 0.14,
            diameter: 0.36,
            top: cm(bottomAt_m(0.15 * length_m) + 0.1),
          }
        : { x: cm(last_x_m), y: 0, width: 0.1, diameter: 0.2, top: cm(Math.max(0.3, bottomAt_m(last_x_m))) },
      mainWheel(main_y_m),
      mainWheel(-main_y_m),
    ],
    frames: isTwin ? [] : [cm(0.13 * length_m)],
    ...(engine === "piston" && !isTwin ? { exhaust: cm(0.12 * length_m) } : {}),
    windscreen: { x: [cm(0.28 * length_m), cm(0.36 * length_m)], halfWidth: cm(halfWidth_m * 0.9) },
    windows: [[cm(0.38 * length_m), cm(0.46 * length_m)]],
    sideWindows: [
      {
        x: [cm(0.38 * length_m), cm(0.46 * length_m)],
        z: [cm(topAt_m(0.42 * length_m) - 0.5 * grow), cm(topAt_m(0.42 * length_m) - 0.15 * grow)],
      },
    ],
    door: {
      x: [cm(0.4 * length_m), cm(0.48 * length_m)],
      z: [cm(bottomAt_m(0.44 * length_m) + 0.15 * grow), cm(topAt_m(0.44 * length_m) - 0.12 * grow)],
      side: "left",
    },
  };
  return {
    geometry,
    halfWidth_m,
    topAt_m,
    bottomAt_m,
    mainWheel: { x_m: cm(main_x_m), y_m: main_y_m },
    engines: engineSpots,
  };
}

function nacelle(x_m: number, y_m: number, z_m: number, length_m: number): Geometry["nacelles"][number] {
  const station = (share_1: number, half_m: number, up_m: number, down_m: number) =>
    [cm(x_m + share_1 * length_m), half_m, cm(z_m + up_m), cm(z_m - down_m)] as const;
  return {
    y: y_m,
    stations: [
      station(0.006, 0.16, 0.15, 0.15),
      station(0.03, 0.31, 0.25, 0.27),
      station(0.1, 0.36, 0.31, 0.33),
      station(0.2, 0.33, 0.26, 0.32),
      station(0.3, 0.03, 0.05, 0.07),
    ],
  };
}

/** A height of the fuselage between its stations. */
function between(stations: Geometry["fuselage"], x_m: number, pick: 2 | 3): number {
  const next = stations.findIndex(([x]) => x >= x_m);
  const after = stations[next < 0 ? stations.length - 1 : next];
  const before = stations[Math.max(0, next < 0 ? stations.length - 1 : next - 1)] ?? after;
  if (after === undefined || before === undefined) return 0;
  const width_m = after[0] - before[0];
  const share_1 = width_m > 0 ? Math.min(1, Math.max(0, (x_m - before[0]) / width_m)) : 0;
  return before[pick] + share_1 * (after[pick] - before[pick]);
}
