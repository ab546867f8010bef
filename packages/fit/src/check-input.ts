import { envelopeFaults, InputError } from "@witnessmark/engine";
import { type FitInput, type FitStation, placesOf } from "./fit-input.ts";

function refuse(field: string, expected: string, received: string): never {
  throw new InputError("out-of-range", field, { expected, received });
}

function atLeastZero(field: string, value: number | undefined, unit: string): void {
  if (value === undefined || (value >= 0 && Number.isFinite(value))) return;
  refuse(field, `zero or more ${unit}`, `${value} ${unit}`);
}

function aboveZero(field: string, value: number | undefined, unit: string): void {
  if (value === undefined || (value > 0 && Number.isFinite(value))) return;
  refuse(field, `more than zero ${unit}`, `${value} ${unit}`);
}

function finite(field: string, value: number | undefined, unit: string): void {
  if (value === undefined || Number.isFinite(value)) return;
  refuse(field, `a finite number of ${unit}`, String(value));
}

function once(field: string, ids: readonly string[]): void {
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twice !== undefined) refuse(field, "each id once", `"${twice}" twice`);
}

/**
 * Finds a station by its id.
 *
 * @throws {InputError} `out-of-range`: there is none
 */
export function stationOf(input: FitInput, id: string, field = "station"): FitStation {
  const known = input.stations.map((station) => station.id);
  const found = input.stations.find((station) => station.id === id);
  return found ?? refuse(field, `a station that there is (${known.join(", ")})`, `"${id}"`);
}

/**
 * Refuses what cannot be a load. Tanks, fuel order and burns are looked at by the engine's `burnPath`, which every
 * question asks first.
 *
 * @throws {InputError} names the part at fault
 */
export function checkInput(input: FitInput): void {
  const { empty, stations, groups = [], limits, envelopes, items, steps, burn } = input;
  aboveZero("empty.mass_kg", empty.mass_kg, "kg");
  finite("empty.arm_m", empty.arm_m, "m");
  finite("empty.lateralArm_m", empty.lateralArm_m, "m");
  once(
    "stations",
    stations.map(({ id }) => id),
  );
  once(
    "items",
    items.map(({ id }) => id),
  );
  for (const { id, arm_m, lateralArm_m, max_kg, floor, holds } of stations) {
    finite(`${id}.arm_m`, arm_m, "m");
    finite(`${id}.lateralArm_m`, lateralArm_m, "m");
    atLeastZero(`${id}.max_kg`, max_kg, "kg");
    atLeastZero(`${id}.floor.area_m2`, floor?.area_m2, "m²");
    atLeastZero(`${id}.floor.max_kgPerM2`, floor?.max_kgPerM2, "kg/m²");
    atLeastZero(`${id}.holds`, holds, "items");
  }
  for (const group of groups) {
    atLeastZero(`${group.id}.max_kg`, group.max_kg, "kg");
    for (const id of group.stations) stationOf(input, id, `${group.id}.stations`);
  }
  for (const [name, value] of Object.entries(limits)) {
    atLeastZero(`limits.${name}`, value, name.endsWith("_kgm") ? "kg·m" : "kg");
  }
  if (envelopes.length === 0) refuse("envelopes", "one envelope at least", "none");
  for (const envelope of envelopes) {
    const [fault] = envelopeFaults(envelope);
    if (fault !== undefined)
      refuse(`envelope ${envelope.id}`, "a closed polygon that does not cross itself", fault.says);
  }
  for (const item of items) {
    atLeastZero(`${item.id}.mass_kg`, item.mass_kg, "kg");
    for (const id of placesOf(item)) stationOf(input, id, `${item.id}.mayGo`);
  }
  atLeastZero("burn.reserve_kg", burn.reserve_kg, "kg");
  finite("gearMoment_kgm", input.gearMoment_kgm, "kg·m");
  aboveZero("steps.mass_kg", steps?.mass_kg, "kg");
  aboveZero("steps.volume_m3", steps?.volume_m3, "m³");
}
