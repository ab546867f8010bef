import type { Figures } from "./figures.ts";

type Walk = "first-of-day" | "turnaround" | "after-flight";
type Until = "fuelled" | "unattended" | "rain" | "frost" | "maintenance" | "flown" | "towed" | "loaded";

/** A look that most aircraft want. It names no figure: figures are those of the aircraft's own manual. */
export interface Look {
  readonly id: string;
  /** Parts that it is made at. */
  readonly at: readonly string[];
  readonly title: string;
  readonly method: "look" | "touch" | "move" | "measure" | "count" | "drain" | "listen";
  readonly how: string;
  readonly shouldBe: string;
  readonly why: string;
  readonly faults: readonly string[];
  readonly severity: "high" | "medium" | "low";
  readonly ifMissed: string;
  readonly walks: readonly Walk[];
  readonly until: readonly Until[];
  readonly atMost?: string;
  readonly least_s: number;
  /** Four figures of the FAA JASC table. */
  readonly jasc: string;
  readonly evidence?: "photo";
  readonly when?: (figures: Figures) => boolean;
}

export const EVERY_WALK: readonly Walk[] = ["first-of-day", "turnaround", "after-flight"];
export const BEFORE_FLIGHT: readonly Walk[] = ["first-of-day", "turnaround"];
export const ONCE_A_DAY: readonly Walk[] = ["first-of-day"];
/** What someone near it, or work on it, can have moved. */
export const BY_ANYONE: readonly Until[] = ["unattended", "maintenance"];
export const BY_FLIGHT: readonly Until[] = ["flown", "maintenance"];
