/** What went wrong inside: `unconfirmed`, an answer that the engine does not confirm; `solver`, no answer at all. */
export type FitErrorCode = "unconfirmed" | "solver";

/** An answer that must not be shown. It is a fault of this package, not of what was asked. */
export class FitError extends Error {
  override readonly name = "FitError";
  readonly code: FitErrorCode;

  constructor(code: FitErrorCode, message: string) {
    super(message);
    this.code = code;
  }
}
