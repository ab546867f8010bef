import { roundToSafeSide, type TyreActionKind, tyreAction } from "@witnessmark/engine";
import type { Working } from "../assessment.ts";
import { sentence } from "../words/count-words.ts";
import { limitShown } from "./figures.ts";
import type { Judged, Told } from "./judged.ts";
import { sourceOf } from "./limit-now.ts";
import type { ReadingVerdict } from "./reading-verdict.ts";

/** Above this much of its service pressure the guidance has no band; a reading there is no tyre that was pumped up. */
const NO_BAND_PERCENT = 200;

interface Act {
  readonly status: "caution" | "stop";
  /** What is to be done; `service` is the service pressure now, rounded up. */
  readonly words: (service: string) => string;
  readonly wayOut: (service: string) => readonly [string, ...string[]];
}

const LET_DOWN = "let it down when it is cold, never bleed a hot tyre";

const ACTS: Readonly<Record<TyreActionKind, Act>> = {
  readjust: { status: "caution", words: () => LET_DOWN, wayOut: () => ["Let it down when it is cold"] },
  // Inside the band: judged by conformity, not here. Kept strict in case it ever comes.
  none: { status: "caution", words: () => "read it again", wayOut: () => ["Read it again"] },
  reinflate: {
    status: "caution",
    words: (service) => `pump it up to ${service}`,
    wayOut: (service) => [`Pump it up to ${service}`],
  },
  "inspect-and-reinflate": {
    status: "stop",
    words: (service) => `find the cause, pump it up to ${service}, record it`,
    wayOut: (service) => [
      `Find the cause, pump it up to ${service} and record it: licensed mechanic, then read again`,
    ],
  },
  "remove-tyre": {
    status: "stop",
    words: () => "tyre and wheel come off",
    wayOut: () => ["Take tyre and wheel off: licensed mechanic, then look again"],
  },
  "remove-tyre-and-mate": {
    status: "stop",
    words: () => "tyre and wheel come off, with the one beside it on the axle",
    wayOut: () => [
      "Take tyre and wheel off, and the one beside it on the axle: licensed mechanic, then look again",
    ],
  },
  "remove-flat-tyre-and-mate": {
    status: "stop",
    words: () => "flat: tyre and wheel come off, with the one beside it on the axle",
    wayOut: () => [
      "Take tyre and wheel off, and the one beside it on the axle: licensed mechanic, then look again",
    ],
  },
};

const withPercent = (working: Working, percent: number): Working => ({
  ...working,
  lines: [
    ...working.lines,
    { label: "Of the service pressure now", value: `${roundToSafeSide(percent, 1, "down")}\u00A0%` },
  ],
});

/**
 * A tyre outside 100 to 105 % of its service pressure at its temperature: what the published guidance says to do,
 * by how much it has lost.
 */
export function tyreOutside(judged: Judged, common: Told): ReadingVerdict {
  const service_Pa = judged.limit.band.low ?? 0; // a tyre's band begins at its service pressure, above zero
  const percent = (judged.valueSI / service_Pa) * 100;
  if (!(percent >= 0 && percent <= NO_BAND_PERCENT)) {
    return {
      ...common,
      working: withPercent(common.working, percent),
      status: "stop",
      because: [percent < 0 ? "Below no pressure at all" : "More than twice its service pressure"],
      wayOut: [`Read it again; if it is so, ${LET_DOWN}`],
    };
  }
  const action = tyreAction(percent);
  const act = ACTS[action.kind];
  const service = limitShown(service_Pa, "low", judged.figures);
  const told = {
    ...common,
    says: `${common.says}: ${act.words(service)}`,
    working: withPercent(common.working, percent),
    sources: [...common.sources, sourceOf(action.source)],
  };
  const because: [string, string] = [sentence(action.band), action.action];
  return act.status === "stop"
    ? { ...told, status: "stop", because, wayOut: act.wayOut(service) }
    : { ...told, status: "caution", because };
}
