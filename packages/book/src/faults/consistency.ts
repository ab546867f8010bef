import type { Book } from "../book.ts";
import { spaced } from "../edit/change-words.ts";
import { measureText } from "../rules/measure-text.ts";
import { NodePositions } from "../yaml/node-positions.ts";
import { parseYaml } from "../yaml/parse-yaml.ts";
import { PlainReader } from "../yaml/plain-value.ts";
import { type Path, pathText } from "./path.ts";

/** Something in a book that reads, and yet does not hang together. It stops nothing; somebody should look at it. */
export interface BookDoubt {
  /** 1-based. */
  readonly line: number;
  readonly column: number;
  /** `equipment[3].points` */
  readonly path: string;
  /** What is odd, as a sentence. */
  readonly says: string;
  /** What to do about it, as a sentence. */
  readonly remedy: string;
}

type Doubt = (path: Path, says: string, remedy: string) => void;

/** The mean chord lies within the drawn wing, give or take this much. */
const CHORD_FROM_WING_m = 0.4;
/** What is in a tank acts about where the tank is drawn. */
const TANK_FROM_PLACE_m = 0.6;

/**
 * What in a book without faults does not hang together, in the order of its lines. That tables go the way physics goes,
 * envelopes keep to the limits, mirrored checks are made on both sides and stations lie where they are drawn are rules
 * of the book itself: `readBook` refuses a book in which they do not hold.
 *
 * @param text the text that the book was read from
 */
export function consistencyOf(book: Book, text: string): readonly BookDoubt[] {
  const { document, lines } = parseYaml(text, "the book");
  const reader = new PlainReader(() => undefined); // it was read without a fault
  const plain = reader.read(document.contents);
  const positions = new NodePositions(document.contents, reader.targets, lines);
  const doubts: BookDoubt[] = [];
  const doubt: Doubt = (path, says, remedy) => {
    doubts.push({ ...positions.ofValue(path), path: pathText(path), says, remedy });
  };
  looksGoStale(book, writtenIds(plain), doubt);
  everythingIsLookedAt(book, doubt);
  armsAreAsDrawn(book, doubt);
  gaugesAreTheirOwn(book, doubt);
  factorsCountOnce(book, doubt);
  return doubts.toSorted((a, b) => a.line - b.line || a.column - b.column);
}

/** Ids of checks as they are written, in the order of the book's own list. */
function writtenIds(plain: unknown): readonly unknown[] {
  const checks: unknown =
    typeof plain === "object" && plain !== null ? Reflect.get(plain, "checks") : undefined;
  return Array.isArray(checks) ? checks.map((check: { readonly id?: unknown }) => check.id) : [];
}

function looksGoStale(book: Book, written: readonly unknown[], doubt: Doubt): void {
  for (const [index, id] of written.entries()) {
    const check = book.checks.find((each) => each.id === id || each.id === `${String(id)}.${each.point}`);
    if (check === undefined || check.holds.until.length > 0 || check.holds.atMost !== undefined) continue;
    doubt(
      ["checks", index, "holds"],
      `Nothing makes “${check.title}” untrue: one look would hold for ever.`,
      "Name what it holds until, or how old it may be.",
    );
  }
}

function everythingIsLookedAt(book: Book, doubt: Doubt): void {
  const looked = new Set(book.checks.map(({ point }) => point));
  for (const [index, { name, points }] of book.equipment.entries()) {
    if (points.some((point) => looked.has(point))) continue;
    doubt(
      ["equipment", index, ...(points.length === 0 ? [] : ["points"])],
      `No check looks at “${name}”.`,
      points.length === 0
        ? "Name the points at which it is looked at."
        : "Add a check at one of its points, or name another point.",
    );
  }
  const used = new Set([
    ...book.groundGear.map(({ point }) => point),
    ...(book.loading?.stations.flatMap(({ point }) => point ?? []) ?? []),
    ...book.equipment.flatMap(({ points }) => points),
  ]);
  for (const [index, { id, name }] of [...book.points.values()].entries()) {
    if (looked.has(id) || used.has(id)) continue;
    doubt(
      ["points", index],
      `Nothing is looked at at “${name}”.`,
      "Add a check there, or take the point out.",
    );
  }
  const stood = new Set([...book.checks, ...book.groundGear].map(({ stance }) => stance));
  const gearPoints = new Set(book.groundGear.map(({ point }) => book.points.get(point)?.stance));
  for (const [index, { id, name }] of book.stances.entries()) {
    if (stood.has(id) || gearPoints.has(id)) continue;
    doubt(
      ["stances", index],
      `Nothing is done from “${name}”.`,
      "Take the stance out, or look at something from it.",
    );
  }
  const read = new Set(book.checks.map(({ reading }) => reading?.gauge));
  const shows = new Set([
    ...(book.loading?.tanks.map(({ gauge }) => gauge) ?? []),
    book.oxygen?.cylinder.gauge,
  ]);
  for (const [index, { id, name }] of [...book.gauges.values()].entries()) {
    if (read.has(id) || shows.has(id)) continue;
    doubt(["gauges", index], `No check reads “${name}”.`, "Take the gauge out, or read it in a check.");
  }
}

