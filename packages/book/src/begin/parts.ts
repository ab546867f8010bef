import type { Figures } from "./figures.ts";
import { GLIDER_PARTS } from "./parts-glider.ts";
import {
  byEngine,
  byMainWheel,
  bySmallWheel,
  inCabin,
  onFuselage,
  onTailplane,
  onWing,
  type PlaceOn,
} from "./place.ts";

/** Something on an aircraft that is looked at, and where it sits. */
export interface Part {
  readonly id: string;
  readonly name: string;
  readonly area: AreaId;
  /** `both`: there is one on each side, placed on the right and mirrored; `engine`: one for each engine. */
  readonly sides: "left" | "right" | "centre" | "both" | "engine";
  readonly place: PlaceOn;
  /** From where it is looked at; `side` in it stands for left or right. */
  readonly stance: string;
  /** Which aircraft may have it: those with an engine, gliders, or any; left out, those with an engine. */
  readonly of?: "powered" | "glider" | "any";
  /** Whether an aircraft of these figures has it; left out, every one. */
  readonly when?: (figures: Figures) => boolean;
}

export type AreaId =
  | "inside"
  | "fuselage"
  | "tail"
  | "right-wing"
  | "left-wing"
  | "wings"
  | "gear"
  | "engine";

const piston = ({ engine }: Figures): boolean => engine === "piston";
const turboprop = ({ engine }: Figures): boolean => engine === "turboprop";
const single = ({ engines }: Figures): boolean => engines === 1;
const inside = (
  id: string,
  name: string,
  place: PlaceOn,
  when?: Part["when"],
  of: Part["of"] = "powered",
): Part => ({
  id,
  of,
  name,
  area: "inside",
  sides: "centre",
  place,
  stance: "seat",
  ...(when === undefined ? {} : { when }),
});

