import { createHash } from "node:crypto";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Book } from "./book.ts";
import { faultSentence } from "./faults/fault-sentence.ts";
import { bookGauge, pointOf, stanceOf } from "./look-up.ts";
import { readBook } from "./read-book.ts";
import { smallBookText } from "./testing/small-book.ts";

async function good(text: string): Promise<Book> {
  const result = await readBook(text, "small.yaml");
  if (!result.ok) throw new Error(result.faults.map(faultSentence).join("\n"));
  return result.book;
}

const check = (book: Book, id: string) => {
  const found = book.checksById.get(id);
  if (found === undefined) throw new Error(`no check ${id} among ${[...book.checksById.keys()].join(", ")}`);
  return found;
};

describe("a good book", () => {
  it("has one check for each point, named after it, in the order of the walk", async () => {
    const book = await good(smallBookText);
    expect(book.checks.map(({ id, stance }) => `${stance}: ${id}`)).toEqual([
      "seat: oxygen-pressure",
      "right-wheel: tyre-look.right-main-tyre",
      "right-wheel: tyre-pressure.right-main-tyre",
      "right-wheel: right-brake",
      "nose: oil-level",
      "left-wheel: tyre-look.left-main-tyre",
      "left-wheel: tyre-pressure.left-main-tyre",
    ]);
  });

  it("has each check after the one it names at the same point", async () => {
    const book = await good(smallBookText);
    expect(check(book, "tyre-pressure.left-main-tyre").after).toEqual(["tyre-look.left-main-tyre"]);
    expect(check(book, "tyre-pressure.right-main-tyre").after).toEqual(["tyre-look.right-main-tyre"]);
  });

  it("has a check after all checks of the name where none is at its own point", async () => {
    const text = smallBookText.replace(
      "    from: nose\n",
      "    from: left-wheel\n    after: [tyre-look, oxygen-pressure]\n",
    );
    expect(check(await good(text), "oil-level").after).toEqual([
      "tyre-look.right-main-tyre",
      "tyre-look.left-main-tyre",
      "oxygen-pressure",
    ]);
  });

  it("takes the stance of the check before that of its point", async () => {
    const text = smallBookText.replace("    from: nose\n", "    from: right-wheel\n");
    expect(check(await good(text), "oil-level").stance).toBe("right-wheel");
  });

  it("has its limits as measures of the gauge, in SI", async () => {
    const book = await good(smallBookText);
    const tyre = check(book, "tyre-pressure.left-main-tyre").reading;
    expect(tyre).toMatchObject({
      dimension: "pressure",
      limit: {
        by: "tyre",
        service: { value: 3, unit: "bar", valueSI: 300_000 },
        at: { value: 15, unit: "degC", valueSI: 288.15 },
      },
      step: { value: 0.01, unit: "bar", valueSI: expect.closeTo(1000, 9) },
      outside: { status: "stop" },
    });
    const oxygen = check(book, "oxygen-pressure").reading;
    expect(oxygen?.outside).toEqual({ status: "caution", advice: "Fly below 10 000 ft." });
    // 1 psi = 6894.757 Pa, NIST SP 811, appendix B
    expect(oxygen?.step.valueSI).toBeCloseTo(50 * 6894.757, 0);
  });

  it("does not shift the accuracy and steps of a thermometer by the zero of its scale", async () => {
    const text = smallBookText
      .replace(
        "  - { id: dipstick",
        "  - { id: probe, name: Probe, unit: °C, accuracy: 0.5 °C, resolution: 1 °C, range: [-60 °C, 60 °C] }\n  - { id: dipstick",
      )
      .replace("gauge: dipstick", "gauge: probe")
      .replace(
        /limit:\n +by: table\n.*\n.*\n.*\n.*\n +scale: .*\n/,
        "limit: { by: fixed, low: -40 °C }\n      step: 2 °C\n      scale: [-50 °C, 50 °C]\n",
      )
      .replace("      temperatureOf: oil\n", "");
    const book = await good(text);
    expect(book.gauges.get("probe")?.accuracy.valueSI).toBeCloseTo(0.5, 12);
    expect(check(book, "oil-level").reading?.step.valueSI).toBeCloseTo(2, 12);
    expect(check(book, "oil-level").reading?.scale[0].valueSI).toBeCloseTo(223.15, 9);
  });

  it("draws the rule about the limit where the book does not say how, and needs no scale of the gauge", async () => {
    const text = smallBookText
      .replace(
        "unit: psi, accuracy: 50 psi, resolution: 50 psi, range: [0 psi, 2200 psi]",
        "unit: psi, accuracy: 50 psi, resolution: 50 psi",
      )
      .replace(/( +limit: \{ by: cylinder.*\n)((?: .*\n)*?) +scale: .*\n/, "$1$2");
    expect(text).not.toContain("2200 psi");
    const book = await good(text);
    expect(book.gauges.get("oxygen-gauge")).not.toHaveProperty("range");
    // a quarter of 1850 psi beyond each end, on whole hundreds
    expect(check(book, "oxygen-pressure").reading?.scale.map(({ value }) => value)).toEqual([1000, 2400]);
  });

  it("does not take the accuracy of a common gauge for one of high pressures", async () => {
    const common = "accuracy: 2 psi, resolution: 1 psi, assumed: true";
    const text = smallBookText.replace("accuracy: 50 psi, resolution: 50 psi", common);
    const result = await readBook(text, "small.yaml");
    expect(
      result.ok ? [] : result.faults.map(({ path, expected, found }) => [path, expected, found]),
    ).toEqual([
      [
        "checks[0].reading.gauge",
        "a gauge whose own accuracy is in the book, for a limit of 1850 psi",
        "“Oxygen gauge”, with ±2 psi by common practice",
      ],
    ]);
  });

  it("carries the SHA-256 of its text, with or without a byte order mark", async () => {
    const expected = createHash("sha256").update(smallBookText).digest("hex");
    expect((await good(smallBookText)).sha256).toBe(expected);
    expect((await good(`\uFEFF${smallBookText}`)).sha256).toBe(expected);
    expect((await good(`${smallBookText}\n`)).sha256).not.toBe(expected);
  });

  it("cannot be changed at any depth", async () => {
    const book = await good(smallBookText);
    const attempts = [
      book,
      book.checks,
      check(book, "oil-level").hazard,
      book.geometry.wing.root,
      book.stances[0]?.place,
    ];
    for (const part of attempts) expect(Object.isFrozen(part)).toBe(true);
  });

  it("leads from a check to its point, stance and gauge", async () => {
    const book = await good(smallBookText);
    const pressure = check(book, "tyre-pressure.left-main-tyre");
    expect(pointOf(book, pressure).name).toBe("Left main tyre");
    expect(stanceOf(book, pressure).posture).toBe("crouch");
    expect(bookGauge(book, pressure)?.name).toBe("Tyre gauge TG-2");
    expect(bookGauge(book, check(book, "right-brake"))).toBeUndefined();
    expect(() => pointOf(book, { point: "elsewhere" })).toThrow(
      "expected a point of this book, found `elsewhere`; is the check from another book?",
    );
  });

  it("may write a repeated value once and point to it", async () => {
    const text = smallBookText
      .replace("holds: { until: [flown] }", "holds: &flown { until: [flown] }")
      .replace("holds: { until: [flown] }", "holds: *flown");
    expect(check(await good(text), "right-brake").holds).toEqual({ until: ["flown"] });
  });

  it("may be written in another order, with comments and Windows line ends, and mean the same", async () => {
    const [head = "", tail = ""] = smallBookText.split("\nareas:");
    const moved = `# a comment\n${head}\n${`areas:${tail}`.split("\ngroundGear:").reverse().join("\n").replace(/^\n/, "")}`;
    const reordered = moved
      .replace("\n  - { id: chocks", "\ngroundGear:\n  - { id: chocks")
      .replaceAll("\n", "\r\n");
    const { sha256: _a, ...expected } = await good(smallBookText);
    const { sha256: _b, ...found } = await good(reordered);
    expect(found).toEqual(expected);
  });
});

describe("a book that was damaged at random", () => {
  const lines = smallBookText.split("\n");
  const damage = fc.oneof(
    fc.record({ kind: fc.constant("line out"), at: fc.nat(lines.length - 1), by: fc.constant("") }),
    fc.record({ kind: fc.constant("line twice"), at: fc.nat(lines.length - 1), by: fc.constant("") }),
    fc.record({
      kind: fc.constant("character out"),
      at: fc.nat(smallBookText.length - 1),
      by: fc.constant(""),
    }),
    fc.record({
      kind: fc.constant("character changed"),
      at: fc.nat(smallBookText.length - 1),
      by: fc.oneof(
        fc.constantFrom(..."\t\n:-[]{}#&*!|>'\"%@`,0a "),
        fc.string({ minLength: 1, maxLength: 3 }),
      ),
    }),
    fc.record({ kind: fc.constant("cut off"), at: fc.nat(smallBookText.length - 1), by: fc.constant("") }),
  );

  function damaged({ kind, at, by }: { kind: string; at: number; by: string }): string {
    if (kind === "line out") return lines.toSpliced(at, 1).join("\n");
    if (kind === "line twice") return lines.toSpliced(at, 0, lines[at] ?? "").join("\n");
    if (kind === "cut off") return smallBookText.slice(0, at);
    return smallBookText.slice(0, at) + by + smallBookText.slice(at + 1);
  }

  it("is read, or refused with faults that stand in its lines and say what to expect; nothing is thrown", async () => {
    await fc.assert(
      fc.asyncProperty(damage, async (how) => {
        const text = damaged(how);
        const result = await readBook(text, "zz.yaml");
        if (result.ok) return;
        const height = text.split(/\r\n|\r|\n/).length;
        for (const fault of result.faults) {
          expect(fault.line).toBeGreaterThanOrEqual(text.trim() === "" ? 0 : 1);
          expect(fault.line).toBeLessThanOrEqual(height);
          expect(fault.column).toBeGreaterThanOrEqual(fault.line === 0 ? 0 : 1);
          expect(fault.expected).not.toMatch(/^$|undefined|Invalid|NaN|\[object/);
          expect(fault.found).not.toMatch(/^$|undefined|\[object/);
          expect(faultSentence(fault)).toMatch(/^zz\.yaml/);
        }
      }),
      { numRuns: 100 },
    );
  });

  it("is always refused when a key that it must have is taken out", async () => {
    const required = lines.flatMap((line, i) =>
      /^ {4}(title|method|shouldBe|why|walks|hazard|holds):/.test(line) ? [i] : [],
    );
    expect(required.length).toBeGreaterThan(20);
    for (const i of required) {
      const key = (lines[i] ?? "").trim().split(":")[0];
      const result = await readBook(lines.toSpliced(i, 1).join("\n"), "zz.yaml");
      expect(result.ok ? [] : result.faults.map(({ path, found }) => `${path}: ${found}`)).toEqual([
        expect.stringMatching(new RegExp(`^checks\\[\\d\\]\\.${key}: nothing$`)),
      ]);
    }
  });
});

it("reads a large book: a thousand checks at two points each", async () => {
  const marker = "groundGear:";
  const [head = "", tail = ""] = smallBookText.split(marker);
  const more = Array.from(
    { length: 1000 },
    (_, i) =>
      `  - { id: extra-${i}, at: [right-main-tyre, left-main-tyre], title: Look at mark ${i}, method: look, shouldBe: In line., why: It moves., hazard: { severity: low, ifMissed: Nothing. }, walks: [first-of-day], holds: { until: [flown] }${i > 0 ? `, after: [extra-${i - 1}]` : ""} }\n`,
  ).join("");
  const book = await good(`${head}${more.trimEnd()}\n\n${marker}${tail}`);
  expect(book.checks).toHaveLength(2007);
  expect(check(book, "extra-999.left-main-tyre").after).toEqual(["extra-998.left-main-tyre"]);
});
