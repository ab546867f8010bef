import type { UnitId } from "@witnessmark/engine";

/** What was typed into a calculator in this sitting: it is there again after a look at another. */
export interface KeptTyped {
  readonly texts: Readonly<Record<string, readonly string[]>>;
  /** Units that the person chose; the rest begins as the trade has it. */
  readonly units: Readonly<Record<string, UnitId>>;
}

export const NOTHING_TYPED: KeptTyped = { texts: {}, units: {} };

const sitting = new Map<string, KeptTyped>();

export const keptTyped = (quantity: string): KeptTyped => sitting.get(quantity) ?? NOTHING_TYPED;
export const keepTyped = (quantity: string, typed: KeptTyped): void => void sitting.set(quantity, typed);

/** Where one was in the list: what was looked for, and how far it was scrolled. */
export const inList: { looked: string; scrolled_px: number } = { looked: "", scrolled_px: 0 };
