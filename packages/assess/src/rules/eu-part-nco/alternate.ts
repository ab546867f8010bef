import { toSI } from "@witnessmark/engine";
import { ceilingReaches, ceilingText, visibilityReaches } from "../ceiling.ts";
import { type Condition, stepsOf, together } from "../conditions.ts";
import { feet, isAtLeast, metres } from "../edges.ts";
import { DATE_MISSING, type Dated, inForce } from "../in-force.ts";
import type {
  AlternateNeededInput,
  AlternateUsable,
  AlternateUsableInput,
  PublishedMinima,
} from "../rule-pack.ts";
import { type Citation, type Citations, cannotTell, figure, type Ruling, someMissing } from "../ruling.ts";

interface AlternateText extends Dated {
  readonly id: "older" | "present";
  readonly needed: Citation;
  readonly usable: Citation;
}

const OLDER =
  "Regulation (EU) No 965/2012 before 30 October 2022; in the United Kingdom before 30 October 2025";
const PRESENT = "Regulation (EU) 2021/2237; a like text in the United Kingdom from 30 October 2025";

const TEXTS: readonly [AlternateText, AlternateText] = [
  {
    from: "2013-08-25",
    id: "older",
    needed: {
      title: "NCO.OP.140: destination alternate aerodromes, aeroplanes",
      locator: "(a)",
      edition: OLDER,
      inForceFrom: "2013-08-25",
      url: "http://online.flipbuilder.com/xuei/rqzt/files/basic-html/page685.html",
      status: "published",
      note: "(b), for isolated places, is not followed here.",
    },
    usable: {
      title: "Regulation (EU) No 965/2012, annex I: weather-permissible aerodrome",
      edition: OLDER,
      inForceFrom: "2013-08-25",
      status: "from memory",
    },
  },
  {
    from: "2022-10-30",
    id: "present",
    needed: {
      title: "NCO.OP.140: destination alternate aerodromes, aeroplanes",
      edition: PRESENT,
      inForceFrom: "2022-10-30",
      status: "from memory",
      note: "What it says of isolated places is not followed here.",
    },
    usable: {
      title: "NCO.OP.143: destination alternate aerodromes, planning minima, aeroplanes",
      edition: PRESENT,
      inForceFrom: "2022-10-30",
      status: "from memory",
    },
  },
];

const NEEDED: Citations = [TEXTS[0].needed, TEXTS[1].needed];
const USABLE: Citations = [TEXTS[0].usable, TEXTS[1].usable];

const WINDOW = "from one hour before to one hour after the arrival";
const ABOVE_MINIMUM_M = toSI(1000, "ft");
const DESTINATION_VISIBILITY_M = 5000;

const farText = (visibility_m: number | undefined): string => {
  const far_m = figure(visibility_m);
  return far_m === undefined ? "visibility not known" : `visibility ${metres(far_m)}`;
};

function neededByMinima(input: AlternateNeededInput): readonly Condition[] {
  const minimum_m = figure(input.approachMinimum_m);
  const least_m = minimum_m === undefined ? undefined : minimum_m + ABOVE_MINIMUM_M;
  // Less than 1,000 ft above the field is too little whatever the approach's own minimum.
  const reaches =
    least_m === undefined
      ? ceilingReaches(input.ceiling_m, ABOVE_MINIMUM_M) === false
        ? false
        : undefined
      : ceilingReaches(input.ceiling_m, least_m);
  const unknownPart =
    least_m === undefined
      ? ({
          input: "approachMinimum_m",
          what: "the decision or minimum descent height at the destination",
        } as const)
      : ({ input: "ceiling_m", what: `the lowest ceiling ${WINDOW}` } as const);
  return [
    {
      input: "approach",
      what: "whether the destination has an instrument approach that can be flown",
      holds: input.approach,
      step: "An instrument approach at the destination",
    },
    {
      ...unknownPart,
      holds: reaches,
      step: `${ceilingText(input.ceiling_m)}, at least ${least_m === undefined ? "1,000 ft above the approach's minimum" : feet(least_m)} asked`,
    },
    {
      input: "visibility_m",
      what: `the lowest visibility ${WINDOW}`,
      holds: visibilityReaches(input.visibility_m, DESTINATION_VISIBILITY_M),
      step: `${farText(input.visibility_m)}, at least ${metres(DESTINATION_VISIBILITY_M)} asked`,
    },
  ];
}

const neededInSight = (input: AlternateNeededInput): readonly Condition[] => [
  {
    input: "visualConditions",
    what: `whether approach and landing can be made in visual conditions ${WINDOW}`,
    holds: input.visualConditions,
    step: `Approach and landing in visual conditions ${WINDOW}`,
  },
];

