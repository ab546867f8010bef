import type { Answer, CouldNotReason } from "@witnessmark/ledger";
import { isRecord, stored } from "../../preferences/stored.ts";
import { ANSWER_WORDS, REASONS } from "../../words/answers.ts";
import type { TypedStep, TypedWalk } from "./typed-in.ts";

export const EMPTY_WALK: TypedWalk = {
  kind: "first-of-day",
  begun: "",
  ended: "",
  temperature: "",
  steps: {},
};

const text = (found: unknown): string => (typeof found === "string" ? found : "");

function walkOf(found: Readonly<Record<string, unknown>>): TypedWalk {
  const { kind } = found as { kind?: unknown }; // read as unknown, judged here
  const steps: Record<string, TypedStep> = {};
  const given = found["steps"];
  for (const [id, step] of Object.entries(isRecord(given) ? given : {})) {
    if (isRecord(step)) steps[id] = stepOf(step);
  }
  return {
    kind: kind === "turnaround" || kind === "after-flight" ? kind : "first-of-day",
    begun: text(found["begun"]),
    ended: text(found["ended"]),
    temperature: text(found["temperature"]),
    steps,
  };
}

const isAnswer = (found: unknown): found is Answer => typeof found === "string" && found in ANSWER_WORDS;
const reasonOf = (found: unknown): CouldNotReason | undefined => REASONS.find((each) => each === found);

function stepOf(found: Readonly<Record<string, unknown>>): TypedStep {
  const reason = reasonOf(found["reason"]);
  return {
    ...(isAnswer(found["answer"]) ? { answer: found["answer"] } : {}),
    ...(reason === undefined ? {} : { reason }),
    ...(typeof found["words"] === "string" ? { words: found["words"] } : {}),
    ...(typeof found["fault"] === "string" ? { fault: found["fault"] } : {}),
    ...(typeof found["figure"] === "string" ? { figure: found["figure"] } : {}),
    ...(typeof found["stowedIn"] === "string" ? { stowedIn: found["stowedIn"] } : {}),
  };
}

/** A walk half typed in, by aircraft: a killed app must not lose it. */
export const typedWalks = stored<Readonly<Record<string, TypedWalk>>>("typed-in", (found) => {
  const walks: Record<string, TypedWalk> = {};
  for (const [registration, walk] of Object.entries(isRecord(found) ? found : {})) {
    if (isRecord(walk)) walks[registration] = walkOf(walk);
  }
  return walks;
});
