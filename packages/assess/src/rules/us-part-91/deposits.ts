import type { DepositsAnswer, DepositsInput } from "../rule-pack.ts";
import { type Citations, cannotTell, type Ruling } from "../ruling.ts";

export const DEPOSIT_CITATIONS: Citations = [
  {
    title: "14 CFR 91.527: operating in icing conditions",
    locator: "(a)",
    edition: "2019 text",
    inForceFrom: "2010-02-01",
    url: "https://www.legalfix.com/CFR/2019/title-14/chapter-i/part-91/section-91%2E527",
    status: "published",
    note: "Subpart F binds large and turbine-powered multi-engine aeroplanes only; for others it is the measure of care. The polished-frost relief ended with 74 FR 62691.",
  },
  {
    title: "14 CFR 91.7 and 91.9: airworthiness; flight manual, markings and placards",
    edition: "current text",
    status: "from memory",
  },
  {
    title: "AC 91-74B: pilot guide, flight in icing conditions",
    edition: "8 October 2015; it replaced AC 91-51A",
    status: "published",
  },
];

const UNDER_WING = "wing lower surface at the tanks";

export function takeOffWithDeposits(input: DepositsInput): Ruling<DepositsAnswer> {
  if (input.polished === true)
    return forbidden(["Polished frost is frost: smooth makes no difference since 1 February 2010."]);
  if (input.adheringTo === undefined)
    return cannotTell(DEPOSIT_CITATIONS, [
      { input: "adheringTo", what: "where frost, ice or snow adheres, or that there is none" },
    ]);
  const elsewhere = input.adheringTo.filter((place) => place !== UNDER_WING);
  if (elsewhere.length > 0) return forbidden(elsewhere.map((place) => `Adhering to ${place}.`));
  const under = input.adheringTo.includes(UNDER_WING);
  if (under && input.underWingAllowed === undefined)
    return cannotTell(DEPOSIT_CITATIONS, [
      { input: "underWingAllowed", what: "whether frost beneath the wing at the tanks has been authorised" },
    ]);
  if (under && input.underWingAllowed === false)
    return forbidden(["Beneath the wing at the tanks, and not authorised."]);
  return {
    known: true,
    takeOff: "not-hindered",
    basis: "guidance",
    citations: DEPOSIT_CITATIONS,
    text: under
      ? "Only frost beneath the wing at the tanks, which has been authorised."
      : "No frost, ice or snow adheres.",
    steps: [under ? "Frost beneath the wing at the tanks alone." : "Looked at, and nothing adheres."],
  };
}

const forbidden = (steps: readonly string[]): Ruling<DepositsAnswer> => ({
  known: true,
  takeOff: "forbidden",
  basis: "guidance",
  citations: DEPOSIT_CITATIONS,
  text: "No take-off with frost, ice or snow adhering.",
  steps,
});
