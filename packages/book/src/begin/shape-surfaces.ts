import type { Geometry } from "../schema/geometry.ts";
import type { Figures } from "./figures.ts";
import { cm, mm } from "./round.ts";
import type { Body } from "./shape-body.ts";

const TIP_ROUND_m = 0.15;
/** How much a wing rises for each metre outwards. From memory of such drawings. */
const RISE_1 = { high: 0.025, mid: 0.05, low: 0.09 } as const;
/** Where its leading edge begins, as a share of the length. From memory of such drawings. */
const LEADING_1 = { high: 0.27, mid: 0.27, low: 0.31 } as const;
const GLIDER_LEADING_1 = 0.34;

export function wingOf(figures: Figures, body: Body): Geometry["wing"] {
  const { span_m, length_m, wing, engine } = figures;
  const isGlider = engine === "none";
  const half_m = span_m / 2;
  const chord_m = cm(isGlider ? 0.062 * span_m : Math.min(0.26 * length_m, 0.145 * span_m));
  const leading_m = cm((isGlider ? GLIDER_LEADING_1 : LEADING_1[wing]) * length_m);
  const root_y_m = cm(body.halfWidth_m * 0.95);
  const root_z_m = rootHeight_m(wing, leading_m, chord_m, body);
  // to the millimetre, so that the span that is asked is the span that is drawn
  const tip_y_m = mm(half_m - TIP_ROUND_m);
  return {
    root: { y: root_y_m, leadingEdge: leading_m, chord: chord_m, z: cm(root_z_m) },
    tip: {
      y: tip_y_m,
      leadingEdge: cm(leading_m + 0.15 * chord_m),
      chord: cm(chord_m * 0.7),
      z: cm(root_z_m + (tip_y_m - root_y_m) * RISE_1[wing]),
    },
    tipRound: TIP_ROUND_m,
    flap: { from: cm(root_y_m + 0.08), to: cm(0.54 * half_m), hinge: 0.74 },
    aileron: { from: cm(0.58 * half_m), to: cm(0.94 * half_m), hinge: 0.75 },
    ...(isGlider ? {} : { tank: [cm(root_y_m + 0.3), cm(0.6 * half_m)] }),
    ...(isBraced(figures)
      ? { struts: [strut(figures, body, { leading_m, chord_m, root_y_m, root_z_m })] }
      : {}),
  };
}

function rootHeight_m(wing: Figures["wing"], leading_m: number, chord_m: number, body: Body): number {
  const { topAt_m, bottomAt_m } = body;
  const middle_m = leading_m + chord_m / 2;
  if (wing === "high") return topAt_m(middle_m);
  if (wing === "low") return bottomAt_m(leading_m) + 0.08;
  return bottomAt_m(middle_m) + 0.6 * (topAt_m(middle_m) - bottomAt_m(middle_m));
}

/** Common practice for a light single with a high wing; where it is not so, the strut is taken out of the outline. */
const isBraced = ({ wing, engine, engines, retractable }: Figures): boolean =>
  wing === "high" && engine === "piston" && engines === 1 && !retractable;

interface Root {
  readonly leading_m: number;
  readonly chord_m: number;
  readonly root_y_m: number;
  readonly root_z_m: number;
}

function strut({ span_m, wing }: Figures, { bottomAt_m }: Body, root: Root) {
  const { leading_m, chord_m, root_y_m, root_z_m } = root;
  const head_y_m = cm(0.225 * span_m);
  return {
    foot: [cm(leading_m + 0.3 * chord_m), root_y_m, cm(bottomAt_m(leading_m) + 0.12)],
    head: [cm(leading_m + 0.36 * chord_m), head_y_m, cm(root_z_m + (head_y_m - root_y_m) * RISE_1[wing])],
  } as const;
}

/** Where the leading edge of the tailplane begins, as a share of the length. From memory of such drawings. */
const ROOT_1 = { conventional: 0.86, t: 0.885, v: 0.86 } as const;

/** Where the leading edge of the tailplane is drawn, metres aft of the foremost part. */
export const tailRoot_m = ({ tail, length_m }: Figures): number => cm(ROOT_1[tail] * length_m);

/** Tailplane and fin, as the tail is put together. */
export function tailOf(figures: Figures, body: Body): Pick<Geometry, "tailplane" | "fin"> {
  const { span_m, length_m, height_m, tail, engine } = figures;
  const { base_m, tilt_m, grow, topAt_m } = body;
  const isGlider = engine === "none";
  const usualTop_m = base_m + tilt_m(0.95 * length_m) + (isGlider ? 1.05 : 1.45) * grow;
  // a fin still stands out above the fuselage
  const top_m = Math.max(height_m ?? usualTop_m, topAt_m(0.9 * length_m) + 0.5);
  const foot_m = (share_1: number) => base_m + tilt_m(share_1 * length_m) + (isGlider ? 0.1 : 0.3) * grow;
  const root_x_m = ROOT_1[tail] * length_m;
  const low_m = base_m + tilt_m(0.86 * length_m) + (isGlider ? 0.1 : 0.36) * grow;
  const root_z_m = tail === "t" ? top_m - 0.06 : low_m;
  const out_m = (isGlider ? 0.09 : 0.16) * span_m;
  // the halves of a V rise as high as a fin would, and steeply enough to be one
  const tip_z_m = tail === "v" ? Math.max(top_m, low_m + 0.45 * out_m) : root_z_m;
  return {
    tailplane: {
      root: {
        y: tail === "t" ? 0 : isGlider ? 0.04 : 0.1,
        leadingEdge: tailRoot_m(figures),
        chord: cm((isGlider ? 0.085 : 0.12) * length_m),
        z: cm(root_z_m),
      },
      tip: {
        y: cm(out_m),
        leadingEdge: cm(root_x_m + 0.02 * length_m),
        chord: cm((isGlider ? 0.055 : 0.085) * length_m),
        z: cm(tip_z_m),
      },
      tipRound: 0.08,
      elevator: 0.6,
      ...(isGlider ? {} : { trimTab: "right" }),
    },
    ...(tail === "v"
      ? {}
      : {
          fin: {
            span: [cm(0.8 * length_m), cm(length_m)],
            outline: [
              [cm(0.78 * length_m), cm(topAt_m(0.78 * length_m))],
              [cm(0.9 * length_m), cm(top_m - 0.05)],
              [cm(0.97 * length_m), cm(top_m)],
              [cm(length_m), cm(foot_m(1))],
            ],
            hinge: [
              [cm(0.935 * length_m), cm(top_m)],
              [cm(0.955 * length_m), cm(foot_m(0.955))],
            ],
          },
        }),
  };
}
