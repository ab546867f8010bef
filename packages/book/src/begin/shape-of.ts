import { SPINNER_REACH_m } from "../drawing/propeller.ts";
import type { Geometry } from "../schema/geometry.ts";
import type { Figures } from "./figures.ts";
import { cm } from "./round.ts";
import { type Body, bodyOf } from "./shape-body.ts";
import { tailOf, wingOf } from "./shape-surfaces.ts";

/** Where a propeller turns. */
interface EngineSpot {
  readonly x_m: number;
  readonly y_m: number;
  readonly z_m: number;
}

/**
 * A drawing of the aircraft from a few figures: the layout is right, each measure is there to be mended. Its x is
 * counted from the foremost part.
 */
export function shapeOf(figures: Figures): Geometry {
  const { length_m, engine, engines } = figures;
  const body = bodyOf(figures);
  const wing = wingOf(figures, body);
  const engineSpots = spotsOf(figures, body, wing);
  const isTwin = engines === 2;
  const isGlider = engine === "none";
  const main_y_m = mainWheelOut_m(figures, body, engineSpots);
  return {
    fuselage: body.fuselage,
    wing,
    ...tailOf(figures, body),
    nacelles: isTwin ? engineSpots.map((spot) => nacelle(spot, length_m)) : [],
    propellers: engineSpots.map(({ x_m, y_m, z_m }) => ({
      x: x_m,
      y: y_m,
      z: z_m,
      radius: body.radius_m,
      spinner: true,
    })),
    wheels: wheelsOf(figures, body, wing, main_y_m),
    frames: isTwin || isGlider ? [] : [cm(0.13 * length_m)],
    ...(engine === "piston" && !isTwin ? { exhaust: cm(0.12 * length_m) } : {}),
    ...(isGlider ? canopy(length_m, body) : cabin(length_m, body)),
  };
}

function spotsOf(
  { length_m, span_m, engines }: Figures,
  { halfWidth_m, radius_m, base_m, tilt_m }: Body,
  wing: Geometry["wing"],
): readonly EngineSpot[] {
  // the tip of the spinner is where the length begins
  const x_m = SPINNER_REACH_m;
  if (engines === 1) return [{ x_m: cm(x_m), y_m: 0, z_m: cm(base_m + tilt_m(x_m)) }];
  if (engines === 0) return [];
  return ([1, -1] as const).map((side) => ({
    x_m: cm(wing.root.leadingEdge - 0.13 * length_m),
    y_m: side * cm(Math.max(halfWidth_m + radius_m + 0.2, 0.16 * span_m)),
    z_m: cm(base_m),
  }));
}

function mainWheelOut_m(
  { span_m, gear, wing, engines }: Figures,
  { halfWidth_m }: Body,
  engineSpots: readonly EngineSpot[],
): number {
  if (gear === "mono-wheel") return 0;
  if (engines === 2) return Math.abs(engineSpots[0]?.y_m ?? 1.7);
  return cm(
    wing === "low" ? Math.max(halfWidth_m + 0.6, 0.13 * span_m) : Math.max(halfWidth_m + 0.45, 0.1 * span_m),
  );
}

function wheelsOf(
  { length_m, gear, wing: position }: Figures,
  { bottomAt_m, main_x_m }: Body,
  { root, tip }: Geometry["wing"],
  main_y_m: number,
): Geometry["wheels"] {
  const rise_1 = (tip.z - root.z) / (tip.y - root.y);
  const top_m = position === "low" ? root.z + (main_y_m - root.y) * rise_1 : bottomAt_m(main_x_m) + 0.1;
  const main = (y: number) => ({
    x: cm(main_x_m),
    y,
    width: 0.16,
    diameter: 0.42,
    top: cm(Math.max(gear === "mono-wheel" ? 0.3 : 0.5, top_m)),
  });
  const nose_x_m = 0.15 * length_m;
  const last_x_m = 0.94 * length_m;
  const small =
    gear === "nose-wheel"
      ? { x: cm(nose_x_m), y: 0, width: 0.14, diameter: 0.36, top: cm(bottomAt_m(nose_x_m) + 0.1) }
      : { x: cm(last_x_m), y: 0, width: 0.1, diameter: 0.2, top: cm(Math.max(0.3, bottomAt_m(last_x_m))) };
  return gear === "mono-wheel" ? [small, main(0)] : [small, main(main_y_m), main(-main_y_m)];
}

/** One pane that opens, over the seats of a glider. */
const canopy = (length_m: number, { halfWidth_m }: Body) =>
  ({
    windows: [],
    sideWindows: [],
    hatch: { x: [cm(0.1 * length_m), cm(0.32 * length_m)], halfWidth: cm(halfWidth_m * 0.86) },
  }) as const;

function cabin(length_m: number, { halfWidth_m, grow, topAt_m, bottomAt_m }: Body) {
  const [roof_m, sill_m] = [topAt_m(0.42 * length_m), bottomAt_m(0.44 * length_m)];
  const pane = [cm(0.38 * length_m), cm(0.46 * length_m)] as const;
  return {
    windscreen: { x: [cm(0.28 * length_m), cm(0.36 * length_m)], halfWidth: cm(halfWidth_m * 0.9) },
    windows: [pane],
    sideWindows: [{ x: pane, z: [cm(roof_m - 0.5 * grow), cm(roof_m - 0.15 * grow)] }],
    door: {
      x: [cm(0.4 * length_m), cm(0.48 * length_m)],
      z: [cm(sill_m + 0.15 * grow), cm(topAt_m(0.44 * length_m) - 0.12 * grow)],
      side: "left",
    },
  } as const;
}

function nacelle({ x_m, y_m, z_m }: EngineSpot, length_m: number): Geometry["nacelles"][number] {
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
