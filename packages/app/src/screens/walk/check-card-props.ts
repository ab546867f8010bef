import type { Check } from "@witnessmark/book";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import type { StepView, WalkView } from "../../walk/walk-view.ts";
import type { Sayer } from "./sayer.ts";

/** What the card of a check, and the questions that follow an answer, are given. */
export interface CheckCardProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly inHand: StepView;
  readonly check: Check;
  readonly sayer: Sayer;
  readonly wide: boolean;
}
