/** A problem that cannot be planned as it was given: says what was expected, what came and what to do. */
export class PlannerError extends Error {
  readonly code: "bad-input" | "circle" | "out-of-reach";
  readonly field: string;

  constructor(
    code: PlannerError["code"],
    field: string,
    told: { readonly expected: string; readonly found: string; readonly remedy: string },
  ) {
    super(`${field}: expected ${told.expected}, found ${told.found}; ${told.remedy}`);
    this.name = "PlannerError";
    this.code = code;
    this.field = field;
  }
}
