import type { Draft } from "../../keep/contract.ts";

/** How the card in hand keeps what a person says of its step. */
export interface Sayer {
  readonly busy: boolean;
  readonly trouble: string | null;
  dismiss(): void;
  /**
   * Keeps the drafts in one go, then takes up the next step; false, and everything stays, when it was not kept.
   *
   * @param first what must be kept before them, such as photos: when that fails, nothing is answered
   */
  say(drafts: readonly Draft[], first?: () => Promise<unknown>): Promise<boolean>;
  /** Keeps something beside the answer: a note, a photo. The step stays in hand. */
  aside(words: string, task: () => Promise<unknown>): Promise<boolean>;
}
