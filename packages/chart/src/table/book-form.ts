import type { Cells, PaperTable } from "./chart-table.ts";
import type { EnvelopeCorner } from "./envelope.ts";

/** A performance table as it stands in a book, under `performance.tables`. */
export interface BookTable {
  readonly id: string;
  readonly quantity: string;
  readonly title: string;
  readonly flaps?: string;
  readonly speed?: string;
  readonly axes: readonly {
    readonly name: string;
    readonly unit: string;
    readonly values: readonly number[];
  }[];
  readonly unit: string;
  readonly cells: Cells;
}

/** An envelope as it stands in a book, under `loading.envelopes`. */
export interface BookEnvelope {
  readonly id: string;
  readonly name: string;
  readonly points: readonly EnvelopeCorner[];
}

/** The table with what a book says of it; whatever is left blank is left out. */
export function bookTable(
  { axes, unit, cells }: PaperTable,
  said: {
    readonly id: string;
    readonly quantity: string;
    readonly title: string;
    readonly flaps?: string;
    readonly speed?: string;
  },
): BookTable {
  const { id, quantity, title, flaps = "", speed = "" } = said;
  return {
    id,
    quantity,
    title,
    ...(flaps.trim() === "" ? {} : { flaps: flaps.trim() }),
    ...(speed.trim() === "" ? {} : { speed: speed.trim() }),
    axes: axes.map(({ name, unit, values }) => ({ name, unit, values: [...values] })),
    unit,
    cells,
  };
}

/** The table in YAML, as an item of a list, with the outer axes named beside their rows. */
export function tableYaml(table: BookTable): string {
  const lines = [
    `- id: ${table.id}`,
    `  quantity: ${table.quantity}`,
    `  title: ${quoted(table.title)}`,
    ...(table.flaps === undefined ? [] : [`  flaps: ${quoted(table.flaps)}`]),
    ...(table.speed === undefined ? [] : [`  speed: ${quoted(table.speed)}`]),
    "  axes:",
    ...table.axes.map(
      ({ name, unit, values }) =>
        `    - { name: ${name}, ${unit === "" ? "" : `unit: ${quoted(unit)}, `}values: [${values.join(", ")}] }`,
    ),
    ...(table.unit === "" ? [] : [`  unit: ${quoted(table.unit)}`]),
    "  cells:",
    ...cellLines(table.cells, table.axes, 0),
  ];
  return `${lines.join("\n")}\n`;
}

/** One line for each list of the last axis; what the outer axes are at stands beside it. */
function cellLines(cells: Cells, axes: BookTable["axes"], level: number): readonly string[] {
  const indent = " ".repeat(4 + 2 * level);
  const axis = axes[level];
  return cells.flatMap((cell, i) => {
    const note = axis === undefined ? "" : ` # ${axis.values[i]} ${axis.unit}`.trimEnd();
    if (typeof cell === "number" || cell === null) return [`${indent}- ${cell}${note}`];
    if (cell.every((each) => typeof each === "number" || each === null)) {
      return [`${indent}- [${cell.map((each) => String(each)).join(", ")}]${note}`];
    }
    return [`${indent}-${note}`, ...cellLines(cell, axes, level + 1)];
  });
}

/** The envelope in YAML, as an item of a list. */
export const envelopeYaml = ({ id, name, points }: BookEnvelope): string =>
  [
    `- id: ${id}`,
    `  name: ${quoted(name)}`,
    "  points:",
    ...points.map(({ arm, mass }) => `    - { arm: ${arm}, mass: ${mass} }`),
    "",
  ].join("\n");

/** Text in double quotes is YAML whatever it holds: JSON is. */
const quoted = (text: string): string => JSON.stringify(text);
