import { ARCHETYPES, type Archetype, type Figures } from "@witnessmark/book";
import { fromSI, type InputError, toSI, type UnitId } from "@witnessmark/engine";
import { capital } from "../../words/capital.ts";
import { figure, readFigure } from "../../words/figures.ts";

/** What has been said of the new aircraft so far, as it was typed. */
export interface Said {
  readonly archetype: Archetype;
  readonly registration: string;
  readonly type: string;
  readonly span: string;
  readonly length: string;
  /** May be left empty. */
  readonly height: string;
  /** How far aft of the foremost part the datum is; empty, it is there. */
  readonly datum: string;
  readonly unit: Extract<UnitId, "m" | "ft">;
  readonly seats: string;
  readonly wing: Figures["wing"];
  readonly tail: Figures["tail"];
  readonly engine: Figures["engine"];
  readonly engines: Figures["engines"];
  readonly gear: Figures["gear"];
  readonly retractable: boolean;
}

export function nothingSaid(archetype: Archetype): Said {
  const { wing, tail, gear, retractable, engine, engines, seats } = archetype.figures;
  return {
    archetype,
    registration: "",
    type: "",
    span: "",
    length: "",
    height: "",
    datum: "",
    unit: "m",
    seats: String(seats),
    wing,
    tail,
    gear,
    retractable,
    engine,
    engines,
  };
}

/** Another kind brings its own layout; what was typed stays. */
export function asKind(said: Said, archetype: Archetype): Said {
  const { registration, type, span, length, height, datum, unit } = said;
  return { ...nothingSaid(archetype), registration, type, span, length, height, datum, unit };
}

export const firstArchetype = (): Archetype => {
  const [first] = ARCHETYPES;
  if (first === undefined) throw new Error("expected at least one kind of aircraft to begin from");
  return first;
};

export type FieldName = "registration" | "type" | "span" | "length" | "height" | "datum" | "seats";
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
    const read = readLength(said[name], said.unit);
    if (read.ok) return read.value_m ?? missing(name, instead_m);
    wrong[name] = read.why;
    return instead_m;
  };
  const missing = (name: "span" | "length", instead_m: number): number => {
    wrong[name] = "From the three-view drawing of the manual.";
    return instead_m;
  };
  const height = readLength(said.height, said.unit);
  if (!height.ok) wrong.height = height.why;
  const datum = readLength(said.datum, said.unit);
  if (!datum.ok) wrong.datum = datum.why;
  const { figures } = said.archetype;
  return {
    wrong,
    figures: {
      ...figures,
      registration,
      type,
      span_m: lengthOf("span", figures.span_m),
      length_m: lengthOf("length", figures.length_m),
      height_m: height.ok ? height.value_m : undefined,
      datumAft_m: (datum.ok ? datum.value_m : undefined) ?? 0,
      wing: said.wing,
      tail: said.tail,
      gear: said.gear,
      retractable: said.retractable,
      engine: said.engine,
      engines: said.engines,
      seats: areSeats ? seats : figures.seats,
    },
  };
}

/** What the book's own rules say of figures that no aircraft has, at the field that it is about. */
export function wrongOf({ field, detail: { expected, remedy } }: InputError): Wrong {
  const says = `${capital(expected)}${remedy === undefined ? "" : `: ${remedy}`}.`;
  return { [field === "span" || field === "height" || field === "datum" ? field : "length"]: says };
}

type ReadLength =
  | { readonly ok: true; readonly value_m: number | undefined }
  | { readonly ok: false; readonly why: string };

/** A length as it was typed, to a tenth of a millimetre; nothing where nothing was. A unit typed with it is taken at its word. */
export function readLength(text: string, unit: Said["unit"]): ReadLength {
  if (text.trim() === "") return { ok: true, value_m: undefined };
  const typed = readFigure(text.trim(), unit === "m" ? "11.2" : "36.5");
  if (!typed.ok) return typed;
  const value_m = toSI(typed.value, typed.unit === "m" || typed.unit === "ft" ? typed.unit : unit);
  return { ok: true, value_m: Math.round(value_m * 1e4) / 1e4 };
}

/** Which engines, as one choice for each count and kind. */
export const withEngines = (engines: Figures["engines"], engine: Figures["engine"]) =>
  ({
    engines,
    engine: engines === 0 ? "none" : engine === "none" ? "piston" : engine,
  }) as const;

/** A length as the person counts it. */
export const lengthIn = (length_m: number, unit: Said["unit"]): string =>
  `${fromSI(length_m, unit).toFixed(1)} ${unit}`;

/** Which length is asked, and what it means. */
export const DATUM_ASKED = "Datum of the handbook’s arms: how far behind the tip of the nose";
export const DATUM_MEANS =
  "The tip of the nose is the foremost part, such as the spinner. Leave 0 where arms are counted from there; with a minus, the datum lies ahead of it.";

/** Where a datum is, for a person: "1.15 m aft of the tip of the nose". */
export function datumWords(datumAft_m: number, unit: Said["unit"]): string {
  if (datumAft_m === 0) return "the tip of the nose";
  const far = figure(Math.abs(fromSI(datumAft_m, unit)), 2);
  return `${far} ${unit} ${datumAft_m < 0 ? "ahead" : "aft"} of the tip of the nose`;
}
