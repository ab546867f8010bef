import type { DepositsAnswer, DepositsInput } from "../rule-pack.ts";
import { type Citations, cannotTell, type Ruling } from "../ruling.ts";

const CITATIONS: Citations = [
  {
    title: "NCO.OP.165: ice and other contaminants, ground procedures",
    edition: "Regulation (EU) No 965/2012, consolidated",
    status: "from memory",
    note: "Clear of any deposit that might adversely affect performance or control, except as the flight manual permits. NCC.OP.185(b), in the same words, was read in print.",
  },
];

const UNDER_WING = "wing lower surface at the tanks";

const forbidden = (steps: readonly string[]): Ruling<DepositsAnswer> => ({
  known: true,
  takeOff: "forbidden",
  basis: "rule",
  citations: CITATIONS,
  text: "No take-off until the aeroplane is clear of the deposit.",
  steps,
});

export function takeOffWithDeposits(input: DepositsInput): Ruling<DepositsAnswer> {
  const { adheringTo, underWingAllowed } = input;
  if (input.polished === true) return forbidden(["Polished frost is a deposit."]);
  if (adheringTo === undefined)
    return cannotTell(CITATIONS, [
      { input: "adheringTo", what: "where frost, ice or snow adheres, or that there is none" },
    ]);
  const elsewhere = adheringTo.filter((place) => place !== UNDER_WING);
  if (elsewhere.length > 0) return forbidden(elsewhere.map((place) => `Adhering to ${place}.`));
  const under = adheringTo.includes(UNDER_WING);
  if (under && underWingAllowed === undefined)
    return cannotTell(CITATIONS, [
      {
        input: "underWingAllowed",
        what: "whether the flight manual permits frost beneath the wing at the tanks",
      },
    ]);
  if (under && underWingAllowed === false)
    return forbidden(["Beneath the wing at the tanks; the manual does not permit it."]);
  return {
    known: true,
    takeOff: "not-hindered",
    basis: "rule",
    citations: CITATIONS,
    text: under ? "Only what the flight manual permits." : "No deposit.",
    steps: [
      under
        ? "Frost beneath the wing at the tanks alone, as the manual permits."
        : "Looked at, and nothing adheres.",
    ],
  };
}
