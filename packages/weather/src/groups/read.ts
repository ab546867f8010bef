import type { Fault } from "../aspect.ts";
import type { Part } from "./part.ts";

/** What a reader made of the tokens at its place. */
export interface GroupRead {
  /** How many tokens belong to the group, at least one. */
  readonly count: number;
  readonly part?: Part;
  readonly fault?: Fault;
}

/** Where a reader stands: the tokens, the place, and what the section has said so far. */
export interface Place {
  readonly tokens: readonly string[];
  readonly at: number;
  readonly section: "body" | "trend" | "forecast";
  readonly seen: ReadonlySet<string>;
}

/** A reader knows one subject: it answers for its own groups, and with `undefined` for those of others. */
export type Reader = (place: Place) => GroupRead | undefined;

export const used = (part: Part, count = 1): GroupRead => ({ count, part });
export const faulty = (fault: Fault, part?: Part, count = 1): GroupRead =>
  part === undefined ? { count, fault } : { count, part, fault };

export const tokenAt = ({ tokens, at }: Place, ahead = 0): string => tokens[at + ahead] ?? "";