function gaugesAreTheirOwn({ gauges }: Book, doubt: Doubt): void {
  for (const [index, { name, assumed, accuracy }] of [...gauges.values()].entries()) {
    if (assumed !== true) continue;
    doubt(
      ["gauges", index, "accuracy"],
      `“${name}” is taken as true to ±${measureText(accuracy)}: common practice, not its own.`,
      "Put in what its maker states, or say that this is it.",
    );
  }
}

/** Two factors for one runway multiply: that may be meant, and is a slip more often. */
function factorsCountOnce({ performance }: Book, doubt: Doubt): void {
  const factors = performance?.factors ?? [];
  if (performance !== undefined && factors.length === 0) {
    doubt(
      ["performance"],
      "No factor is there for grass, gravel, or a wet runway: on such a one the distances stay open.",
      "Put in those of the manual under surface factors, if it has any.",
    );
  }
  for (const [index, { when, quantities }] of factors.entries()) {
    const twice = factors
      .slice(0, index)
      .some(
        (other) =>
          other.when.surface === when.surface &&
          other.when.condition === when.condition &&
          other.quantities.some((quantity) => quantities.includes(quantity)),
      );
    if (!twice) continue;
    const where = [when.condition, when.surface]
      .flatMap((each) => (each === undefined ? [] : spaced(each)))
      .join(" ");
    doubt(
      ["performance", "factors", index],
      `Two factors are for ${where === "" ? "every runway" : where}: both count, one times the other.`,
      "Take one out, unless the manual multiplies them.",
    );
  }
}

function armsAreAsDrawn({ loading, geometry }: Book, doubt: Doubt): void {
  if (loading === undefined) return;
  const { root, tip } = geometry.wing;
  const fore_m = Math.min(root.leadingEdge, tip.leadingEdge) - CHORD_FROM_WING_m;
  const aft_m = Math.max(root.leadingEdge + root.chord, tip.leadingEdge + tip.chord) + CHORD_FROM_WING_m;
  const { mac } = loading;
  if (mac !== undefined && (mac.leadingEdge_m < fore_m || mac.leadingEdge_m + mac.length_m > aft_m)) {
    doubt(
      ["loading", "mac"],
      `The mean chord, ${metres(mac.leadingEdge_m)} to ${metres(mac.leadingEdge_m + mac.length_m)}, is not on the drawn wing, ${metres(fore_m + CHORD_FROM_WING_m)} to ${metres(aft_m - CHORD_FROM_WING_m)}.`,
      "Mend the figures, or the wing: both are counted from the datum of the drawing.",
    );
  }
  for (const [index, tank] of loading.tanks.entries()) {
    const far = tank.arms.findIndex(({ arm_m }) => Math.abs(arm_m - tank.place[0]) > TANK_FROM_PLACE_m);
    if (far >= 0) {
      doubt(
        ["loading", "tanks", index, "arms", far, "arm"],
        `“${tank.name}” acts at ${metres(tank.arms[far]?.arm_m ?? 0)} and is drawn at ${metres(tank.place[0])}.`,
        "Mend the arm, or where it is drawn.",
      );
    }
    if (Math.abs(tank.lateralArm_m - tank.place[1]) > TANK_FROM_PLACE_m) {
      doubt(
        ["loading", "tanks", index, "lateralArm"],
        `“${tank.name}” acts ${metres(tank.lateralArm_m)} to the right and is drawn at ${metres(tank.place[1])}.`,
        "Mend the arm, or where it is drawn; the left has a minus.",
      );
    }
  }
}

const metres = (value_m: number): string => `${value_m.toFixed(2)} m`;
