import type { EXIT } from "./exit-code.ts";

/** A command that cannot be carried out: a sentence that says why and what to do, and the exit code it ends with. */
export class Refused extends Error {
  override readonly name = "Refused";
  readonly exit: Extract<keyof typeof EXIT, "usage" | "unreadable" | "faults">;
  constructor(exit: Refused["exit"], sentence: string) {
    super(sentence);
    this.exit = exit;
  }
}
