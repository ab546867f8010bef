import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tyreActionBand, tyreLoss, tyreRetentionLimit, tyreShareOfService } from "./tyre.ts";
import { tyreAction } from "./tyre-action.ts";

const service = { servicePressure_Pa: 350_000, serviceTemperature_K: 288.15, ambientPressure_Pa: 101_325 };

describe("a tyre against its service pressure", () => {
  it("has all of it at the service temperature and the service pressure", () => {
    const full = { ...service, gaugePressure_Pa: 350_000, temperature_K: 288.15 };
    expect(tyreShareOfService.compute(full)).toBeCloseTo(1, 14);
    expect(tyreLoss.compute(full)).toBeCloseTo(0, 14);
  });

  it("that reads its service pressure on a hot day has lost some, on a cold day none", () => {
    const at = (temperature_K: number): number =>
      tyreShareOfService.compute({ ...service, gaugePressure_Pa: 350_000, temperature_K });
    expect(at(308.15)).toBeLessThan(1);
    expect(at(268.15)).toBeGreaterThan(1);
  });

  it("loses what its share lacks, never less than nothing", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 700_000, noNaN: true }),
        fc.double({ min: 240, max: 330, noNaN: true }),
        (gaugePressure_Pa, temperature_K) => {
          const given = { ...service, gaugePressure_Pa, temperature_K };
          const loss_1 = tyreLoss.compute(given);
          expect(loss_1).toBe(Math.max(0, 1 - tyreShareOfService.compute(given)));
          expect(loss_1).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  it("may lose 5 % in a day and the stricter 2.5 % in anything less", () => {
    expect(tyreRetentionLimit.compute({ elapsed_s: 86_400 })).toBe(0.05);
    expect(tyreRetentionLimit.compute({ elapsed_s: 86_399 })).toBe(0.025);
    expect(tyreRetentionLimit.compute({ elapsed_s: 43_200 })).toBe(0.025);
  });
});

describe("the action for a tyre", () => {
  // Goodyear, Aircraft Tire Care and Maintenance, action table: 100 to 105 % read in print, the other rows from memory.
  it.each([
    [500, "readjust"],
    [105.01, "readjust"],
    [105, "none"],
    [102, "none"],
    [100, "none"],
    [99.999, "reinflate"],
    [97, "reinflate"],
    [95, "reinflate"],
    [94.999, "inspect-and-reinflate"],
    [92, "inspect-and-reinflate"],
    [90, "inspect-and-reinflate"],
    [89.999, "remove-tyre"],
    [80, "remove-tyre"],
    [79.999, "remove-tyre-and-mate"],
    [75, "remove-tyre-and-mate"],
    [0.001, "remove-tyre-and-mate"],
    [0, "remove-flat-tyre-and-mate"],
  ])("at %d %% is %s", (percent, kind) => {
    expect(tyreAction(percent).kind).toBe(kind);
  });

  it("says what the guidance says", () => {
    expect(tyreAction(102).action).toBe("None.");
    expect(tyreAction(97).action).toBe("Re-inflate to the service pressure.");
    expect(tyreAction(92).action).toBe(
      "Inspect tyre and wheel for the cause, re-inflate and record it. " +
        "Remove the tyre if it loses more than 5 % again within 24 hours.",
    );
    expect(tyreAction(85).action).toBe("Remove the tyre and wheel from the aircraft.");
    expect(tyreAction(75).action).toBe("Remove the tyre and wheel and the one beside it on the same axle.");
  });

  it("admits which rows are from memory", () => {
    expect(tyreAction(102).source.status).toBe("published");
    for (const percent of [106, 97, 92, 85, 75, 0])
      expect(tyreAction(percent).source.status).toBe("from memory");
  });

  it("never asks less of a tyre that has less", () => {
    const severity = [
      "none",
      "reinflate",
      "inspect-and-reinflate",
      "remove-tyre",
      "remove-tyre-and-mate",
      "remove-flat-tyre-and-mate",
    ];
    const share = fc.double({ min: 0, max: 105, noNaN: true });
    fc.assert(
      fc.property(share, share, (a, b) => {
        const more = severity.indexOf(tyreAction(Math.max(a, b)).kind);
        const less = severity.indexOf(tyreAction(Math.min(a, b)).kind);
        expect(less).toBeGreaterThanOrEqual(more);
        expect(more).toBeGreaterThanOrEqual(0);
      }),
    );
  });

  it("comes in bands that join: each ends where the next above begins", () => {
    const bands = [75, 85, 92, 97, 102, 110].map((percent) => tyreAction(percent));
    expect(bands.map(({ from_percent }) => from_percent)).toEqual([0, 80, 90, 95, 100, 105]);
    expect(bands.map(({ to_percent }) => to_percent)).toEqual([80, 90, 95, 100, 105, undefined]);
  });

  it("belongs to the band that it names", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 2, noNaN: true }), (share_1) => {
        const from_1 = tyreActionBand.compute({ share_1 });
        expect(from_1).toBeLessThanOrEqual(share_1);
        const { to_percent } = tyreAction(share_1 * 100);
        if (to_percent !== undefined) expect(share_1 * 100).toBeLessThanOrEqual(to_percent);
      }),
    );
  });

  it.each([-0.1, Number.NaN, Number.POSITIVE_INFINITY])("at %d %% is refused", (percent) => {
    expect(() => tyreAction(percent)).toThrow(
      `percentOfService: expected 0 % or more of the service pressure, received ${percent}; ` +
        "check the reading, the service pressure and their units",
    );
  });
});
