import type { FollowedItem } from "@witnessmark/assess";
import type { AddedItem } from "@witnessmark/ledger";
import type { Draft } from "../../keep/contract.ts";

/** An item that is followed here, or one that a rule pack offers and nobody follows yet. */
export interface FollowedHere {
  readonly item: FollowedItem;
  /** Set while nobody follows it. */
  readonly offered?: AddedItem;
}

interface DoneSaid {
  readonly on: string;
  /** Empty where nothing is printed. */
  readonly until: string;
  readonly counters: Readonly<Record<string, number>>;
  readonly by: string;
  readonly reference: string;
  readonly person: string;
}

/** What is kept when something was done: that it is followed from now on, where it was not, and the doing itself. */
export function doneDrafts({ item, offered }: FollowedHere, said: DoneSaid): readonly Draft[] {
  const reference = said.reference.trim();
  return [
    ...followDrafts({ item, ...(offered === undefined ? {} : { offered }) }),
    {
      type: "timedItem.done",
      body: {
        item: item.id,
        on: said.on,
        counters: said.counters,
        by: said.by.trim(),
        ...(said.until === "" ? {} : { until: said.until }),
        ...(reference === "" ? {} : { reference }),
        ...(item.about === "pilot" ? { holder: said.person } : {}),
      },
    },
  ];
}

/** That an offered item is followed from now on; nothing for one that is. */
export const followDrafts = ({ offered }: FollowedHere): readonly Draft[] =>
  offered === undefined ? [] : [{ type: "timedItem.added", body: { item: offered } }];
