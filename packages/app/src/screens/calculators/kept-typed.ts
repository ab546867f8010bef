import type { UnitId } from "@witnessmark/engine";

/** What was typed into a page in this sitting: it is there again after a look at another. */
export interface KeptTyped {
  readonly texts: Readonly<Record<string, readonly string[]>>;
  /** Units that the person chose; the rest begins as the trade has it. */
  readonly units: Readonly<Record<string, UnitId>>;
}

export const NOTHING_TYPED: KeptTyped = { texts: {}, units: {} };

const sitting = new Map<string, KeptTyped>();

/** @param page which one: the id of a quantity, or what another list calls its pages */
export const keptTyped = (page: string): KeptTyped => sitting.get(page) ?? NOTHING_TYPED;
export const keepTyped = (page: string, typed: KeptTyped): void => void sitting.set(page, typed);

/** Where one was in a list: what was looked for, and how far it was scrolled. */
export interface InList {
  looked: string;
  scrolled_px: number;
}

/** In the list of the calculators. */
export const inList: InList = { looked: "", scrolled_px: 0 };
