import type { Citations } from "../ruling.ts";

export const COMMAND_CITATIONS: Citations = [
  {
    title: "14 CFR 91.3(a), 91.7(b) and 91.13(a): the pilot in command decides, and discontinues; 91.205(e)",
    edition: "as noted with the cases",
    status: "published",
  },
];

/** A condition that came up in flight. */
export type InFlight = "not-airworthy" | "dme-lost-at-fl240";

export interface CommandAnswer {
  readonly action: string;
  readonly rule: string;
}

/** What a rule asks of the pilot when something fails in the air. */
export function inFlight(condition: InFlight): CommandAnswer {
  switch (condition) {
    case "not-airworthy":
      return { action: "discontinue flight", rule: "91.7(b)" };
    case "dme-lost-at-fl240":
      return {
        action:
          "notify ATC at once; may continue to next airport of intended landing where it can be repaired",
        rule: "91.205(e)",
      };
    default:
      return condition satisfies never;
  }
}

/** Legal is not go: rules that all hold leave the pilot free to stay. */
export const goOrStay = (rulesHold: boolean, judgesHazard: boolean): "go" | "no-go" =>
  rulesHold && !judgesHazard ? "go" : "no-go";
