import type { Draft, PhotoToKeep } from "../../keep/contract.ts";

export interface AlsoKept {
  /** Must be kept before the drafts, such as several photos: when that fails, nothing is answered. */
  readonly first?: () => Promise<unknown>;
  /** In one transaction with the drafts. */
  readonly photo?: PhotoToKeep;
}

/** How the card in hand keeps what a person says of its step. */
export interface Sayer {
  readonly busy: boolean;
  readonly trouble: string | null;
  dismiss(): void;
  /**
   * Keeps the drafts in one go, then takes up the next step; false, and everything stays, when it was not kept.
   *
   * @param also what is kept with them
   */
  say(drafts: readonly Draft[], also?: AlsoKept): Promise<boolean>;
  /** Keeps something beside the answer: a note, a photo. The step stays in hand. */
  aside(words: string, task: () => Promise<unknown>): Promise<boolean>;
}
