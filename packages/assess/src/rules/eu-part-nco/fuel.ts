import { minutes } from "../edges.ts";
import { DATE_MISSING, type Dated, inForce } from "../in-force.ts";
import type { ReserveBurn, ReserveInput, ReserveTime } from "../rule-pack.ts";
import { type Citation, type Citations, cannotTell, type Ruling } from "../ruling.ts";

/** Minutes alike in both texts; the burn at which they are reckoned is not. */
interface ReserveText extends Dated {
  readonly citation: Citation;
  readonly localDay: ReserveBurn;
  readonly others: ReserveBurn;
}

const TEXTS: readonly [ReserveText, ReserveText] = [
  {
    from: "2013-08-25",
    citation: {
      title: "NCO.OP.125: fuel and oil supply, aeroplanes",
      locator: "(a)",
      edition:
        "Regulation (EU) No 965/2012 before 30 October 2022; in the United Kingdom before 30 October 2025",
      inForceFrom: "2013-08-25",
      url: "http://online.flipbuilder.com/xuei/rqzt/files/basic-html/page684.html",
      status: "published",
      note: "The lines for night and instrument flight were read in print, those for day are from memory.",
    },
    localDay: "normal-cruise",
    others: "normal-cruise",
  },
  {
    from: "2022-10-30",
    citation: {
      title: "NCO.OP.125: fuel/energy and oil supply, with AMC1 NCO.OP.125(b)",
      locator: "final reserve fuel",
      edition:
        "Regulation (EU) 2021/1296 and ED Decision 2022/005/R; a like text in the United Kingdom from 30 October 2025",
      inForceFrom: "2022-10-30",
      status: "from memory",
    },
    localDay: "max-continuous-cruise",
    others: "holding",
  },
];

const LOCAL_DAY_S = 10 * 60;
const DAY_S = 30 * 60;
const NIGHT_OR_IFR_S = 45 * 60;

const BURN_WORDS: Readonly<Record<ReserveBurn, string>> = {
  "normal-cruise": "at normal cruising altitude",
  holding: "at holding speed, 1,500 ft above the field",
  "max-continuous-cruise": "at maximum continuous cruise power, 1,500 ft above the field",
};

const BOTH: Citations = [TEXTS[0].citation, TEXTS[1].citation];

export function finalReserveTime(input: ReserveInput): Ruling<ReserveTime> {
  const text = inForce(TEXTS, input.on);
  if (text === undefined) return cannotTell(BOTH, [DATE_MISSING]);
  const said = (time_s: number, burn: ReserveBurn, why: string): Ruling<ReserveTime> => ({
    known: true,
    time_s,
    burn,
    citations: [text.citation],
    text: `${minutes(time_s)} ${BURN_WORDS[burn]} must be left at the end.`,
    steps: [
      `The text in force from ${text.from} applies.`,
      `${why}: ${minutes(time_s)} ${BURN_WORDS[burn]}.`,
    ],
  });
  if (input.flightRules === "IFR") return said(NIGHT_OR_IFR_S, text.others, "Instrument rules");
  if (input.flightRules === undefined)
    return cannotTell([text.citation], [{ input: "flightRules", what: "visual or instrument flight rules" }]);
  if (input.night === undefined)
    return cannotTell([text.citation], [{ input: "night", what: "whether any of the flight is by night" }]);
  if (input.night) return said(NIGHT_OR_IFR_S, text.others, "Visual rules by night");
  return input.local === true
    ? said(
        LOCAL_DAY_S,
        text.localDay,
        "Visual rules by day, back to the same field and always in sight of it",
      )
    : said(DAY_S, text.others, "Visual rules by day");
}
