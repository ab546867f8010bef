import { addDays } from "@witnessmark/engine";
import type { LocalDate } from "@witnessmark/ledger";
import { holdsWhen, type ReliefSaid, type RuledStep } from "../relief.ts";
import type { Citations } from "../ruling.ts";

export const LOCATOR_CITATIONS: Citations = [
  {
    title: "14 CFR 91.207: emergency locator transmitters",
    locator: "(a), (c), (e), (f)",
    edition: "eCFR issue 2026-08-24",
    url: "https://www.ecfr.gov/on/2026-08-24/title-14/section-91.207",
    status: "published",
  },
];

/** Days after its removal on which one may fly without the locator. @source 14 CFR 91.207(f)(10)(ii) */
const REMOVED_D = 90;

export const LOCATOR_PLACARD = "ELT not installed";

/** The last day on which one may fly without a locator that was removed for repair. */
export const removedLocatorUntil = (removedOn: LocalDate): LocalDate => addDays(removedOn, REMOVED_D);

/** What must be so while the locator is away for repair. */
export const locatorRemoved = ({ placard, recorded }: ReliefSaid): readonly RuledStep[] => [
  {
    rule: "91.207(f)(10)(i)",
    words: "The record says when it was removed, its make, model, serial number and why",
    holds: holdsWhen(recorded, true),
    asks: "recorded",
  },
  {
    rule: "91.207(f)(10)(i)",
    words: `A placard in view of the pilot says "${LOCATOR_PLACARD}"`,
    holds: holdsWhen(placard, true),
    asks: "placard",
  },
];
