import type { Book, Check, ManualOrder } from "./book.ts";
import { byWrittenId, type CheckAtPoint, comesAfter, expandChecks } from "./expand.ts";
import type { Readings } from "./rules/readings.ts";
import type { BookSource } from "./schema/book-source.ts";
import type { PerformanceTable } from "./schema/performance.ts";
import { cabinInSI } from "./to-si/cabin.ts";
import { fieldInSI } from "./to-si/field.ts";
import { fuelInSI } from "./to-si/fuel.ts";
import { given } from "./to-si/given.ts";
import { loadingInSI } from "./to-si/loading.ts";
import { oxygenInSI } from "./to-si/oxygen.ts";
import { performanceInSI } from "./to-si/performance.ts";

/**
 * The book as the program uses it, from a source in which every rule holds: checks at several points become one check
 * for each, references of `after` name those, and all stand in the order of the walk.
 */
export function resolveBook(
  source: BookSource,
  readings: Readings,
  tables: readonly PerformanceTable[],
  sha256: string,
): Book {
  const points = byId(source.points);
  const stanceRank = new Map(source.stances.map(({ id }, i) => [id, i]));
  const expanded = expandChecks(source.checks.map((value, index) => ({ value, index })));
  const written = byWrittenId(expanded);
  const checks = expanded
    .map((check) => resolveCheck(check, points.get(check.point)?.stance ?? "", readings, written))
    .toSorted((a, b) => (stanceRank.get(a.stance) ?? 0) - (stanceRank.get(b.stance) ?? 0)); // stable
  return deepFreeze({
    revision: source.revision,
    issued: source.issued,
    notice: source.notice,
    sha256,
    aircraft: source.aircraft,
    geometry: source.geometry,
    gauges: byId(source.gauges),
    areas: byId(source.areas),
    stances: source.stances,
    stancesById: byId(source.stances),
    points,
    checks,
    checksById: byId(checks),
    groundGear: source.groundGear,
    equipment: source.equipment,
    counters: source.counters,
    timedItems: source.timedItems,
    ...given("relief", source.relief),
    ...given("order", source.order && manualOrder(source.order, expanded)),
    ...given("last", source.last),
    ...given("hazards", source.hazards),
    ...flightSections(source, tables, written),
  });
}

function manualOrder(
  { steps, ...order }: NonNullable<BookSource["order"]>,
  expanded: readonly CheckAtPoint[],
): ManualOrder {
  return {
    ...order,
    steps: steps.flatMap((step): ManualOrder["steps"] => {
      if (typeof step === "string") return [{ kind: "stance", id: step }];
      if ("groundGear" in step) return [{ kind: "ground-gear", id: step.groundGear }];
      return expanded
        .filter(({ source, point }) => source.id === step.check && (step.at ?? point) === point)
        .map(({ id }) => ({ kind: "check", id }));
    }),
  };
}

function flightSections(
  source: BookSource,
  tables: readonly PerformanceTable[],
  written: ReadonlyMap<string, readonly CheckAtPoint[]>,
) {
  const { loading, fuel, oxygen, cabin, performance, iceProtection, fields } = source;
  const readsOxygen = oxygen && written.get(oxygen.cylinder.check)?.[0]?.id;
  return {
    ...given("loading", loading && loadingInSI(loading)),
    ...given("fuel", fuel && fuelInSI(fuel)),
    ...given("oxygen", oxygen && oxygenInSI(oxygen, readsOxygen ?? oxygen.cylinder.check)),
    ...given("cabin", cabin && cabinInSI(cabin)),
    ...given("performance", performance && performanceInSI(performance, tables)),
    ...given("iceProtection", iceProtection),
    ...given("fields", fields?.map(fieldInSI)),
  };
}

function resolveCheck(
  check: CheckAtPoint,
  pointStance: string,
  readings: Readings,
  written: ReadonlyMap<string, readonly CheckAtPoint[]>,
): Check {
  const { at: _at, from, reading: _reading, after, ...rest } = check.source;
  const reading = readings.get(check.index);
  return {
    ...rest,
    id: check.id,
    point: check.point,
    stance: from ?? pointStance,
    after: after.flatMap((named) => comesAfter(check, named, written).map(({ id }) => id)),
    ...(reading === undefined ? {} : { reading }),
  };
}

function byId<T extends { readonly id: string }>(items: readonly T[]): ReadonlyMap<string, T> {
  return new Map(items.map((item) => [item.id, item]));
}

/** A book is shared by everything that is drawn and judged: nobody may change it. Maps are read-only by type. */
function deepFreeze<T extends object>(value: T): T {
  const parts: Iterable<unknown> = value instanceof Map ? value.values() : Object.values(value);
  for (const part of parts) {
    if (typeof part === "object" && part !== null && !Object.isFrozen(part)) deepFreeze(part);
  }
  return Object.freeze(value);
}
