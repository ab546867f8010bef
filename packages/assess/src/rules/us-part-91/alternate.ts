import { toSI } from "@witnessmark/engine";
import { ceilingReaches, ceilingText, visibilityReaches } from "../ceiling.ts";
import { type Condition, stepsOf, together } from "../conditions.ts";
import { feet, statuteMiles } from "../edges.ts";
import type {
  AlternateNeededInput,
  AlternateUsable,
  AlternateUsableInput,
  PublishedMinima,
} from "../rule-pack.ts";
import { type Citation, type Citations, cannotTell, figure, type Ruling } from "../ruling.ts";

const RULE = "14 CFR 91.169: IFR flight plan";
const EDITION = "1 January 2024 edition of the CFR volume; figures read in two explanatory pages";

const NEEDED: Citations = [
  { title: RULE, locator: "(a)(2), (b)(2)(i)", edition: EDITION, status: "published" },
  {
    title: "14 CFR 91.167: fuel requirements for flight in IFR conditions",
    locator: "(b)",
    edition: "1 January 2024 edition of the CFR volume",
    inForceFrom: "2000-01-21",
    status: "published",
  },
];
const USABLE: Citation = { title: RULE, locator: "(c)(1)", edition: EDITION, status: "published" };
const NO_APPROACH: Citation = { title: RULE, locator: "(c)(2)", edition: EDITION, status: "published" };

const LEAST: PublishedMinima = { ceiling_m: toSI(2000, "ft"), visibility_m: toSI(3, "mi") };

/** Where the field prints none of its own. */
export const STANDARD_MINIMA: Readonly<Record<"precision" | "non-precision", PublishedMinima>> = {
  precision: { ceiling_m: toSI(600, "ft"), visibility_m: toSI(2, "mi") },
  "non-precision": { ceiling_m: toSI(800, "ft"), visibility_m: toSI(2, "mi") },
};

const seen = (visibility_m: number | undefined): string => {
  const far_m = figure(visibility_m);
  return far_m === undefined ? "visibility not known" : `visibility ${statuteMiles(far_m)}`;
};

/** Ceiling and visibility against what is asked. */
function weather(
  input: {
    readonly ceiling_m?: AlternateNeededInput["ceiling_m"];
    readonly visibility_m?: number | undefined;
  },
  least: PublishedMinima,
  when: string,
): readonly Condition[] {
  return [
    {
      input: "ceiling_m",
      what: `the lowest ceiling ${when}`,
      holds: ceilingReaches(input.ceiling_m, least.ceiling_m),
      step: `${ceilingText(input.ceiling_m)}, at least ${feet(least.ceiling_m)} asked`,
    },
    {
      input: "visibility_m",
      what: `the lowest visibility ${when}`,
      holds: visibilityReaches(input.visibility_m, least.visibility_m),
      step: `${seen(input.visibility_m)}, at least ${statuteMiles(least.visibility_m)} asked`,
    },
  ];
}

/** One hour before to one hour after the arrival: 2,000 ft and 3 statute miles, and an approach. */
export function alternateNeeded(input: AlternateNeededInput): Ruling<{ readonly needed: boolean }> {
  if (input.flightRules === undefined)
    return cannotTell(NEEDED, [{ input: "flightRules", what: "visual or instrument flight rules" }]);
  if (input.flightRules === "VFR")
    return {
      known: true,
      needed: false,
      citations: NEEDED,
      text: "No alternate is asked of a flight under visual rules.",
      steps: ["Visual flight rules: the paragraph is about instrument flight plans."],
    };
  const conditions: readonly Condition[] = [
    {
      input: "approach",
      what: "whether the destination has a published instrument approach",
      holds: input.approach,
      step: "A published instrument approach at the destination",
    },
    ...weather(input, LEAST, "from one hour before to one hour after the arrival"),
  ];
  const steps = stepsOf(conditions);
  const result = together(conditions);
  if (result.all === "unknown") return cannotTell(NEEDED, result.missing, steps);
  const needed = result.all === "fail";
  return {
    known: true,
    needed,
    citations: NEEDED,
    text: needed
      ? "An alternate must be filed."
      : "No alternate is needed: approach, 2,000 ft and 3 SM for the hour before and after.",
    steps,
  };
}

function withoutApproach(input: AlternateUsableInput): Ruling<AlternateUsable> {
  if (input.visualFromEnRoute === undefined)
    return cannotTell(
      [NO_APPROACH],
      [
        {
          input: "visualFromEnRoute",
          what: "whether descent from the minimum en-route altitude, approach and landing can be made by basic VFR",
        },
      ],
    );
  const usable = input.visualFromEnRoute;
  return {
    known: true,
    usable,
    citations: [NO_APPROACH],
    text: usable
      ? "Can be filed: descent, approach and landing by basic VFR."
      : "Cannot be filed: no approach, and not by basic VFR from the minimum en-route altitude.",
    steps: ["No instrument approach at the alternate."],
  };
}

export function alternateUsable(input: AlternateUsableInput): Ruling<AlternateUsable> {
  const { approach, published } = input;
  if (approach === undefined)
    return cannotTell([USABLE], [{ input: "approach", what: "which kind of approach the alternate has" }]);
  if (published === "not-authorised")
    return {
      known: true,
      usable: false,
      citations: [USABLE],
      text: "Cannot be filed: its approaches are not authorised for alternates.",
      steps: ["The field prints that it is not authorised as an alternate."],
    };
  if (approach === "none") return withoutApproach(input);
  const asked = published ?? STANDARD_MINIMA[approach];
  const conditions = weather(input, asked, "at the arrival there");
  const steps = [
    published === undefined
      ? `Standard minima of a ${approach} approach; a field's own printed ones would take their place.`
      : "The field's own printed minima.",
    ...stepsOf(conditions),
  ];
  const result = together(conditions);
  if (result.all === "unknown") return cannotTell([USABLE], result.missing, steps);
  const usable = result.all === "hold";
  return {
    known: true,
    usable,
    asked,
    citations: [USABLE],
    text: usable
      ? `Can be filed: at least ${feet(asked.ceiling_m)} and ${statuteMiles(asked.visibility_m)}.`
      : `Cannot be filed: ${feet(asked.ceiling_m)} and ${statuteMiles(asked.visibility_m)} are asked.`,
    steps,
  };
}