export function alternateNeeded(input: AlternateNeededInput): Ruling<{ readonly needed: boolean }> {
  if (input.flightRules === "VFR")
    return {
      known: true,
      needed: false,
      citations: NEEDED,
      text: "No alternate is asked of a flight under visual rules.",
      steps: ["Visual flight rules: the paragraph is about instrument flights."],
    };
  if (input.flightRules === undefined)
    return cannotTell(NEEDED, [{ input: "flightRules", what: "visual or instrument flight rules" }]);
  const text = inForce(TEXTS, input.on);
  if (text === undefined) return cannotTell(NEEDED, [DATE_MISSING]);
  const conditions = text.id === "older" ? neededInSight(input) : neededByMinima(input);
  const steps = [`The text in force from ${text.from} applies.`, ...stepsOf(conditions)];
  const result = together(conditions);
  if (result.all === "unknown") return cannotTell([text.needed], result.missing, steps);
  const needed = result.all === "fail";
  return {
    known: true,
    needed,
    citations: [text.needed],
    text: needed ? "An alternate must be named." : "No alternate is needed.",
    steps,
  };
}

/** What the weather at the alternate must reach, or what is not known for saying so. */
function askedOf(
  input: AlternateUsableInput,
  id: AlternateText["id"],
): PublishedMinima | { readonly lacks: readonly { readonly input: string; readonly what: string }[] } {
  if (input.approach === "none") {
    const safe_m = figure(input.safeHeight_m);
    if (safe_m === undefined)
      return {
        lacks: [{ input: "safeHeight_m", what: "the least safe height under instrument rules there" }],
      };
    return { ceiling_m: Math.max(toSI(2000, "ft"), safe_m), visibility_m: 5000 };
  }
  const minimum_m = figure(input.approachMinimum_m);
  const approach_m = figure(input.approachVisibility_m);
  const lacks = [
    ...(minimum_m === undefined
      ? [{ input: "approachMinimum_m", what: "the decision or minimum descent height at the alternate" }]
      : []),
    ...(approach_m === undefined
      ? [{ input: "approachVisibility_m", what: "the visibility that the approach at the alternate asks" }]
      : []),
  ];
  if (minimum_m === undefined || approach_m === undefined) return { lacks };
  if (id === "older") return { ceiling_m: minimum_m, visibility_m: approach_m };
  const isLow = !isAtLeast(minimum_m, toSI(250, "ft"));
  return {
    ceiling_m: minimum_m + toSI(isLow ? 200 : 400, "ft"),
    visibility_m: Math.max(isLow ? 1500 : 3000, approach_m),
  };
}

export function alternateUsable(input: AlternateUsableInput): Ruling<AlternateUsable> {
  const text = inForce(TEXTS, input.on);
  if (text === undefined) return cannotTell(USABLE, [DATE_MISSING]);
  if (input.approach === undefined)
    return cannotTell(
      [text.usable],
      [{ input: "approach", what: "which kind of approach the alternate has" }],
    );
  const asked = askedOf(input, text.id);
  const dated = `The text in force from ${text.from} applies.`;
  if ("lacks" in asked) {
    const missing = someMissing(asked.lacks);
    return cannotTell([text.usable], missing ?? [{ input: "approach", what: "the approach's minima" }], [
      dated,
    ]);
  }
  const conditions: readonly Condition[] = [
    {
      input: "ceiling_m",
      what: `the lowest ceiling at the alternate ${WINDOW}`,
      holds: ceilingReaches(input.ceiling_m, asked.ceiling_m),
      step: `${ceilingText(input.ceiling_m)}, at least ${feet(asked.ceiling_m)} asked`,
    },
    {
      input: "visibility_m",
      what: `the lowest visibility at the alternate ${WINDOW}`,
      holds: visibilityReaches(input.visibility_m, asked.visibility_m),
      step: `${farText(input.visibility_m)}, at least ${metres(asked.visibility_m)} asked`,
    },
  ];
  const steps = [dated, ...stepsOf(conditions)];
  const result = together(conditions);
  if (result.all === "unknown") return cannotTell([text.usable], result.missing, steps);
  const usable = result.all === "hold";
  return {
    known: true,
    usable,
    asked,
    citations: [text.usable],
    text: `${usable ? "Can" : "Cannot"} be named: ${feet(asked.ceiling_m)} and ${metres(asked.visibility_m)} are asked.`,
    steps,
  };
}
