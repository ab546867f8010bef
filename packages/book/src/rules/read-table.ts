import { toSI, UNITS, type UnitId, unitFromText } from "@witnessmark/engine";
import { didYouMean } from "../faults/did-you-mean.ts";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import { shown } from "../faults/shown.ts";
import type {
  PerformanceQuantity,
  PerformanceTable,
  PerformanceTableSource,
  TableAxisName,
} from "../schema/performance.ts";
import { given } from "../to-si/given.ts";

type AxisSource = PerformanceTableSource["axes"][number];
type CellDimension = "length" | "speed" | "ratio";

const AXES = {
  mass: { name: "mass_kg", dimension: "mass", example: "kg" },
  pressureAltitude: { name: "pressureAltitude_m", dimension: "length", example: "ft" },
  oat: { name: "oat_K", dimension: "temperature", example: "°C" },
  headwind: { name: "headwind_mPerS", dimension: "speed", example: "kt" },
  slope: { name: "slope_1", dimension: "ratio", example: "%" },
} as const satisfies Record<
  AxisSource["name"],
  { readonly name: TableAxisName; readonly dimension: string; readonly example: string }
>;

const CELLS = {
  "take-off-ground-roll": "length",
  "take-off-over-50ft": "length",
  "landing-ground-roll": "length",
  "landing-over-50ft": "length",
  "accelerate-stop": "length",
  "climb-gradient": "ratio",
  "go-around-gradient": "ratio",
  "stall-speed": "speed",
} as const satisfies Record<PerformanceQuantity, CellDimension>;

const HOLE_REMEDY = "write null where the print has no figure";
const LEVEL_REMEDY = "there is one level of lists for each axis";

const SI_UNITS = { length: "m", speed: "mPerS", ratio: "1" } as const satisfies Record<CellDimension, string>;

/**
 * A table in SI, its cells in one row; says what is not a table about it.
 *
 * @returns `undefined` when anything was reported
 */
export function readTable(
  source: PerformanceTableSource,
  path: Path,
  report: Report,
): PerformanceTable | undefined {
  let sound = true;
  const tell: Report = (where, fault) => {
    sound = false;
    report([...path, ...where], fault);
  };
  const dimension = CELLS[source.quantity];
  const unit = unitOf(source.unit, dimension, ["unit"], tell);
  const axes = source.axes.map((axis, i) => readAxis(axis, source.axes, i, tell));
  const cells: (number | null)[] = [];
  if (unit !== undefined) readCells(source, unit, cells, tell);
  if (!sound) return undefined;
  const { id, quantity, title, flaps, speed } = source;
  return {
    id,
    quantity,
    title,
    ...given("flaps", flaps),
    ...given("speed_mPerS", speed?.valueSI),
    axes,
    unit: SI_UNITS[dimension],
    cells,
  };
}

function unitOf(text: string, dimension: string, where: Path, tell: Report): UnitId | undefined {
  if (text === "" && dimension === "ratio") return "1";
  const unit = unitFromText(text);
  if (unit !== undefined && UNITS[unit].dimension === dimension) return unit;
  const known = Object.values(UNITS).filter((spec) => spec.dimension === dimension && spec.symbol !== "");
  const symbols = known.map(({ symbol }) => symbol);
  tell(where, {
    expected: `a unit of ${dimension}: ${symbols.join(", ")}`,
    found: text === "" ? "none" : shown(text),
    remedy: text === "" ? "add `unit:`" : didYouMean(text, symbols),
  });
  return undefined;
}

function readAxis(axis: AxisSource, all: readonly AxisSource[], i: number, tell: Report) {
  const where: Path = ["axes", i];
  const { name, dimension } = AXES[axis.name];
  if (all.findIndex((other) => other.name === axis.name) < i) {
    tell([...where, "name"], {
      expected: "each axis once",
      found: `\`${axis.name}\` a second time`,
      remedy: "take one of the two out",
    });
  }
  const unit = unitOf(axis.unit, dimension, [...where, "unit"], tell);
  for (const [j, value] of axis.values.entries()) {
    const before = axis.values[j - 1];
    if (before === undefined || value > before) continue;
    tell([...where, "values", j], {
      expected: `a value above the one before, ${before}`,
      found: String(value),
      remedy: "put the values in order, lowest first, each once; the cells go with them",
    });
  }
  return { name, values: unit === undefined ? [] : axis.values.map((value) => toSI(value, unit)) };
}

function readCells(
  source: PerformanceTableSource,
  unit: UnitId,
  into: (number | null)[],
  tell: Report,
): void {
  const mustBePositive = CELLS[source.quantity] !== "ratio";
  const walk = (node: unknown, level: number, where: Path): void => {
    const axis = source.axes[level];
    if (axis === undefined) {
      into.push(readCell(node, where, unit, mustBePositive, tell));
      return;
    }
    const count = axis.values.length;
    if (!Array.isArray(node) || node.length !== count) {
      tell(where, {
        expected: `a list of ${count}, one for each value of ${axis.name}`,
        found: shown(node),
        remedy: Array.isArray(node) ? HOLE_REMEDY : LEVEL_REMEDY,
      });
      return;
    }
    for (const [i, child] of node.entries()) walk(child, level + 1, [...where, i]);
  };
  walk(source.cells, 0, ["cells"]);
}

function readCell(
  cell: unknown,
  where: Path,
  unit: UnitId,
  mustBePositive: boolean,
  tell: Report,
): number | null {
  if (cell === null) return null;
  if (typeof cell === "number" && Number.isFinite(cell) && (cell > 0 || !mustBePositive)) {
    return toSI(cell, unit);
  }
  tell(where, {
    expected: mustBePositive ? "a number above 0, or null" : "a number, or null",
    found: shown(cell),
    remedy: Array.isArray(cell) ? LEVEL_REMEDY : HOLE_REMEDY,
  });
  return null;
}
