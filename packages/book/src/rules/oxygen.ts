import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { OxygenSource } from "../schema/oxygen.ts";
import type { Draft } from "../shape/draft.ts";
import { firstById } from "../shape/first-by-id.ts";
import { mustNotBeBelow0 } from "./amounts.ts";
import { measureText } from "./measure-text.ts";
import type { Rule } from "./rule.ts";

/** What the engine can work with. */
const FULL_Pa = { least: 1e6, most: 20.8e6 } as const;
const WATER_m3 = { least: 1e-4, most: 0.2 } as const;
const NOMINAL_m3 = { least: 0.01, most: 30 } as const;

/** The cylinder can be one, its gauge and its check belong to it, and its outlets give something to somebody. */
export const oxygenCanBeGiven: Rule = (draft, report) => {
  const { oxygen, loading } = draft;
  if (oxygen === undefined) return;
  cylinderCanBeOne(oxygen.cylinder, report);
  checkReadsTheCylinder(draft, oxygen.cylinder, report);
  for (const [i, { seat, flows }] of oxygen.outlets.entries()) {
    const path: Path = ["oxygen", "outlets", i];
    const station = loading?.stations.find(({ id }) => id === seat);
    if (station?.kind === "bay") {
      report([...path, "seat"], { expected: "the id of a seat", found: `\`${seat}\`, a bay` });
    }
    for (const [j, { cabinAltitude, flow }] of flows.entries()) {
      mustNotBeBelow0("a flow", flow, [...path, "flows", j, "flow"], report);
      const before = flows[j - 1]?.cabinAltitude;
      if (before === undefined || cabinAltitude.valueSI > before.valueSI) continue;
      report([...path, "flows", j, "cabinAltitude"], {
        expected: `an altitude above that of the row before, ${measureText(before)}`,
        found: measureText(cabinAltitude),
        remedy: "put the rows in order, lowest first",
      });
    }
  }
};

function cylinderCanBeOne(
  { waterVolume, nominal, full, residual }: OxygenSource["cylinder"],
  report: Report,
): void {
  const path: Path = ["oxygen", "cylinder"];
  if ((waterVolume === undefined) === (nominal === undefined)) {
    report(path, {
      expected: "either its inner volume or its nominal contents",
      found: nominal === undefined ? "neither" : "both",
      remedy: "write `waterVolume:` or `nominal:`, not both",
    });
  }
  const sizes = [
    ["waterVolume", waterVolume, WATER_m3],
    ["nominal", nominal, NOMINAL_m3],
  ] as const;
  for (const [key, size, { least, most }] of sizes) {
    if (size === undefined || (size.valueSI >= least && size.valueSI <= most)) continue;
    report([...path, key], {
      expected: `the size of an aircraft's cylinder, ${least * 1000} to ${most * 1000} L`,
      found: measureText(size),
    });
  }
  if (!(full.pressure.valueSI >= FULL_Pa.least && full.pressure.valueSI <= FULL_Pa.most)) {
    report([...path, "full", "pressure"], {
      expected: `the pressure of a full cylinder, ${FULL_Pa.least / 1e5} to ${FULL_Pa.most / 1e5} bar`,
      found: measureText(full.pressure),
    });
  }
  mustNotBeBelow0("a pressure", residual, [...path, "residual"], report);
  if (residual.valueSI >= full.pressure.valueSI) {
    report([...path, "residual"], {
      expected: `a pressure below that of the full cylinder, ${measureText(full.pressure)}`,
      found: measureText(residual),
    });
  }
}

function checkReadsTheCylinder(draft: Draft, cylinder: OxygenSource["cylinder"], report: Report): void {
  const gauge = firstById(draft.gauges).get(cylinder.gauge);
  if (gauge !== undefined && gauge.dimension !== "pressure") {
    report(["oxygen", "cylinder", "gauge"], {
      expected: "a gauge of pressure",
      found: `\`${gauge.id}\`, a gauge of ${gauge.dimension}`,
    });
  }
  const check = firstById(draft.checks).get(cylinder.check);
  if (check === undefined) return;
  const path: Path = ["oxygen", "cylinder", "check"];
  if (typeof check.at !== "string" && check.at.length > 1) {
    report(path, {
      expected: "a check that is made at one point",
      found: `\`${check.id}\`, made at ${check.at.length}`,
      remedy: "one cylinder has one pressure: name a check of its own",
    });
  }
  if (check.reading?.gauge === cylinder.gauge) return;
  report(path, {
    expected: `a check that reads \`${cylinder.gauge}\``,
    found:
      check.reading === undefined
        ? `\`${check.id}\`, which reads nothing`
        : `\`${check.id}\`, which reads \`${check.reading.gauge}\``,
    remedy: "mend the gauge, or name the check that reads it",
  });
}
