import type { SequenceProblem } from "@witnessmark/planner";

/** Raised for a file that is no instance of the library as it is read here. */
export class InstanceError extends Error {}

/**
 * An instance of TSPLIB 95 as a sequence from a first to a last. A round trip (TSP) becomes one by a copy of its first
 * node at the end.
 *
 * @param text the file's text
 * @throws {InstanceError} for a type or a format of weights that is not read here
 * @source TSPLIB 95, library documentation, 1995
 */
export function readInstance(text: string): SequenceProblem {
  const head = new Map<string, string>();
  for (const [, key, value] of text.matchAll(/^([A-Z_]+)\s*:\s*(.+?)\s*$/gm)) {
    if (key !== undefined && value !== undefined) head.set(key, value);
  }
  const size = Number(head.get("DIMENSION"));
  if (!Number.isInteger(size))
    throw new InstanceError(`expected a DIMENSION, found ${head.get("DIMENSION")}`);
  if (head.get("TYPE") === "SOP") return readSop(section(text, "EDGE_WEIGHT_SECTION"), size);
  if (head.get("TYPE") !== "TSP") {
    throw new InstanceError(`expected a TSP or a SOP, found ${head.get("TYPE")}; add a reader for it`);
  }
  return roundTrip(weights(text, head, size), size);
}

function section(text: string, name: string): readonly number[] {
  const start = text.indexOf(name);
  if (start < 0) throw new InstanceError(`expected a section ${name}, found none`);
  const words = text
    .slice(start + name.length)
    .trim()
    .split(/\s+/);
  const end = words.findIndex((word) => !Number.isFinite(Number(word)));
  return (end < 0 ? words : words.slice(0, end)).map(Number);
}

function readSop([stated, ...entries]: readonly number[], size: number): SequenceProblem {
  if (stated !== size || entries.length !== size * size) {
    throw new InstanceError(
      `expected ${size} and ${size * size} weights, found ${stated} and ${entries.length}`,
    );
  }
  const cost = new Float64Array(size * size);
  const after: number[][] = Array.from({ length: size }, () => []);
  for (const [at, entry] of entries.entries()) {
    const [row, column] = [Math.floor(at / size), at % size];
    if (entry === -1 && row !== column) after[row]?.push(column);
    // an arc that the rules forbid is never walked: what it would cost does not matter, but it must be a cost
    cost[at] = entry === -1 ? FORBIDDEN : entry;
  }
  return { size, cost, after };
}

const FORBIDDEN = 1_000_000;

function roundTrip(weight: (a: number, b: number) => number, nodes: number): SequenceProblem {
  const size = nodes + 1;
  const cost = new Float64Array(size * size);
  for (let from = 0; from < size; from += 1) {
    for (let to = 0; to < size; to += 1) {
      const [a, b] = [from % nodes, to % nodes];
      cost[from * size + to] = a === b ? 0 : weight(a, b);
    }
  }
  const after = Array.from({ length: size }, () => []);
  return { size, cost, after };
}

type Weight = (a: number, b: number) => number;

function weights(text: string, head: ReadonlyMap<string, string>, size: number): Weight {
  const kind = head.get("EDGE_WEIGHT_TYPE");
  if (kind === "EXPLICIT") {
    const format = head.get("EDGE_WEIGHT_FORMAT");
    return explicit(section(text, "EDGE_WEIGHT_SECTION"), format, size);
  }
  const figures = section(text, "NODE_COORD_SECTION");
  const places = Array.from(
    { length: size },
    (_, i) => [figures[3 * i + 1] ?? 0, figures[3 * i + 2] ?? 0] as const,
  );
  const measure = MEASURES.get(kind ?? "");
  if (measure === undefined) throw new InstanceError(`expected a known EDGE_WEIGHT_TYPE, found ${kind}`);
  return (a, b) => measure(places[a] ?? [0, 0], places[b] ?? [0, 0]);
}

function explicit(entries: readonly number[], format: string | undefined, size: number): Weight {
  const full = new Float64Array(size * size);
  let next = 0;
  const put = (row: number, column: number): void => {
    const entry = entries[next];
    if (entry === undefined) throw new InstanceError(`expected more weights than ${entries.length}`);
    full[row * size + column] = entry;
    full[column * size + row] = entry;
    next += 1;
  };
  for (let row = 0; row < size; row += 1) {
    if (format === "LOWER_DIAG_ROW") for (let column = 0; column <= row; column += 1) put(row, column);
    else if (format === "UPPER_ROW") for (let column = row + 1; column < size; column += 1) put(row, column);
    else throw new InstanceError(`expected LOWER_DIAG_ROW or UPPER_ROW, found ${format}`);
  }
  return (a, b) => full[a * size + b] ?? 0;
}

type Place = readonly [number, number];
const away = (a: Place, b: Place): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
/** As the documentation gives it, cut off after six places. */
const PI = 3_141_592 / 1_000_000;

/** Radians from DDD.MM; the whole degrees are cut off, not rounded: only so the listed optima come out. */
const radians = (figure: number): number => {
  const degrees = Math.trunc(figure);
  return (PI * (degrees + (5 * (figure - degrees)) / 3)) / 180;
};

const MEASURES: ReadonlyMap<string, (a: Place, b: Place) => number> = new Map([
  ["EUC_2D", (a: Place, b: Place) => Math.floor(0.5 + away(a, b))],
  ["ATT", (a: Place, b: Place) => Math.ceil(Math.sqrt(((a[0] - b[0]) ** 2 + (a[1] - b[1]) ** 2) / 10))],
  [
    "GEO",
    (a: Place, b: Place) => {
      const [latA, lonA, latB, lonB] = [radians(a[0]), radians(a[1]), radians(b[0]), radians(b[1])];
      const [q1, q2, q3] = [Math.cos(lonA - lonB), Math.cos(latA - latB), Math.cos(latA + latB)];
      return Math.floor(6378.388 * Math.acos(0.5 * ((1 + q1) * q2 - (1 - q1) * q3)) + 1);
    },
  ],
]);
