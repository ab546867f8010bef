import { InputError } from "../input-error.ts";
import type { QuantitySource } from "../registry/quantity.ts";

export type TyreActionKind =
  | "readjust"
  | "none"
  | "reinflate"
  | "inspect-and-reinflate"
  | "remove-tyre"
  | "remove-tyre-and-mate"
  | "remove-flat-tyre-and-mate";

/** One band of the action table for a tyre that is fitted, cold, and read under load. */
export interface TyreAction {
  readonly kind: TyreActionKind;
  /** Lower edge of the band, included; percent of the loaded service pressure at the tyre's temperature. */
  readonly from_percent: number;
  /** Upper edge of the band: included for "none", not for the others; absent above 105. */
  readonly to_percent?: number;
  /** `90 to under 95 % of the service pressure` */
  readonly band: string;
  /** What the guidance says to do, in this project's words. */
  readonly action: string;
  readonly source: QuantitySource;
}

const TITLE = "Goodyear, Aircraft Tire Care and Maintenance: cold service pressure action table";
const EDITION = "10/04 and later";

const SEEN: QuantitySource = {
  title: TITLE,
  edition: EDITION,
  locator: "recommended action, row 100 to 105 %",
  status: "published",
};
const REMEMBERED: QuantitySource = {
  title: TITLE,
  edition: EDITION,
  locator: "recommended action",
  status: "from memory",
  note: "only the row from 100 to 105 % was read in print; this row is from memory",
};

/** From the top down; the first band whose lower edge is reached holds. */
const BANDS: readonly TyreAction[] = [
  {
    kind: "readjust",
    from_percent: 105,
    band: "over 105 % of the service pressure",
    action:
      "Readjust to between 100 and 105 % of the service pressure, with the tyre cold; never bleed a warm tyre.",
    source: REMEMBERED,
  },
  {
    kind: "none",
    from_percent: 100,
    to_percent: 105,
    band: "100 to 105 % of the service pressure",
    action: "None.",
    source: SEEN,
  },
  {
    kind: "reinflate",
    from_percent: 95,
    to_percent: 100,
    band: "95 to under 100 % of the service pressure",
    action: "Re-inflate to the service pressure.",
    source: REMEMBERED,
  },
  {
    kind: "inspect-and-reinflate",
    from_percent: 90,
    to_percent: 95,
    band: "90 to under 95 % of the service pressure",
    action:
      "Inspect tyre and wheel for the cause, re-inflate and record it. Remove the tyre if it loses more than 5 % again within 24 hours.",
    source: REMEMBERED,
  },
  {
    kind: "remove-tyre",
    from_percent: 80,
    to_percent: 90,
    band: "80 to under 90 % of the service pressure",
    action: "Remove the tyre and wheel from the aircraft.",
    source: REMEMBERED,
  },
  {
    kind: "remove-tyre-and-mate",
    from_percent: 0,
    to_percent: 80,
    band: "under 80 % of the service pressure",
    action: "Remove the tyre and wheel and the one beside it on the same axle.",
    source: REMEMBERED,
  },
];

/** Flat: nothing left that a gauge shows. */
const FLAT: TyreAction = {
  kind: "remove-flat-tyre-and-mate",
  from_percent: 0,
  to_percent: 0,
  band: "flat",
  action:
    "Remove the tyre and wheel and the one beside it on the same axle; scrap both if the pressure was lost while rolling.",
  source: REMEMBERED,
};

/**
 * What the published tyre-care guidance says to do with a fitted tyre, by what it has of its service pressure.
 * The aircraft's own manual comes first.
 *
 * @param percentOfService cold, loaded, against the service pressure at the tyre's temperature; 0 or more
 * @throws {InputError} `out-of-range`
 */
export function tyreAction(percentOfService: number): TyreAction {
  if (!(percentOfService >= 0 && Number.isFinite(percentOfService))) {
    throw new InputError("out-of-range", "percentOfService", {
      expected: "0 % or more of the service pressure",
      received: String(percentOfService),
      remedy: "check the reading, the service pressure and their units",
    });
  }
  if (percentOfService === 0) return FLAT;
  const band = BANDS.find(({ kind, from_percent }) =>
    kind === "readjust" ? percentOfService > from_percent : percentOfService >= from_percent,
  );
  return band ?? FLAT;
}
