import { minutes } from "../edges.ts";
import type { ReserveInput, ReserveTime } from "../rule-pack.ts";
import { type Citation, cannotTell, type Ruling } from "../ruling.ts";

const BY_SIGHT: Citation = {
  title: "14 CFR 91.151: fuel requirements for flight in VFR conditions",
  locator: "(a)",
  edition: "current text, as set out on a legal page",
  status: "published",
};

const BY_INSTRUMENTS: Citation = {
  title: "14 CFR 91.167: fuel requirements for flight in IFR conditions",
  locator: "(a)(3)",
  edition: "1 January 2024 edition of the CFR volume",
  inForceFrom: "2000-01-21",
  url: "https://www.faraim.org/faa/far/cfr/title-14/part-91/section-91.169/title-14-part-91-sec91-169.html",
  status: "published",
};

const DAY_S = 30 * 60;
const NIGHT_OR_IFR_S = 45 * 60;

const said = (citation: Citation, time_s: number, why: string): Ruling<ReserveTime> => ({
  known: true,
  time_s,
  burn: "normal-cruise",
  citations: [citation],
  text: `${minutes(time_s)} at normal cruising speed must be left after the first place of intended landing.`,
  steps: [`${why}: ${minutes(time_s)} at normal cruising speed.`],
});

export function finalReserveTime(input: ReserveInput): Ruling<ReserveTime> {
  if (input.flightRules === "IFR") return said(BY_INSTRUMENTS, NIGHT_OR_IFR_S, "Aeroplane, instrument rules");
  if (input.flightRules === undefined)
    return cannotTell(
      [BY_SIGHT, BY_INSTRUMENTS],
      [{ input: "flightRules", what: "visual or instrument flight rules" }],
    );
  if (input.night === undefined)
    return cannotTell([BY_SIGHT], [{ input: "night", what: "whether any of the flight is by night" }]);
  return input.night
    ? said(BY_SIGHT, NIGHT_OR_IFR_S, "Aeroplane, visual rules by night")
    : said(BY_SIGHT, DAY_S, "Aeroplane, visual rules by day");
}
