import type { TippingPoint } from "@witnessmark/assess";
import { withSymbol } from "@witnessmark/engine";
import { clockText } from "../local-time.ts";
import { digits } from "./figure-text.ts";

/** One value at which the answer changes. */
export interface SheetTip {
  /** `Crosswind, ZZQN 29, stop: gust from 240°` */
  readonly what: string;
  /** `26 kt`, `5 kt tail`, `16:23` */
  readonly value: string;
}

/** A sheet has room for a handful. */
const TOLD = 5;

/** The same place is not said twice in one line. */
function withoutPlace(title: string, verdictTitle: string): string {
  const place = / (?:at|on) (\S+)(?: \S+)?$/.exec(title);
  return place?.[1] !== undefined && verdictTitle.includes(place[1]) ? title.slice(0, place.index) : title;
}

function tipOf(point: TippingPoint, offBlocks_ms: number, east_min: number): SheetTip {
  const { variable, title, unit, now, changes, verdictTitle, becomes, better } = point;
  const becomesText = better ? `${becomes} again` : becomes;
  const told = (what: string, value: string): SheetTip => {
    const isSaid = verdictTitle.toLowerCase().startsWith(what.toLowerCase());
    return { what: `${verdictTitle}, ${becomesText}${isSaid ? "" : `: ${what}`}`, value };
  };
  if (variable === "delay")
    return told("off blocks", clockText(offBlocks_ms + Math.floor(changes) * 60_000, east_min));
  // towards now, as the screen has it: what is written still holds, or only just does not
  const value = changes > now ? Math.floor(changes) : Math.ceil(changes);
  const what = withoutPlace(title, verdictTitle);
  if (variable.startsWith("along:") && changes < 0)
    return told(what.replace(/^headwind/, "tailwind"), `${withSymbol(digits(Math.abs(value)), unit)} tail`);
  return told(what, withSymbol(digits(value), unit));
}

/** The nearest first, a handful. @param points as the assessment has them, the likeliest first */
export const tipsOf = (
  points: readonly TippingPoint[],
  offBlocks_ms: number,
  east_min: number,
): readonly SheetTip[] => points.slice(0, TOLD).map((point) => tipOf(point, offBlocks_ms, east_min));
