import type { LoadEnvelope, Loading } from "@witnessmark/book";
import { type BurnPath, envelopeAlongBurn, roundToSafeSide } from "@witnessmark/engine";
import { inside } from "../../words/count-words.ts";
import { kg, litres } from "../words.ts";
import type { Aboard } from "./aboard.ts";
import type { EnvelopeFigures, LoadFigures } from "./figures.ts";
import { pathBetween, shifted, type WholeBurn } from "./whole-burn.ts";

/*
 * Ways out by plain arithmetic: one thing at a time. What needs several moves is the solver's.
 */

const TRIES = 6;

interface Change {
  readonly moment_kgm: number;
  readonly mass_kg: number;
}

/** What is flown, with the gear down and up. */
function flownPaths(burn: WholeBurn, gear_kgm: number): readonly BurnPath[] {
  const { takeOff } = burn;
  if (takeOff === undefined) return [];
  const end = burn.alternate ?? burn.landing ?? burn.dry;
  const down = pathBetween(burn.path, takeOff, end);
  return gear_kgm === 0 ? [down] : [down, shifted(down, gear_kgm)];
}

interface Past {
  readonly edge: "forward" | "aft";
  readonly past_m: number;
  readonly mass_kg: number;
  readonly arm_m: number;
}

/** The worst place after a change: where it is past an edge ahead or behind; nothing when all is inside. */
function pastAfter(
  paths: readonly BurnPath[],
  envelope: LoadEnvelope,
  change: Change,
): Past | "inside" | undefined {
  const along = paths.map((path) =>
    envelopeAlongBurn(shifted(path, change.moment_kgm, change.mass_kg), envelope),
  );
  if (along.every((one) => one.inside)) return "inside";
  const found = along.flatMap((one) =>
    (["forward", "aft"] as const).flatMap((edge): readonly Past[] => {
      const side = one[edge];
      return side === undefined || side.margin_m >= 0
        ? []
        : [{ edge, past_m: -side.margin_m, mass_kg: side.at.mass_kg, arm_m: side.at.arm_m }];
    }),
  );
  return found.reduce<Past | undefined>(
    (worst, one) => (worst === undefined || one.past_m > worst.past_m ? one : worst),
    undefined,
  );
}

/**
 * The least whole number of kilograms that puts the whole flight inside, by a change in proportion to them; undefined
 * where no number does. Each try mends the worst place that is left, so a few suffice.
 */
function leastThatMends(
  paths: readonly BurnPath[],
  envelope: LoadEnvelope,
  changeOf: (mass_kg: number) => Change,
  forEach: (past: Past) => number,
  most_kg: number,
): number | undefined {
  let mass_kg = 0;
  for (let tries = 0; tries < TRIES; tries += 1) {
    const past = pastAfter(paths, envelope, changeOf(mass_kg));
    if (past === "inside") return mass_kg;
    const more_kg = past === undefined ? Number.NaN : forEach(past);
    if (!(more_kg > 0)) return undefined;
    mass_kg = roundToSafeSide(mass_kg + more_kg, 1, "up");
    if (mass_kg > most_kg) return undefined;
  }
  return undefined;
}

const massIn = (aboard: readonly Aboard[], id: string): number =>
  aboard.filter(({ station }) => station.id === id).reduce((sum, { mass_kg }) => sum + mass_kg, 0);

/** What a station still takes, by its own limit, its floor and its groups. */
function roomIn({ stations, groups }: LoadFigures, id: string): number {
  const station = stations.find((one) => one.id === id);
  const shared = groups.filter((group) => group.stations.includes(id)).map(({ limit }) => limit.left);
  const own = station === undefined ? 0 : (station.limit?.left ?? Number.POSITIVE_INFINITY);
  return Math.min(own, station?.floor?.left ?? Number.POSITIVE_INFINITY, ...shared);
}

