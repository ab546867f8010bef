import type { FlightRules } from "../rule-pack.ts";
import type { Citations } from "../ruling.ts";

export const PREFLIGHT_CITATIONS: Citations = [
  {
    title: "14 CFR 91.103: preflight action",
    locator: "(a), (b)",
    edition: "2021 consolidation",
    status: "published",
    note: "The pilot becomes familiar with all available information; this is what the rule names.",
  },
];

const BEYOND_THE_FIELD = [
  "weather reports and forecasts",
  "fuel requirements",
  "alternatives",
  "known ATC delays",
] as const;
const ALWAYS = ["runway lengths", "takeoff and landing distance"] as const;

/** What the rule names as the least to know; what is not known of the flight asks for more. */
export const preflightInformation = (input: {
  readonly flightRules?: FlightRules | undefined;
  /** In the vicinity of an airport. */
  readonly local?: boolean | undefined;
}): readonly string[] =>
  input.flightRules === "VFR" && input.local === true ? ALWAYS : [...BEYOND_THE_FIELD, ...ALWAYS];

/** What of it is lacking. */
export const preflightLacks = (
  input: Parameters<typeof preflightInformation>[0],
  have: readonly string[],
): readonly string[] => preflightInformation(input).filter((part) => !have.includes(part));