/** In no order: the order of a walk is that of the stances. */
export const PARTS: readonly Part[] = [
  inside("papers", "Papers", inCabin(0.42, 0.2, 0.3), undefined, "any"),
  inside("controls-lock", "Controls lock", inCabin(0.345, -0.3, 0.55), undefined, "any"),
  inside("switches", "Master and ignition switches", onFuselage(0.33, -0.5, 0.6)),
  inside("levers", "Levers", onFuselage(0.335, 0, 0.5)),
  inside("fuel-selector", "Fuel selector", onFuselage(0.36, 0.05, 0.15)),
  inside("fuel-gauges", "Fuel gauges", onFuselage(0.33, 0.4, 0.62)),
  inside("flap-lever", "Flap lever", onFuselage(0.37, 0.1, 0.25)),
  inside("lights-switch", "Light switches", onFuselage(0.332, 0.2, 0.55)),
  inside("belts", "Belts and seats", inCabin(0.44, 0, 0.35), undefined, "any"),
  inside("extinguisher", "Fire extinguisher", onFuselage(0.4, -0.1, 0.2)),
  inside("oxygen", "Oxygen panel", onFuselage(0.36, 0.6, 0.4), ({ pressurised }) => pressurised),
  inside("tow-release", "Tow release", onFuselage(0.36, -0.4, 0.4), ({ tows }) => tows),
  inside("tow-mirror", "Tow mirror", onFuselage(0.32, -0.2, 0.9), ({ tows }) => tows),

  {
    id: "door",
    name: "Left door",
    area: "fuselage",
    sides: "left",
    place: onFuselage(0.44, -0.9, 0.5),
    stance: "left-trailing-edge",
  },
  {
    id: "windows",
    name: "Windscreen and windows",
    area: "fuselage",
    sides: "centre",
    place: onFuselage(0.33, 0, 0.9),
    stance: "left-leading-edge",
  },
  {
    id: "baggage",
    name: "Baggage and its door",
    area: "fuselage",
    sides: "left",
    place: onFuselage(0.56, -0.7, 0.5),
    stance: "left-tail",
  },
  {
    id: "static-port",
    of: "any",
    name: "static port",
    area: "fuselage",
    sides: "both",
    place: onFuselage(0.66, 0.5, 0.5),
    stance: "side-tail",
  },
  {
    id: "antennas",
    name: "Antennas",
    area: "fuselage",
    sides: "centre",
    place: onFuselage(0.6, 0, 1),
    stance: "right-tail",
  },
  {
    id: "skin",
    of: "any",
    name: "fuselage side",
    area: "fuselage",
    sides: "both",
    place: onFuselage(0.7, 0.4, 0.4),
    stance: "side-tail",
  },

  {
    id: "tailplane",
    of: "any",
    name: "tailplane",
    area: "tail",
    sides: "both",
    place: onTailplane(0.6, 0.2),
    stance: "side-tail",
  },
  {
    id: "elevator",
    of: "any",
    name: "elevator and its hinges",
    area: "tail",
    sides: "both",
    place: onTailplane(0.7, 0.85),
    stance: "side-tail",
  },
  {
    id: "trim-tab",
    name: "Right trim tab",
    area: "tail",
    sides: "right",
    place: onTailplane(0.4, 0.97),
    stance: "behind-tail",
  },
  {
    id: "rudder",
    of: "any",
    name: "Rudder and its hinges",
    area: "tail",
    sides: "centre",
    place: ({ geometry: { fin } }) => [(fin?.span[1] ?? 7) - 0.1, 0, (fin?.outline[2]?.[1] ?? 1.5) - 0.5],
    stance: "behind-tail",
    when: ({ tail }) => tail !== "v",
  },
  {
    id: "tail-light",
    name: "Tail light",
    area: "tail",
    sides: "centre",
    place: (shape, figures) => {
      const { fin } = shape.geometry;
      const [aft_m, , up_m] = onFuselage(1, 0, 0.5)(shape, figures);
      return [fin?.span[1] ?? aft_m, 0.02, fin?.outline[3] === undefined ? up_m : fin.outline[3][1] + 0.05];
    },
    stance: "behind-tail",
  },
  {
    id: "tow-hook",
    name: "Tow hook",
    area: "tail",
    sides: "centre",
    place: onFuselage(0.97, 0, 0),
    stance: "behind-tail",
    when: ({ tows }) => tows,
  },

  {
    id: "flap",
    name: "flap",
    area: "wings",
    sides: "both",
    place: onWing(0.3, 0.9),
    stance: "side-trailing-edge",
  },
  {
    id: "aileron",
    of: "any",
    name: "aileron and its hinges",
    area: "wings",
    sides: "both",
    place: onWing(0.76, 0.88),
    stance: "side-trailing-edge",
  },
  {
    id: "wicks",
    name: "static dischargers",
    area: "wings",
    sides: "both",
    place: onWing(0.9, 1),
    stance: "side-trailing-edge",
    when: turboprop,
  },
  {
    id: "tip-light",
    name: "tip light",
    area: "wings",
    sides: "both",
    place: onWing(1, 0.3),
    stance: "side-leading-edge",
  },
  {
    id: "leading-edge",
    of: "any",
    name: "leading edge and upper side",
    area: "wings",
    sides: "both",
    place: onWing(0.7, 0.05),
    stance: "side-leading-edge",
  },
  {
    id: "boot",
    name: "wing ice protection",
    area: "wings",
    sides: "both",
    place: onWing(0.55, 0),
    stance: "side-leading-edge",
    when: turboprop,
  },
  {
    id: "fuel-cap",
    name: "fuel cap",
    area: "wings",
    sides: "both",
    place: onWing(0.48, 0.3),
    stance: "side-leading-edge",
  },
  {
    id: "tank-drain",
    name: "tank drain",
    area: "wings",
    sides: "both",
    place: onWing(0.24, 0.6),
    stance: "side-trailing-edge",
  },
  {
    id: "fuel-vent",
    name: "fuel vent",
    area: "wings",
    sides: "both",
    place: onWing(0.62, 0.7),
    stance: "side-trailing-edge",
  },
  {
    id: "tie-down",
    of: "any",
    name: "tie-down ring",
    area: "wings",
    sides: "both",
    place: onWing(0.56, 0.35),
    stance: "side-leading-edge",
  },
  {
    id: "strut",
    name: "lift strut",
    area: "wings",
    sides: "both",
    place: onWing(0.4, 0.32),
    stance: "side-leading-edge",
    when: ({ wing, engine }) => wing === "high" && engine === "piston",
  },
  {
    id: "pitot",
    name: "Left pitot tube",
    area: "left-wing",
    sides: "left",
    place: onWing(0.66, -0.02),
    stance: "left-leading-edge",
  },
  {
    id: "stall-sensor",
    name: "Left stall sensor",
    area: "left-wing",
    sides: "left",
    place: onWing(0.78, 0),
    stance: "left-leading-edge",
  },

  {
    id: "main-tyre",
    of: "any",
    name: "main tyre",
    area: "gear",
    sides: "both",
    place: byMainWheel(0, 0, 0.22),
    stance: "side-main-wheel",
  },
  {
    id: "main-brake",
    of: "any",
    name: "brake",
    area: "gear",
    sides: "both",
    place: byMainWheel(0.05, 0.12, 0.24),
    stance: "side-main-wheel",
  },
  {
    id: "main-leg",
    name: "main leg",
    area: "gear",
    sides: "both",
    place: byMainWheel(0.02, 0.1, 0.55),
    stance: "side-main-wheel",
  },
  {
    id: "main-doors",
    of: "any",
    name: "gear doors and well",
    area: "gear",
    sides: "both",
    place: byMainWheel(0.1, 0.3, 0.7),
    stance: "side-main-wheel",
    when: ({ retractable }) => retractable,
  },
  {
    id: "nose-wheel",
    name: "Nose wheel and its tyre",
    area: "gear",
    sides: "centre",
    place: bySmallWheel(0, 0.2),
    stance: "nose",
    when: ({ gear }) => gear === "nose-wheel",
  },
  {
    id: "nose-leg",
    name: "Nose leg",
    area: "gear",
    sides: "centre",
    place: bySmallWheel(0.08, 0.5),
    stance: "nose",
    when: ({ gear }) => gear === "nose-wheel",
  },
  {
    id: "tail-wheel",
    of: "any",
    name: "Tail wheel, tyre and spring",
    area: "gear",
    sides: "centre",
    place: bySmallWheel(0, 0.15),
    stance: "behind-tail",
    when: ({ gear }) => gear !== "nose-wheel",
  },

  {
    id: "blades",
    name: "propeller blades",
    area: "engine",
    sides: "engine",
    place: byEngine(0, 0.35, 0.25),
    stance: "engine-front",
  },
  {
    id: "spinner",
    name: "spinner",
    area: "engine",
    sides: "engine",
    place: byEngine(-0.1, 0, 0),
    stance: "engine-front",
  },
  {
    id: "inlet",
    name: "air inlets",
    area: "engine",
    sides: "engine",
    place: byEngine(0.15, 0.1, -0.12),
    stance: "engine-front",
  },
  {
    id: "cowling",
    name: "cowling and its latches",
    area: "engine",
    sides: "engine",
    place: byEngine(0.6, 0.25, 0.15),
    stance: "engine-side",
  },
  {
    id: "oil",
    name: "oil filler",
    area: "engine",
    sides: "engine",
    place: byEngine(0.7, 0.15, 0.3),
    stance: "engine-side",
  },
  {
    id: "exhaust",
    name: "exhaust",
    area: "engine",
    sides: "engine",
    place: byEngine(0.75, 0.2, -0.3),
    stance: "engine-side",
  },
  {
    id: "fuel-strainer",
    name: "fuel strainer",
    area: "engine",
    sides: "engine",
    place: byEngine(0.9, -0.1, -0.3),
    stance: "engine-side",
    when: piston,
  },
  {
    id: "belt",
    name: "Alternator belt",
    area: "engine",
    sides: "centre",
    place: byEngine(0.2, -0.15, -0.05),
    stance: "nose",
    when: (figures) => piston(figures) && single(figures),
  },

  ...GLIDER_PARTS,
];
