import type { AnyQuantity } from "@witnessmark/engine";

/** What a person looks for, and the quantities that belong to it, by id; one that ends in a star stands for all that begin so. */
const SUBJECTS: readonly (readonly [subject: string, ids: string])[] = [
  [
    "Density altitude and altimeter",
    "pressure-altitude density-altitude moist-density-altitude virtual-temperature density-altitude-* pressure-altitude-* " +
      "qfe altimeter-* station-pressure-us reported-qnh flight-level-adjustment",
  ],
  [
    "Wind",
    "headwind-component crosswind-component sector-* wind-at-crosswind-limit angle-at-crosswind-limit counted-wind " +
      "gust-additive demonstrated-crosswind true-direction wind-towards-*",
  ],
  [
    "Runway, climb and speeds",
    "runway-height-change climb-* stall-* level-stall-speed load-factor-in-turn manoeuvring-speed approach-speed true-airspeed " +
      "wind-distance-rule mass-speed-rule mass-take-off-rule mass-landing-rule density-landing-rule fast-approach-rule " +
      "high-threshold-rule halfway-speed-rule accelerate-stop-estimate latest-abort-speed-estimate hydroplaning-*",
  ],
  [
    "Load and balance",
    "total-* centre-* lateral-* mass-to-* ballast-needed percent-mac arm-of-percent-mac weighed-* nose-wheel-centre " +
      "tail-wheel-centre negligible-mass-change minimum-fuel-for-check floor-loading most-on-floor moment-limit spread-* " +
      "sample-for-mean survey-sample passenger-from-stated",
  ],
  [
    "Fuel",
    "fuel-* endurance endurance-* freezing-margin recovery-temperature cold-soaked-temperature reconciled-*",
  ],
  [
    "Oxygen",
    "oxygen-contents oxygen-usable oxygen-usable-share oxygen-water-volume oxygen-total-flow oxygen-mean-flow oxygen-supply " +
      "oxygen-part-capacity oxygen-duration oxygen-flow-rule first-aid-oxygen descent-rate-needed ambient-oxygen-pressure " +
      "tracheal-oxygen-pressure alveolar-oxygen-pressure sea-level-oxygen-equivalent mask-flow-pure-oxygen " +
      "least-added-oxygen-flow",
  ],
  [
    "Cold, frost and moist air",
    "dew-point frost-point relative-humidity frost-margin skin-temperature-rule freezing-level-rule cloud-base-rule " +
      "cold-temperature-* vapour-pressure-* enhancement-factor",
  ],
  ["Sun and twilight", "sunrise sunset civil-* sun-* julian-day"],
  [
    "Tyres, struts and gas",
    "gauge-pressure-* tyre-* strut-* oxygen-pressure-at-temperature nitrogen-* oxygen-density oxygen-compressibility " +
      "ideal-free-volume ntpd-to-stpd btps-to-stpd",
  ],
  [
    "Standard atmosphere",
    "standard-* temperature-ratio pressure-ratio density-ratio geopotential-altitude altitude-of-*",
  ],
  [
    "Gauges and limits",
    "conformance-* nonconformance-* capability-index gauge-uncertainty gauge-uncertainty-* uncertainty-* guard-band-* " +
      "coverage-factor-* acceptance-factor-*",
  ],
];

/** Where a quantity stands that no subject names yet. */
const REST = "Others";

export interface SubjectGroup {
  readonly subject: string;
  readonly quantities: readonly AnyQuantity[];
}

const names = (pattern: string, id: string): boolean =>
  pattern.endsWith("*") ? id.startsWith(pattern.slice(0, -1)) : pattern === id;

/** The subject that names an id by itself goes before one whose star takes it in. */
export function subjectOf(id: string): string {
  const bySelf = SUBJECTS.find(([, ids]) => ids.split(" ").includes(id));
  const byStar = SUBJECTS.find(([, ids]) => ids.split(" ").some((pattern) => names(pattern, id)));
  return (bySelf ?? byStar)?.[0] ?? REST;
}

/** Every quantity once, under its subject; within it, in the order of the registry, what is only a cross-check last. */
export function bySubject(all: Iterable<AnyQuantity>): readonly SubjectGroup[] {
  const groups = new Map<string, AnyQuantity[]>(
    [...SUBJECTS.map(([subject]) => subject), REST].map((name) => [name, []]),
  );
  for (const quantity of all) groups.get(subjectOf(quantity.id))?.push(quantity);
  return [...groups].flatMap(([subject, found]) => {
    const quantities = found.toSorted(
      (a, b) => Number(a.crossCheckOnly ?? 0) - Number(b.crossCheckOnly ?? 0),
    );
    return quantities.length === 0 ? [] : [{ subject, quantities }];
  });
}

/** Those that hold every word looked for, in title, id, subject, or what goes in. */
export function found(groups: readonly SubjectGroup[], looked: string): readonly SubjectGroup[] {
  const words = looked.toLowerCase().split(/\s+/).filter(Boolean);
  if (words.length === 0) return groups;
  return groups.flatMap(({ subject, quantities }) => {
    const left = quantities.filter(({ id, title, inputs }) => {
      const text = [id, title, subject, ...inputs.map(({ meaning }) => meaning)].join(" ").toLowerCase();
      return words.every((word) => text.includes(word));
    });
    return left.length === 0 ? [] : [{ subject, quantities: left }];
  });
}
