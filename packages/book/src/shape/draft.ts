import type { z } from "zod";
import type { Path } from "../faults/path.ts";
import { BookSource } from "../schema/book-source.ts";

const SECTIONS = {
  gauges: BookSource.shape.gauges.element,
  areas: BookSource.shape.areas.element,
  stances: BookSource.shape.stances.element,
  points: BookSource.shape.points.element,
  checks: BookSource.shape.checks.element,
  groundGear: BookSource.shape.groundGear.unwrap().element,
  equipment: BookSource.shape.equipment.unwrap().element,
} as const;
export type ListSection = keyof typeof SECTIONS;
export const LIST_SECTIONS = Object.keys(SECTIONS) as ListSection[]; // keys of a const object

/** One sound item of a list, and where it stands in it. */
export interface Listed<T> {
  readonly index: number;
  readonly value: T;
}

/** Sections that are sound as a whole or not looked at: of half an envelope nothing can be said. */
const WHOLE_SECTIONS = [
  "aircraft",
  "drawnFrom",
  "geometry",
  "loading",
  "fuel",
  "oxygen",
  "cabin",
  "performance",
  "iceProtection",
  "order",
  "last",
  "hazards",
  "fields",
  "relief",
  "counters",
  "timedItems",
] as const;
type WholeSection = (typeof WHOLE_SECTIONS)[number];

type Item<S extends ListSection> = BookSource[S][number];

/**
 * What of a book can be looked at further: all of it when its shape is sound, else the parts that are. An item left
 * out still has its id here, so that a reference to it is not called dangling.
 */
export type Draft = {
  readonly [S in ListSection]: readonly Listed<Item<S>>[];
} & {
  readonly [S in WholeSection]?: BookSource[S] | undefined;
} & {
  /** Every id that is written in a section, in order; absent when the section is not a list. */
  readonly ids: Readonly<Partial<Record<ListSection, readonly WrittenId[]>>>;
};

export interface WrittenId {
  readonly id: string;
  readonly index: number;
}

export function draftOf(source: BookSource): Draft {
  const listed = <T>(items: readonly T[]): readonly Listed<T>[] =>
    items.map((value, index) => ({ index, value }));
  return {
    ...source,
    gauges: listed(source.gauges),
    areas: listed(source.areas),
    stances: listed(source.stances),
    points: listed(source.points),
    checks: listed(source.checks),
    groundGear: listed(source.groundGear),
    equipment: listed(source.equipment),
    ids: writtenIds(source),
  };
}

/** The sound parts of plain data that has faults at these paths. */
export function partialDraftOf(plain: object, faultyPaths: readonly Path[]): Draft {
  const faulty = new Set(faultyPaths.map(([section, index]) => `${section}.${index}`));
  const sound = <S extends ListSection>(section: S): readonly Listed<Item<S>>[] => {
    // The schema of a section gives the items of that section; TypeScript cannot follow the index.
    const schema = SECTIONS[section] as unknown as z.ZodType<Item<S>>;
    return listIn(plain, section).flatMap((item, index) => {
      if (faulty.has(`${section}.${index}`)) return [];
      const parsed = schema.safeParse(item);
      return parsed.success ? [{ index, value: parsed.data }] : [];
    });
  };
  return {
    ...soundSections(plain),
    gauges: sound("gauges"),
    areas: sound("areas"),
    stances: sound("stances"),
    points: sound("points"),
    checks: sound("checks"),
    groundGear: sound("groundGear"),
    equipment: sound("equipment"),
    ids: writtenIds(plain),
  };
}

function soundSections(plain: object): { readonly [S in WholeSection]?: BookSource[S] | undefined } {
  return Object.fromEntries(
    WHOLE_SECTIONS.map((section) => [
      section,
      BookSource.shape[section].safeParse(Reflect.get(plain, section)).data,
    ]),
  );
}

function listIn(plain: object, section: ListSection): readonly unknown[] {
  const list: unknown = Reflect.get(plain, section);
  return Array.isArray(list) ? list : [];
}

function writtenIds(plain: object): Draft["ids"] {
  return Object.fromEntries(
    LIST_SECTIONS.filter((section) => Array.isArray(Reflect.get(plain, section))).map((section) => [
      section,
      listIn(plain, section).flatMap((item, index): WrittenId[] => {
        const id: unknown = typeof item === "object" && item !== null ? Reflect.get(item, "id") : undefined;
        return typeof id === "string" ? [{ id, index }] : [];
      }),
    ]),
  );
}
