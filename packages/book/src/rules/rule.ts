import type { Report } from "../faults/fault-list.ts";
import type { Draft } from "../shape/draft.ts";

/** One thing that must hold between the parts of a book; says where it does not. */
export type Rule = (draft: Draft, report: Report) => void;
