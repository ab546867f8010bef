import { describe, expect, it } from "vitest";
import { readBook } from "../read-book.ts";
import { flightBookText } from "../testing/flight-book.ts";

const TABLE = "      title: Take-off over 50 ft\n";
/** The flight book with its take-off table for one mass, without the one of the roll. */
const BARE = flightBookText
  .replace(/ {4}- id: take-off-roll\n(?: {6}.*\n(?: {8}.*\n)*)+?(?= {4}- id: take-off-total)/, "")
  .replace(
    /( {6}title: Take-off over 50 ft\n) {6}axes:\n.*\n.*\n {6}unit: ft\n {6}cells: .*\n/,
    "$1      axes: [{ name: pressureAltitude, unit: ft, values: [0, 2000] }]\n      unit: m\n      cells: [290, 345]\n",
  )
  .replace(/ {4}- \{ id: wet-grass.*\n/, "");

const withLines = (...lines: readonly string[]): string =>
  BARE.replace(TABLE, `${TABLE}${lines.map((line) => `      ${line}\n`).join("")}`);
async function tables(...lines: readonly string[]) {
  const result = await readBook(withLines(...lines), "book.yaml");
  if (!result.ok)
    throw new Error(result.faults.map(({ path, expected }) => `${path}: ${expected}`).join("\n"));
  return result.book.performance?.tables ?? [];
}
async function faultsOf(text: string): Promise<readonly string[]> {
  const result = await readBook(text, "book.yaml");
  return result.ok ? [] : result.faults.map(({ path, expected }) => `${path}: ${expected}`);
}

describe("a table for one mass", () => {
  it("has it as an axis that ends there, so that nothing is read above it", async () => {
    const table = (await tables("upToMass: 816 kg")).find(({ id }) => id === "take-off-total");
    expect(table?.axes[0]).toEqual({ name: "mass_kg", values: [816] });
    expect(table?.cells).toEqual([290, 345]);
  });

  it("has no axis of mass beside it", async () => {
    const text = flightBookText.replace(TABLE, `${TABLE}      upToMass: 816 kg\n`);
    const result = await readBook(text, "book.yaml");
    expect(result.ok ? [] : result.faults.map(({ expected }) => expected)).toEqual([
      "nothing here, where the table has an axis of mass",
    ]);
  });
});

describe("a ground roll that is a share of the distance over 50 ft", () => {
  it("is a table of its own, in whole metres, rounded up", async () => {
    const roll = (await tables("groundRoll: 0.58", "upToMass: 816 kg")).find(
      ({ quantity }) => quantity === "take-off-ground-roll",
    );
    expect(roll?.id).toBe("take-off-total-ground-roll");
    // by hand: 0.58 × 290 = 168.2, 0.58 × 345 = 200.1
    expect(roll?.cells.map((cell) => Number(cell?.toFixed(6)))).toEqual([169, 201]);
    expect(roll?.axes[0]).toEqual({ name: "mass_kg", values: [816] });
  });

  it("is below one, of a distance over 50 ft, and told once", async () => {
    expect(await faultsOf(withLines("groundRoll: 58"))).toEqual([
      "performance.tables[0].groundRoll: a share above 0 and below 1: it is shorter than over 50 ft",
    ]);
    const climb = BARE.replace(
      "      title: Climb gradient\n",
      "      title: Climb gradient\n      groundRoll: 0.5\n",
    );
    const result = await readBook(climb, "book.yaml");
    expect(result.ok ? [] : result.faults.map(({ expected }) => expected)).toEqual([
      "a table over 50 ft, of which the ground roll is a share",
    ]);
    const twice = await readBook(
      flightBookText.replace(TABLE, `${TABLE}      groundRoll: 0.58\n`),
      "book.yaml",
    );
    expect(twice.ok ? [] : twice.faults.map(({ expected }) => expected)).toEqual([
      "the ground roll told once",
    ]);
  });

  it("can have the factor of a surface", async () => {
    const factor =
      '    - { id: grass, quantities: [take-off-over-50ft], when: { surface: grass }, factor: 1.2, of: ground-roll, source: "Invented." }\n';
    const grass = (text: string) => faultsOf(text.replace("  factors:\n", `  factors:\n${factor}`));
    expect(await grass(BARE)).toEqual([
      "performance.factors[0].of: a table of `take-off-ground-roll`, to take the factor of",
    ]);
    expect(await grass(withLines("groundRoll: 0.58"))).toEqual([]);
  });
});
