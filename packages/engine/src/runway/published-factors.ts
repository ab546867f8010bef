import type { QuantitySource } from "../registry/quantity.ts";
import type { ChainStage, DistanceFactor, FactorBase } from "./distance-chain.ts";

export type RunwaySurface = "paved" | "grass";
export type SurfaceCondition = "dry" | "wet" | "soft" | "snow" | "slush" | "ice" | "standing-water";
export type RunwayPhase = "take-off" | "landing";

/** A set of factors that belong together and are not mixed. */
export type FactorSet = "european-class-b" | "leaflet-7";

export interface PublishedFactor {
  readonly id: string;
  readonly set: FactorSet;
  readonly stage: ChainStage;
  readonly phase: RunwayPhase;
  /** The surface and condition that it is for; a safety factor is for every one. */
  readonly when?: { readonly surface: RunwaySurface; readonly condition: SurfaceCondition };
  readonly title: string;
  readonly factor_1: number;
  readonly of: FactorBase;
  readonly source: QuantitySource;
}

const CLASS_B: QuantitySource = {
  title:
    "AMC1 and AMC2 CAT.POL.A.305, CAT.POL.A.330, CAT.POL.A.335, performance class B; training notes on CAP 698",
  edition: "UK Air Operations Regulations, consolidated copy 2020/2021; notes undated",
  locator: "runway surface, slope, regulatory factors",
  status: "published",
};

const GM_WET_GRASS: QuantitySource = {
  title: "GM1 CAT.POL.A.335 Landing, wet and contaminated runways",
  edition: "UK CAA ORS9 Decision No. 1",
  locator: "(a)",
  url: "https://regulatorylibrary.caa.co.uk/965-2012/Content/GM/GM1%20CAT%20POL%20A%20335%20Landing.htm",
  status: "published",
};

const LEAFLET_7: QuantitySource = {
  title: "CAA SafetySense Leaflet 7, Aeroplane Performance",
  edition: "issue 7c, January 2013",
  locator: "table of factors",
  status: "from memory",
};

type Row = Pick<PublishedFactor, "id" | "phase" | "when" | "title" | "factor_1"> &
  Partial<Pick<PublishedFactor, "source">>;

const rows = (set: FactorSet, source: QuantitySource, given: readonly Row[]): readonly PublishedFactor[] =>
  given.map((row) => ({
    source,
    ...row,
    set,
    of: "each",
    stage: row.when === undefined ? "safety" : "surface",
  }));

const DRY_GRASS = { surface: "grass", condition: "dry" } as const;
const WET_GRASS = { surface: "grass", condition: "wet" } as const;
const WET_PAVED = { surface: "paved", condition: "wet" } as const;

/** Factors that authorities print, for distances that a manual gives without any. The book's own come first. */
export const PUBLISHED_FACTORS: readonly PublishedFactor[] = [
  ...rows("european-class-b", CLASS_B, [
    {
      id: "class-b-grass-dry-take-off",
      phase: "take-off",
      when: DRY_GRASS,
      title: "dry grass up to 20 cm, firm soil",
      factor_1: 1.2,
    },
    {
      id: "class-b-grass-wet-take-off",
      phase: "take-off",
      when: WET_GRASS,
      title: "wet grass up to 20 cm, firm soil",
      factor_1: 1.3,
    },
    {
      id: "class-b-paved-wet-take-off",
      phase: "take-off",
      when: WET_PAVED,
      title: "wet paved runway: no factor",
      factor_1: 1,
    },
    {
      id: "class-b-grass-dry-landing",
      phase: "landing",
      when: DRY_GRASS,
      title: "grass up to 20 cm, firm soil",
      factor_1: 1.15,
    },
    {
      id: "class-b-grass-wet-landing",
      phase: "landing",
      when: WET_GRASS,
      title: "wet grass, very short on firm soil: up to this",
      factor_1: 1.6,
      source: GM_WET_GRASS,
    },
    {
      id: "class-b-paved-wet-landing",
      phase: "landing",
      when: WET_PAVED,
      title: "wet paved runway",
      factor_1: 1.15,
    },
    {
      id: "class-b-safety-take-off",
      phase: "take-off",
      title: "no stopway or clearway: against the take-off run available",
      factor_1: 1.25,
    },
    {
      id: "class-b-safety-landing",
      phase: "landing",
      title: "landing within 70 % of the distance available",
      factor_1: 1 / 0.7,
    },
  ]),
  ...rows("leaflet-7", LEAFLET_7, [
    {
      id: "leaflet-7-grass-dry-take-off",
      phase: "take-off",
      when: DRY_GRASS,
      title: "dry grass up to 20 cm, firm soil",
      factor_1: 1.2,
    },
    {
      id: "leaflet-7-grass-wet-take-off",
      phase: "take-off",
      when: WET_GRASS,
      title: "wet grass up to 20 cm, firm soil",
      factor_1: 1.3,
    },
    {
      id: "leaflet-7-paved-wet-take-off",
      phase: "take-off",
      when: WET_PAVED,
      title: "wet paved runway: no factor",
      factor_1: 1,
    },
    {
      id: "leaflet-7-grass-soft-take-off",
      phase: "take-off",
      when: { surface: "grass", condition: "soft" },
      title: "soft ground, at least",
      factor_1: 1.25,
    },
    {
      id: "leaflet-7-grass-dry-landing",
      phase: "landing",
      when: DRY_GRASS,
      title: "dry grass up to 20 cm, firm soil",
      factor_1: 1.15,
    },
    {
      id: "leaflet-7-grass-wet-landing",
      phase: "landing",
      when: WET_GRASS,
      title: "wet grass, surface and wetness together",
      factor_1: 1.35,
    },
    {
      id: "leaflet-7-paved-wet-landing",
      phase: "landing",
      when: WET_PAVED,
      title: "wet paved runway",
      factor_1: 1.15,
    },
    {
      id: "leaflet-7-grass-soft-landing",
      phase: "landing",
      when: { surface: "grass", condition: "soft" },
      title: "soft ground, at least",
      factor_1: 1.25,
    },
    {
      id: "leaflet-7-safety-take-off",
      phase: "take-off",
      title: "safety factor for unfactored figures",
      factor_1: 1.33,
    },
    {
      id: "leaflet-7-safety-landing",
      phase: "landing",
      title: "safety factor for unfactored figures",
      factor_1: 1.43,
    },
  ]),
];

