import type { ReliefAnswer, ReliefSaid } from "@witnessmark/assess";

interface Question<K extends keyof ReliefSaid> {
  readonly asks: (answer: ReliefAnswer) => string;
  readonly choices: readonly { readonly label: string; readonly value: NonNullable<ReliefSaid[K]> }[];
}

const YES_NO = [
  { label: "Yes", value: true },
  { label: "No", value: false },
] as const;

/** What the rules want to know of the person, one thing after the other. */
export const QUESTIONS: { readonly [K in keyof Required<ReliefSaid>]: Question<K> } = {
  action: {
    asks: () => "What was done with it?",
    choices: [
      { label: "Removed", value: "removed" },
      { label: "Made inactive", value: "deactivated" },
      { label: "Nothing yet", value: "none" },
    ],
  },
  placard: { asks: ({ placard }) => `Is a placard fitted: “${placard}”?`, choices: YES_NO },
  deactivationIsMaintenance: {
    asks: () => "Was making it inactive maintenance, beyond a switch or a breaker?",
    choices: YES_NO,
  },
  recorded: { asks: () => "Does it stand in the maintenance record?", choices: YES_NO },
  noHazardBy: {
    asks: () => "Who has determined that it is no hazard?",
    choices: [
      { label: "The pilot", value: "pilot" },
      { label: "A mechanic", value: "mechanic" },
      { label: "Certifying staff", value: "certifying-staff" },
      { label: "Nobody", value: "nobody" },
    ],
  },
  recordAtHand: { asks: () => "Is a record of it at hand for the pilot?", choices: YES_NO },
  provisosMet: { asks: () => "Is every condition of the list met on this flight?", choices: YES_NO },
  permit: { asks: () => "Was a special permit issued?", choices: YES_NO },
};
