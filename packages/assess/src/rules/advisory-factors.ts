import type { Citation } from "./ruling.ts";

/** A factor on a distance that somebody publishes as wise; no rule of private flight asks it. */
export interface AdvisoryFactor {
  readonly id: string;
  readonly title: string;
  readonly on: "take-off-distance" | "landing-distance";
  readonly factor_1: number;
  readonly citation: Citation;
}

const LEAFLET: Citation = {
  title: "UK CAA, Safety Sense leaflet 7, aeroplane performance",
  edition: "leaflet 7c",
  status: "from memory",
  note: "For unfactored figures only.",
};

const CLASS_B: Citation = {
  title: "Performance class B regulatory factors (CAP 698, single-engine piston)",
  edition: "training notes, undated",
  status: "published",
};

/** Offered to a pilot who wants more than none; never chosen for him. */
export const ADVISORY_FACTORS: readonly AdvisoryFactor[] = [
  {
    id: "leaflet-7-take-off",
    title: "Safety Sense leaflet 7, take-off",
    on: "take-off-distance",
    factor_1: 1.33,
    citation: LEAFLET,
  },
  {
    id: "class-b-take-off",
    title: "Class B, take-off without stopway or clearway",
    on: "take-off-distance",
    factor_1: 1.25,
    citation: CLASS_B,
  },
  {
    id: "leaflet-7-landing",
    title: "Safety Sense leaflet 7, landing",
    on: "landing-distance",
    factor_1: 1.43,
    citation: LEAFLET,
  },
  {
    id: "seventy-percent-landing",
    title: "70 % of the landing distance available",
    on: "landing-distance",
    factor_1: 1 / 0.7,
    citation: {
      title: "CAT.POL.A.330: landing, dry runways",
      locator: "(a)",
      edition: "UK Regulation 965/2012",
      url: "https://regulatorylibrary.caa.co.uk/965-2012/Content/Regs/08370_CAT.POL.A.330.htm",
      status: "published",
      note: "A rule of commercial flight.",
    },
  },
  {
    id: "time-of-arrival-landing",
    title: "15 % at the time of arrival",
    on: "landing-distance",
    factor_1: 1.15,
    citation: {
      title: "FAA SAFO 19001, landing performance assessments at time of arrival",
      edition: "2019",
      status: "published",
      note: "On distances for the actual conditions, not on unfactored dry ones.",
    },
  },
];
