import { DOES_NOT_WORK_QUESTIONS } from "./does-not-work.ts";
import { ENTRY_QUESTIONS } from "./entries.ts";
import { FLIGHT_QUESTIONS } from "./flight.ts";
import { ICE_AND_WATER_QUESTIONS } from "./ice-and-water.ts";
import { PAPERS_QUESTIONS } from "./papers.ts";
import { PILOT_QUESTIONS } from "./pilot.ts";
import { PUT_OFF_QUESTIONS } from "./put-off.ts";
import type { RuleQuestion } from "./question.ts";
import { TESTED_QUESTIONS } from "./tested.ts";
import { WORK_QUESTIONS } from "./work.ts";

/** Every question that a rule answers, by its id, in the order in which they are shown. */
export const ruleQuestions: ReadonlyMap<string, RuleQuestion> = new Map(
  [
    ...WORK_QUESTIONS,
    ...DOES_NOT_WORK_QUESTIONS,
    ...PUT_OFF_QUESTIONS,
    ...PAPERS_QUESTIONS,
    ...PILOT_QUESTIONS,
    ...TESTED_QUESTIONS,
    ...FLIGHT_QUESTIONS,
    ...ICE_AND_WATER_QUESTIONS,
    ...ENTRY_QUESTIONS,
  ].map((question) => [question.id, question]),
);