/** Where the centre of gravity is past an edge: something moved, something left behind. */
export function waysIntoEnvelope(
  loading: Loading,
  envelope: EnvelopeFigures,
  figures: LoadFigures,
  aboard: readonly Aboard[],
  burn: WholeBurn,
): readonly string[] {
  const paths = flownPaths(burn, loading.gearMoment_kgm ?? 0);
  const past = pastAfter(paths, envelope, { moment_kgm: 0, mass_kg: 0 });
  if (past === undefined || past === "inside") return [];
  const towards = past.edge === "aft" ? "forward" : "aft";
  const beyond = (arm_m: number): number => (past.edge === "aft" ? arm_m - past.arm_m : past.arm_m - arm_m);
  // bags first: people are moved whole or not at all
  const heavy = loading.stations
    .filter(({ id, arm_m }) => massIn(aboard, id) > 0 && beyond(arm_m) > 0)
    .toSorted((a, b) => (a.kind === b.kind ? beyond(b.arm_m) - beyond(a.arm_m) : a.kind === "bay" ? -1 : 1));
  const moves = heavy.flatMap((from) => {
    const whole_kg = massIn(aboard, from.id);
    return loading.stations
      .filter((to) => to.id !== from.id && !to.crew && beyond(from.arm_m) > beyond(to.arm_m))
      .filter((to) => (to.kind === "bay" ? from.kind === "bay" : massIn(aboard, to.id) === 0))
      .toSorted((a, b) => beyond(b.arm_m) - beyond(a.arm_m))
      .flatMap((to) => {
        const least_kg = leastThatMends(
          paths,
          envelope,
          (mass_kg) => ({ moment_kgm: mass_kg * (to.arm_m - from.arm_m), mass_kg: 0 }),
          ({ past_m, mass_kg }) => (past_m * mass_kg) / Math.abs(to.arm_m - from.arm_m),
          whole_kg,
        );
        const moved_kg = from.kind === "seat" ? whole_kg : least_kg;
        if (least_kg === undefined || moved_kg === undefined || moved_kg > roomIn(figures, to.id)) return [];
        const change = { moment_kgm: moved_kg * (to.arm_m - from.arm_m), mass_kg: 0 };
        if (pastAfter(paths, envelope, change) !== "inside") return [];
        return [`Move ${kg(moved_kg, "up")} ${towards}: ${inside(from.name)} to ${inside(to.name)}`];
      })
      .slice(0, 1);
  });
  const leave = heavy.flatMap((from) => {
    if (from.crew) return [];
    const limit = (one: Past): number =>
      one.edge === "aft" ? one.arm_m - one.past_m : one.arm_m + one.past_m;
    const least_kg = leastThatMends(
      paths,
      envelope,
      (mass_kg) => ({ moment_kgm: -mass_kg * from.arm_m, mass_kg: -mass_kg }),
      (one) => (one.past_m * one.mass_kg) / Math.abs(from.arm_m - limit(one)),
      massIn(aboard, from.id),
    );
    if (least_kg === undefined) return [];
    if (from.kind === "bay") return [`Leave ${kg(least_kg, "up")} of ${inside(from.name)} behind`];
    const whole_kg = massIn(aboard, from.id);
    const change = { moment_kgm: -whole_kg * from.arm_m, mass_kg: -whole_kg };
    return pastAfter(paths, envelope, change) === "inside" ? [`Leave ${inside(from.name)} empty`] : [];
  });
  return [...moves.slice(0, 1), ...leave.slice(0, 1)];
}

/** A total that is too heavy by so much: less fuel where there is so much of it, or something left behind. */
export function waysToLighten(over_kg: number, figures: LoadFigures, fuelHelps: boolean): readonly string[] {
  const { usable_kg, density_kgPerM3, taxi_kg = 0, trip_kg = 0 } = figures.fuel;
  const spare_kg = (usable_kg ?? 0) - taxi_kg - trip_kg;
  const leave = `Leave ${kg(over_kg, "up")} behind`;
  if (!fuelHelps || density_kgPerM3 === undefined || spare_kg < over_kg) return [leave];
  return [`Take ${litres(over_kg / density_kgPerM3, "up")} less`, leave];
}
