import type { Verdict } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";

/** What the flight needs of one thing, what it has, what is left. */
export interface SheetNumber {
  /** `Landing, ZZQN 29, wet` */
  readonly what: string;
  readonly needs: string;
  readonly has: string;
  /** `112 m`, `4 kt over`, `open` */
  readonly left: string;
  readonly status: Status;
  /** What is not known; only where it is open. */
  readonly why?: string;
}

/** A line has room for so many letters of reasons. */
const ROOM = 96;

/** The first reason, and as many more as have room; the notes have them all. */
export function whyOf(lacks: readonly string[]): string {
  const [first, ...more] = new Set(lacks);
  if (first === undefined) return "Not known";
  let why = `Not known: ${first}`;
  for (const [index, one] of more.entries()) {
    if (why.length + one.length > ROOM) return `${why}, and ${more.length - index} more`;
    why += `; ${one}`;
  }
  return why;
}

/** A line of what is not known, and what of it is. */
export const openLine = (what: string, missing: readonly string[], needs = ""): SheetNumber => ({
  what,
  needs,
  has: "",
  left: "open",
  status: "open",
  why: whyOf(missing),
});

/** What is left in the words of the verdict on it; empty where it tells none. */
export const leftOf = ({ margin }: Verdict): string => margin?.text ?? "";
