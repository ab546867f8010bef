/** What is wrong with a value that came in: data for programs, one sentence for people. */
export type InputErrorCode =
  | "not-a-number"
  | "out-of-range"
  | "wrong-unit"
  | "unknown-unit"
  | "missing"
  | "unknown-input"
  | "unknown-quantity";

export interface InputErrorDetail {
  /** What would have been right, with its unit. */
  readonly expected: string;
  /** What came, as it came. */
  readonly received: string;
  /** What the person can do about it; no full stop at its end. */
  readonly remedy?: string;
  /** The id of the quantity that refused it, where there is one. */
  readonly quantity?: string;
  /** The value in SI units, where a number came. */
  readonly value?: number;
  /** The lowest and highest value in SI units that would have been taken. */
  readonly range?: readonly [number, number];
}

/** A value that a quantity, a unit or a reader refuses. `code` and `field` are for programs, `message` for people. */
export class InputError extends Error {
  override readonly name = "InputError";
  readonly code: InputErrorCode;
  readonly field: string;
  readonly detail: InputErrorDetail;

  constructor(code: InputErrorCode, field: string, detail: InputErrorDetail) {
    const place = detail.quantity === undefined ? field : `${detail.quantity}, ${field}`;
    const remedy = detail.remedy === undefined ? "" : `; ${detail.remedy}`;
    super(`${place}: expected ${detail.expected}, received ${detail.received}${remedy}`);
    this.code = code;
    this.field = field;
    this.detail = detail;
  }
}
