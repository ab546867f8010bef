import type { UnitId } from "@witnessmark/engine";

/** A check as a generated history knows it: its id, and what its gauge usually reads. */
export interface CheckLike {
  readonly id: string;
  readonly gauge?: { readonly id: string; readonly unit: UnitId; readonly usual: number };
}

const ONCE = [
  "papers",
  "controls-lock",
  "baggage",
  "bottle-pressure",
  "bottle-valve",
  "cabin-windows",
  "windscreen",
  "aerials-above",
  "aerials-below",
  "step",
  "nose-gear-door",
  "nose-gear-well",
  "hydraulic-level",
  "elevator-travel",
  "elevator-trim-tab",
  "rudder-travel",
  "rudder-trim-tab",
  "tail-deice",
  "parachute-hatch",
  "ground-power-door",
  "tail-light",
  "beacon",
  "air-probe",
  "cowling-latches",
  "cooler-exit",
  "exhaust",
  "propeller-blades",
  "spinner",
  "engine-inlet",
  "inlet-lip",
  "oil-level",
  "oil-cap",
  "breather",
  "cabin-air-exit",
  "cabin-door",
  "baggage-door",
  "battery-voltage",
  "tow-bar",
] as const; // one of each on the aircraft

const EACH_SIDE = [
  "static-port",
  "pitot-tube",
  "pitot-heat",
  "main-gear-door",
  "main-gear-well",
  "main-strut",
  "main-tyre-pressure",
  "main-tyre-tread",
  "brake",
  "axle",
  "wing-deice",
  "wing-panels",
  "aileron-travel",
  "aileron-trim-tab",
  "wing-dischargers",
  "flap-tracks",
  "flap-hinges",
  "landing-light",
  "wing-tip-light",
  "stall-vane",
  "fuel-cap",
  "fuel-vent",
  "fuel-drain",
  "fuel-dip",
  "elevator-dischargers",
  "stabiliser-deice",
] as const; // one on either side

const GAUGES: Readonly<Record<string, NonNullable<CheckLike["gauge"]>>> = {
  "bottle-pressure": { id: "bottle-gauge", unit: "psi", usual: 1780 },
  "hydraulic-level": { id: "hydraulic-glass", unit: "percent", usual: 80 },
  "oil-level": { id: "oil-dipstick", unit: "USqt", usual: 11.5 },
  "battery-voltage": { id: "voltmeter", unit: "V", usual: 25.6 },
  "main-tyre-pressure": { id: "tyre-gauge", unit: "bar", usual: 5.2 },
  "main-strut": { id: "strut-rule", unit: "mm", usual: 72 },
  "fuel-dip": { id: "dipstick", unit: "L", usual: 310 },
};

const checkLike = (what: string, id: string): CheckLike => {
  const gauge = GAUGES[what];
  return gauge === undefined ? { id } : { id, gauge };
};

/** Ninety checks named as in a book: one of each, and both sides of the rest. Invented. */
export const BOOK_LIKE_CHECKS: readonly CheckLike[] = /* @__PURE__ */ bookLikeChecks();

/** Called once, and marked as pure above, so that a program that makes no histories carries none of this. */
function bookLikeChecks(): readonly CheckLike[] {
  const bothSides = ["left", "right"].flatMap((side) =>
    EACH_SIDE.map((what) => checkLike(what, `${what}.${side}`)),
  );
  return [...ONCE.map((what) => checkLike(what, what)), ...bothSides];
}

export const BOOK_LIKE_GEAR: readonly {
  readonly item: string;
  readonly count: number;
  readonly stowedIn: string;
}[] = [
  { item: "pitot-covers", count: 2, stowedIn: "nose locker" },
  { item: "inlet-plugs", count: 2, stowedIn: "aft baggage" },
  { item: "chocks", count: 3, stowedIn: "aft baggage" },
  { item: "gear-pins", count: 3, stowedIn: "cabin pocket" },
  { item: "tie-downs", count: 3, stowedIn: "aft baggage" },
];
