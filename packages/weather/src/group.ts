import type { Aspect, Fault, Outcome, Problem } from "./aspect.ts";
import type { Part } from "./groups/part.ts";
import type { GroupRead } from "./groups/read.ts";
import type { Remark } from "./remarks/remark.ts";

export type Section = "header" | "body" | "trend" | "forecast" | "remarks";

/**
 * One group of a report. The groups of a report hold its tokens, each once and in order: what a group says is in
 * `part` or `remarks`, or it is a word of the header, or `says` tells why it is not.
 */
export interface Group {
  readonly text: string;
  /** The index of its first token in the report, and how many it has. */
  readonly first: number;
  readonly count: number;
  readonly section: Section;
  /** The index of the trend or forecast period. */
  readonly period?: number;
  readonly outcome: Exclude<Outcome, "missing">;
  readonly says?: string;
  readonly affects: readonly Aspect[];
  readonly part?: Part;
  readonly remarks?: readonly Remark[];
}

/** The groups of one report while they are read. */
export class GroupList {
  readonly tokens: readonly string[];
  readonly groups: Group[] = [];
  at = 0;

  constructor(tokens: readonly string[]) {
    this.tokens = tokens;
  }

  get token(): string {
    return this.tokens[this.at] ?? "";
  }
  get done(): boolean {
    return this.at >= this.tokens.length;
  }
  ahead(count: number): string {
    return this.tokens[this.at + count] ?? "";
  }

  /** Takes the next tokens as one group. */
  take(section: Section, read: Partial<GroupRead> = {}, more: Pick<Group, "period" | "remarks"> = {}): Group {
    const count = Math.min(read.count ?? 1, this.tokens.length - this.at);
    const { fault } = read;
    const group: Group = {
      text: this.tokens.slice(this.at, this.at + count).join(" "),
      first: this.at,
      count,
      section,
      outcome: fault === undefined || fault.outcome === "missing" ? "used" : fault.outcome,
      ...(fault === undefined ? {} : { says: fault.says }),
      affects: fault?.affects ?? [],
      ...(read.part === undefined ? {} : { part: read.part }),
      ...(more.period === undefined ? {} : { period: more.period }),
      ...(more.remarks === undefined ? {} : { remarks: more.remarks }),
    };
    this.groups.push(group);
    this.at += count;
    return group;
  }
}

export const problemOf = (group: string, fault: Fault, period?: number): Problem => ({
  group,
  ...fault,
  ...(period === undefined ? {} : { period }),
});

/** What the groups themselves tell. */
export const problemsOf = (groups: readonly Group[]): readonly Problem[] =>
  groups.flatMap(({ text, outcome, says, affects, period }) =>
    outcome === "used" || says === undefined ? [] : [problemOf(text, { outcome, says, affects }, period)],
  );
