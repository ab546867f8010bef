import type { Arrangement, Breach, MostAtStation, MostFuel, NotAnswered, OtherWays } from "@witnessmark/fit";

/** What still fits a load that is within its limits; or what would put one right that is not. */
export type WhatFits =
  | {
      readonly kind: "within";
      readonly fuel: MostFuel;
      readonly places: readonly MostAtStation[] | NotAnswered;
    }
  | {
      readonly kind: "broken";
      readonly breaches: readonly Breach[];
      readonly arrangement: Arrangement | NotAnswered;
      /** With nothing moved; where no moving helps, with moves besides. */
      readonly others: OtherWays;
    };
