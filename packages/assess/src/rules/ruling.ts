/** Where a rule is written, and in which text of it the answer was found. */
export interface Citation {
  readonly title: string;
  /** Paragraph: `(a)(1)`. */
  readonly locator?: string;
  /** The text that was followed, with its date. */
  readonly edition: string;
  /** First day on which that text applies: `2022-10-30`. */
  readonly inForceFrom?: string;
  readonly url?: string;
  /** Whether the text was read when it was written down here. */
  readonly status: "published" | "common practice" | "from memory";
  readonly note?: string;
}

/** What a rule needs and was not given. */
export interface MissingInput {
  /** The name of the input, for programs: `night`. */
  readonly input: string;
  /** For people: "whether any of it is by night". */
  readonly what: string;
}

interface Said {
  readonly citations: readonly [Citation, ...Citation[]];
  /** One plain line. */
  readonly text: string;
  /** How the answer was reached. */
  readonly steps: readonly string[];
}

export type CannotTell = Said & {
  readonly known: false;
  readonly missing: readonly [MissingInput, ...MissingInput[]];
};

/** What a rule says. With an input missing it cannot tell; that is never a permission. */
export type Ruling<Answer> = (Said & { readonly known: true } & Answer) | CannotTell;

export type Citations = readonly [Citation, ...Citation[]];

/** A ruling that cannot be given, and what for. */
export function cannotTell(
  citations: Citations,
  missing: readonly [MissingInput, ...MissingInput[]],
  steps: readonly string[] = [],
): CannotTell {
  const names = missing.map(({ what }) => what).join("; ");
  return { known: false, citations, missing, text: `Cannot tell. Not known: ${names}.`, steps };
}

/** Nothing of a flight is beyond this in SI; what is came by mistake, and would overflow when multiplied. */
const BEYOND_ANY_FLIGHT = 1e9;

/** A number that a rule can use: there, finite, not absurd. May be below zero, as altitudes are. */
export const finite = (value: number | undefined): number | undefined =>
  value !== undefined && Math.abs(value) <= BEYOND_ANY_FLIGHT ? value : undefined;

/** As `finite`, and not below zero. */
export const figure = (value: number | undefined): number | undefined => {
  const sound = finite(value);
  return sound !== undefined && sound >= 0 ? sound : undefined;
};

/** The list with at least one entry that a ruling needs, or nothing. */
export function someMissing(
  missing: readonly MissingInput[],
): readonly [MissingInput, ...MissingInput[]] | undefined {
  const [first, ...more] = missing;
  return first === undefined ? undefined : [first, ...more];
}
