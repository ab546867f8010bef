import { isRecord, stored } from "../../preferences/stored.ts";
import type { Learnt, LearntChecks } from "./round.ts";

/** How far a person has come with an aircraft. It is theirs and no part of the aircraft's record. */
export interface Progress {
  /** Rounds finished. */
  readonly rounds: number;
  readonly checks: LearntChecks;
}

export const NOTHING_LEARNT: Progress = { rounds: 0, checks: {} };

const count = (found: unknown): number =>
  typeof found === "number" && Number.isSafeInteger(found) && found >= 0 ? found : 0;

function checksOf(found: unknown): LearntChecks {
  const checks: Record<string, Learnt> = {};
  for (const [id, value] of Object.entries(isRecord(found) ? found : {})) {
    if (!isRecord(value)) continue;
    checks[id] = {
      asked: count(value["asked"]),
      missed: count(value["missed"]),
      round: count(value["round"]),
      missedLast: value["missedLast"] === true,
    };
  }
  return checks;
}

/** By registration. */
export const progress = stored<Readonly<Record<string, Progress>>>("learnt", (found) => {
  const all: Record<string, Progress> = {};
  for (const [registration, value] of Object.entries(isRecord(found) ? found : {})) {
    if (isRecord(value))
      all[registration] = { rounds: count(value["rounds"]), checks: checksOf(value["checks"]) };
  }
  return all;
});
