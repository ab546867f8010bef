import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { Reading } from "../schema/reading.ts";
import type { Draft } from "../shape/draft.ts";
import { firstById } from "../shape/first-by-id.ts";
import { measureText } from "./measure-text.ts";
import { readReading } from "./read-reading.ts";

/** Readings by the place of their check in the book. */
export type Readings = ReadonlyMap<number, Reading>;

/** Every reading with its limits as measures; says where one cannot be, and where a check lacks one. */
export function readReadings(draft: Draft, report: Report): Readings {
  const gauges = firstById(draft.gauges);
  const readings = new Map<number, Reading>();
  for (const { index, value } of draft.checks) {
    const path: Path = ["checks", index];
    if (value.evidence === "reading" && value.reading === undefined) {
      report([...path, "evidence"], {
        expected: "a reading to leave as evidence",
        found: "a check that asks for none",
        remedy: "add `reading:`, or take `look` or `photo` as evidence",
      });
    }
    if (value.least.valueSI <= 0) {
      report([...path, "least"], { expected: "a time above 0", found: measureText(value.least) });
    }
    if (value.holds.atMost !== undefined && value.holds.atMost.valueSI <= 0) {
      report([...path, "holds", "atMost"], {
        expected: "a time above 0",
        found: measureText(value.holds.atMost),
      });
    }
    for (const [i, { measure }] of value.faults.entries()) {
      if (measure === undefined || measure.allowed.valueSI < measure.upTo.valueSI) continue;
      report([...path, "faults", i, "measure", "upTo"], {
        expected: `a rule that reaches past what is allowed, ${measureText(measure.allowed)}`,
        found: measureText(measure.upTo),
      });
    }
    const gauge = value.reading === undefined ? undefined : gauges.get(value.reading.gauge);
    if (value.reading === undefined || gauge === undefined) continue;
    const reading = readReading(value.reading, gauge, [...path, "reading"], report);
    if (reading !== undefined) readings.set(index, reading);
  }
  return readings;
}
