import type { Part } from "./parts.ts";
import { byMainWheel, inCabin, onFuselage, onTailplane, onWing } from "./place.ts";

const inside = (id: string, name: string, place: Part["place"]): Part => ({
  id,
  of: "glider",
  name,
  area: "inside",
  sides: "centre",
  place,
  stance: "seat",
});

/** What a glider has and an aircraft with an engine has not. */
export const GLIDER_PARTS: readonly Part[] = [
  inside("airbrake-lever", "Airbrake lever", inCabin(0.4, -0.45, 0.5)),
  inside("release-knob", "Release knob", inCabin(0.34, -0.2, 0.6)),
  inside("canopy-release", "Canopy jettison", inCabin(0.36, 0.4, 0.7)),
  inside("ballast", "Ballast and what lies loose", inCabin(0.45, 0.1, 0.2)),
  {
    id: "canopy",
    of: "glider",
    name: "Canopy",
    area: "fuselage",
    sides: "centre",
    place: onFuselage(0.2, 0, 0.95),
    stance: "nose",
  },
  {
    id: "pitot",
    of: "glider",
    name: "Pitot in the nose",
    area: "fuselage",
    sides: "centre",
    place: onFuselage(0.005, 0, 0.5),
    stance: "nose",
  },
  {
    id: "glider-hook",
    of: "glider",
    name: "Release hook",
    area: "fuselage",
    sides: "centre",
    place: byMainWheel(-0.25, 0, 0.3),
    stance: "main-wheel",
  },
  {
    id: "wing-pins",
    of: "glider",
    name: "Main pins of the wing",
    area: "fuselage",
    sides: "centre",
    place: onFuselage(0.4, 0, 0.8),
    stance: "left-trailing-edge",
  },
  {
    id: "control-joints",
    of: "glider",
    name: "control connections",
    area: "wings",
    sides: "both",
    place: onWing(0.06, 0.6),
    stance: "side-trailing-edge",
  },
  {
    id: "airbrake",
    of: "glider",
    name: "airbrake",
    area: "wings",
    sides: "both",
    place: onWing(0.42, 0.5),
    stance: "side-trailing-edge",
  },
  {
    id: "tip",
    of: "glider",
    name: "wing tip",
    area: "wings",
    sides: "both",
    place: onWing(1, 0.5),
    stance: "side-leading-edge",
  },
  {
    id: "tailplane-bolt",
    of: "glider",
    name: "Fastening of the tailplane",
    area: "tail",
    sides: "centre",
    place: (shape, figures) => {
      const [x_m, , z_m] = onTailplane(0, 0.05)(shape, figures);
      return [x_m, 0, z_m];
    },
    stance: "right-tail",
  },
];
