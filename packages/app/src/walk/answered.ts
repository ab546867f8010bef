/** What a person said of a check, as it is kept. */
export const answered = (walk: string, check: string, answer: "as-it-should-be" | "not-right") =>
  ({ type: "check.answered", body: { walk, check, answer } }) as const;