/** Increases of leaflet 7 that do not depend on the surface: for cross-checks against a table, never in its place. */
export const LEAFLET_7_VARIATIONS = [
  { id: "mass-10-percent-more", title: "10 % more mass", takeOffFactor_1: 1.2, landingFactor_1: 1.1 },
  { id: "temperature-10-degC-more", title: "10 °C warmer", takeOffFactor_1: 1.1, landingFactor_1: 1.05 },
  {
    id: "slope-2-percent-against",
    title: "2 % slope: up for take-off, down for landing",
    takeOffFactor_1: 1.1,
    landingFactor_1: 1.1,
  },
  {
    id: "tailwind-10-percent",
    title: "tailwind of 10 % of the lift-off or approach speed",
    takeOffFactor_1: 1.2,
    landingFactor_1: 1.2,
  },
] as const;

/**
 * Landing distance factors by runway condition code, for a turboprop whose propellers brake well in disc; with the 15 %
 * margin in. From memory: to be compared with the printed circular before a book relies on them.
 *
 * @source SAFO 19001 (2019), AC 91-79B (2023), table of landing distance factors; from memory
 */
export const TURBOPROP_CONDITION_FACTORS = [
  { code: "6", title: "dry", factor_1: 1.67 },
  { code: "5 grooved", title: "wet, grooved or porous", factor_1: 1.92 },
  { code: "5", title: "wet, smooth", factor_1: 2 },
  { code: "4", title: "code 4", factor_1: 2.2 },
  { code: "3", title: "code 3", factor_1: 2.4 },
  { code: "2", title: "code 2", factor_1: 2.7 },
  { code: "1", title: "code 1", factor_1: 2.9 },
] as const;

/**
 * The factors of a set for a runway as it is. A dry paved runway needs none; a surface that the set says nothing of has
 * no figure, and the answer is open.
 */
export function surfaceFactors(
  set: FactorSet,
  phase: RunwayPhase,
  surface: RunwaySurface,
  condition: SurfaceCondition,
): readonly DistanceFactor[] | undefined {
  if (surface === "paved" && condition === "dry") return [];
  const found = PUBLISHED_FACTORS.filter(
    (factor) =>
      factor.set === set &&
      factor.phase === phase &&
      factor.when?.surface === surface &&
      factor.when.condition === condition,
  );
  return found.length === 0 ? undefined : found.map(asChainFactor);
}

/** The safety factor of a set. */
export const safetyFactors = (set: FactorSet, phase: RunwayPhase): readonly DistanceFactor[] =>
  PUBLISHED_FACTORS.filter(
    (factor) => factor.set === set && factor.phase === phase && factor.stage === "safety",
  ).map(asChainFactor);

const asChainFactor = ({ stage, id, title, factor_1, of, source }: PublishedFactor): DistanceFactor => ({
  stage,
  id,
  title,
  factor_1,
  of,
  source: [source.title, source.locator].filter((part) => part !== undefined).join(", "),
});
