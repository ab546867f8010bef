import { type Book, flightBookText, readBook } from "@witnessmark/book";
import { interpolateTable } from "@witnessmark/engine";
import { expect, it } from "vitest";
import { HARMLESS } from "./distances.ts";
import { fieldFigures } from "./field-figures.ts";
import { at, flightWith, QUERN, turboprop } from "./testing/island.ts";

/** The turboprop with a landing table of one mass, as a handbook prints it. */
function ofOneMass(mass_kg: number): Book {
  const { performance } = turboprop;
  if (performance === undefined) throw new Error("expected a book with performance");
  return {
    ...turboprop,
    performance: {
      ...performance,
      tables: performance.tables.map((table) => {
        const mass = table.axes[0];
        if (table.quantity !== "landing-over-50ft" || mass?.name !== "mass_kg") return table;
        const row = mass.values.indexOf(mass_kg);
        if (row < 0) throw new Error(`expected one of ${mass.values.join(", ")} kg`);
        const size = table.cells.length / mass.values.length;
        return {
          ...table,
          axes: [{ name: "mass_kg", values: [mass_kg] }, ...table.axes.slice(1)],
          cells: table.cells.slice(row * size, (row + 1) * size),
        };
      }),
    },
  };
}

const masses = turboprop.performance?.tables
  .find(({ quantity }) => quantity === "landing-over-50ft")
  ?.axes.find(({ name }) => name === "mass_kg")?.values;

it("a table of one mass gives its figures at that mass and less, and none above: the runway is open", () => {
  const [, middle_kg] = masses ?? [];
  if (middle_kg === undefined) throw new Error("expected a landing table by mass");
  const book = ofOneMass(middle_kg);
  const landing = (landing_kg: number) =>
    fieldFigures(book, flightWith({ destination: QUERN }), "destination", at("08:05"), {
      masses: { landing_kg },
    })?.distance;
  const atIt = landing(middle_kg)?.value?.nearest.needed_m;
  expect(atIt).toBeGreaterThan(0);
  expect(landing(middle_kg - 100)?.value?.nearest.needed_m).toBe(atIt);
  expect(landing(middle_kg + 1)).toMatchObject({ missing: [expect.anything()] });
  expect(landing(middle_kg + 1)?.value).toBeUndefined();
});

it("what a book says of one mass is such a table", async () => {
  const text = flightBookText.replace(
    "      title: Climb gradient\n",
    "      title: Climb gradient\n      upToMass: 816 kg\n",
  );
  const result = await readBook(text, "book.yaml");
  const table = result.ok
    ? result.book.performance?.tables.find(({ quantity }) => quantity === "climb-gradient")
    : undefined;
  if (table === undefined) throw new Error("expected the climb table");
  const read = (mass_kg: number) =>
    interpolateTable(
      table,
      { mass_kg, oat_K: 273.15, slope_1: 0 },
      { mode: "linear", worse: "less", harmless: HARMLESS },
    );
  // half way between −20 and 20 °C and between the slopes: the mean of 9.1, 9.2, 7.3 and 7.4 %
  expect(read(816)).toMatchObject({ ok: true, value: expect.closeTo(0.0825, 9) });
  expect(read(600)).toMatchObject({ ok: true, value: expect.closeTo(0.0825, 9) });
  expect(read(816.1)).toMatchObject({ ok: false });
});
