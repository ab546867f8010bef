import { ARCHETYPES, type Archetype, type Figures } from "@witnessmark/book";
import { fromSI, toSI, type UnitId } from "@witnessmark/engine";
import { readTyped } from "../calculators/read-typed.ts";

/** What has been said of the new aircraft so far, as it was typed. */
export interface Said {
  readonly archetype: Archetype;
  readonly registration: string;
  readonly type: string;
  readonly span: string;
  readonly length: string;
  readonly unit: Extract<UnitId, "m" | "ft">;
  readonly seats: string;
  readonly wing: Figures["wing"];
  readonly gear: Figures["gear"];
  readonly retractable: boolean;
}

export function nothingSaid(archetype: Archetype): Said {
  const { wing, gear, retractable, seats } = archetype.figures;
  return {
    archetype,
    registration: "",
    type: "",
    span: "",
    length: "",
    unit: "m",
    seats: String(seats),
    wing,
    gear,
    retractable,
  };
}

/** Another kind brings its own layout; what was typed stays. */
export function asKind(said: Said, archetype: Archetype): Said {
  const { registration, type, span, length, unit } = said;
  return { ...nothingSaid(archetype), registration, type, span, length, unit };
}

export const firstArchetype = (): Archetype => {
  const [first] = ARCHETYPES;
  if (first === undefined) throw new Error("expected at least one kind of aircraft to begin from");
  return first;
};

export type FieldName = "registration" | "type" | "span" | "length" | "seats";
/** What is wrong with a field, in a sentence that says what to do. */
export type Wrong = Partial<Readonly<Record<FieldName, string>>>;

const REGISTRATION = /^[A-Z0-9]+(-[A-Z0-9]+)*$/;
const SEATS_MOST = 20;

/**
 * The figures of what was said; those of the kind stand in for a length that is not known yet, so that there is
 * something to look at.
 *
 * @param taken registrations that are kept on this phone
 * @returns what is wrong or missing, field by field; empty when a book can be begun
 */
export function figuresOf(
  said: Said,
  taken: readonly string[],
): { readonly figures: Figures; readonly wrong: Wrong } {
  const wrong: { [Name in FieldName]?: string } = {};
  const registration = said.registration.trim().toUpperCase();
  if (registration === "") wrong.registration = "As it is painted on the aircraft.";
  else if (!REGISTRATION.test(registration) || registration.length > 16) {
    wrong.registration = "Capital letters, figures and a dash between them, at most 16.";
  } else if (taken.includes(registration)) {
    wrong.registration = `${registration} is here already. Change its book on its own page, or take another registration.`;
  }
  const type = said.type.trim();
  if (type === "") wrong.type = "As the manual calls it.";
  const seats = Number(said.seats.trim());
  const areSeats = Number.isInteger(seats) && seats >= 1 && seats <= SEATS_MOST;
  if (!areSeats) wrong.seats = `A whole number from 1 to ${SEATS_MOST}.`;
  const lengthOf = (name: "span" | "length", instead_m: number): number => {
    const text = said[name].trim();
    if (text === "") {
      wrong[name] = "From the three-view drawing of the manual.";
      return instead_m;
    }
    const typed = readTyped(text, said.unit === "m" ? "11.2" : "36.5");
    if (!typed.ok) {
      wrong[name] = typed.why;
      return instead_m;
    }
    return toSI(typed.value, typed.unit === "m" || typed.unit === "ft" ? typed.unit : said.unit);
  };
  const { figures } = said.archetype;
  return {
    wrong,
    figures: {
      ...figures,
      registration,
      type,
      span_m: lengthOf("span", figures.span_m),
      length_m: lengthOf("length", figures.length_m),
      wing: said.wing,
      gear: said.gear,
      retractable: said.retractable,
      seats: areSeats ? seats : figures.seats,
    },
  };
}

/** A length as the person counts it. */
export const lengthIn = (length_m: number, unit: Said["unit"]): string =>
  `${fromSI(length_m, unit).toFixed(1)} ${unit}`;
