import type { Answer, CouldNotReason } from "@witnessmark/ledger";

export const ANSWER_WORDS: Readonly<Record<Answer, string>> = {
  "as-it-should-be": "as it should be",
  "not-right": "not right",
  "could-not-check": "could not check",
};

export const REASONS: readonly CouldNotReason[] = [
  "too-dark",
  "out-of-reach",
  "too-hot",
  "no-tool",
  "weather",
  "something-else",
];

export const REASON_WORDS: Readonly<Record<CouldNotReason, string>> = {
  "too-dark": "Too dark",
  "out-of-reach": "Out of reach",
  "too-hot": "Too hot yet",
  "no-tool": "No tool with me",
  weather: "Weather",
  "something-else": "Something else",
};
