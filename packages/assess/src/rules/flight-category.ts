import { toSI } from "@witnessmark/engine";
import { type Ceiling, ceilingText } from "./ceiling.ts";
import { isAbove, isAtLeast, metres, statuteMiles } from "./edges.ts";
import { type Citations, cannotTell, figure, type MissingInput, type Ruling, someMissing } from "./ruling.ts";

/** A word for planning, from the best to the worst. It is no law, and it knows only ceiling and visibility. */
export type FlightCategory = "VFR" | "MVFR" | "IFR" | "LIFR";

const WORST_FIRST: readonly FlightCategory[] = ["LIFR", "IFR", "MVFR", "VFR"];

export const CATEGORY_CITATIONS: Citations = [
  {
    title: "Aviation flight categories, Aviation Weather Center; AIM 7-1, categorical outlooks",
    locator: "category table",
    edition: "archive copy of 2004; AIM text as quoted",
    url: "https://webharvest.gov/peth04/20041014235706/http://aviationweather.gov/static/info/afc.html",
    status: "published",
  },
];

const METRIC: Citations[0] = {
  title: "AFMAN 15-111, surface weather observations",
  locator: "coding equivalents: 1600, 4800 and 8000 m stand for 1, 3 and 5 statute miles",
  edition: "12 March 2019",
  status: "common practice",
};

export interface CategoryInput {
  /** Lowest broken or overcast layer above the field; absent when not known. */
  readonly ceiling_m?: Ceiling | undefined;
  readonly visibility_m?: number | undefined;
  /** What the report codes visibility in. In metres 4800 stands for 3 statute miles, though it is a little less. */
  readonly codedIn?: "SM" | "m" | undefined;
}

function byCeiling(ceiling_m: Ceiling | undefined): FlightCategory | undefined {
  if (ceiling_m === "none") return "VFR";
  const height_m = figure(ceiling_m);
  if (height_m === undefined) return undefined;
  if (!isAtLeast(height_m, toSI(500, "ft"))) return "LIFR";
  if (!isAtLeast(height_m, toSI(1000, "ft"))) return "IFR";
  return isAbove(height_m, toSI(3000, "ft")) ? "VFR" : "MVFR";
}

function byVisibility(visibility_m: number | undefined, codedIn: "SM" | "m"): FlightCategory | undefined {
  const far_m = figure(visibility_m);
  if (far_m === undefined) return undefined;
  const edge = (miles: number, coded_m: number): number => (codedIn === "m" ? coded_m : toSI(miles, "mi"));
  if (!isAtLeast(far_m, edge(1, 1600))) return "LIFR";
  if (!isAtLeast(far_m, edge(3, 4800))) return "IFR";
  return isAbove(far_m, edge(5, 8000)) ? "VFR" : "MVFR";
}

/** The category of a report: the worse of what its ceiling and its visibility give. */
export function flightCategory(input: CategoryInput): Ruling<{ readonly category: FlightCategory }> {
  const codedIn = input.codedIn ?? "SM";
  const citations: Citations = codedIn === "m" ? [CATEGORY_CITATIONS[0], METRIC] : CATEGORY_CITATIONS;
  const ceiling = byCeiling(input.ceiling_m);
  const visibility = byVisibility(input.visibility_m, codedIn);
  const far_m = figure(input.visibility_m);
  const farText = far_m === undefined ? "not known" : codedIn === "m" ? metres(far_m) : statuteMiles(far_m);
  const steps = [
    `${ceilingText(input.ceiling_m)}: ${ceiling ?? "not known"}.`,
    `visibility ${farText}: ${visibility ?? "not known"}.`,
  ];
  const category = WORST_FIRST.find((one) => one === ceiling || one === visibility);
  const lacks: MissingInput[] = [];
  if (ceiling === undefined) lacks.push({ input: "ceiling_m", what: "the ceiling" });
  if (visibility === undefined) lacks.push({ input: "visibility_m", what: "the visibility" });
  const missing = someMissing(lacks);
  // Nothing is worse than the worst: then the other one does not matter.
  if (missing !== undefined && category !== "LIFR") return cannotTell(citations, missing, steps);
  if (category === undefined)
    return cannotTell(citations, [{ input: "ceiling_m", what: "the ceiling" }], steps);
  return {
    known: true,
    category,
    citations,
    text: `${category}: the worse of ceiling and visibility.`,
    steps,
  };
}
