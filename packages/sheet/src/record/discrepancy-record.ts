import { reliefOnRecord } from "@witnessmark/assess";
import { withSymbol } from "@witnessmark/engine";
import type {
  AircraftState,
  Discrepancy,
  LocalDate,
  Origin,
  Read,
  ReliefOnRecord,
  Subject,
} from "@witnessmark/ledger";
import type { RecordDiscrepancy, RecordStep } from "./aircraft-record.ts";
import { dayOf, dayWords } from "./day-words.ts";
import { type Names, personWords, whereWords } from "./names.ts";
import type { RecordPeriod } from "./period.ts";

/** Ids of the events that a key signed. */
export type SignedEvents = ReadonlySet<string>;

const HOW = { "put-right": "Put right", "no-fault-found": "No fault found" } as const;
const AS = {
  pilot: "pilot",
  mechanic: "mechanic",
  "certifying-staff": "certifying staff",
  owner: "owner",
} as const;

interface Ordered extends RecordStep {
  readonly hlc: string;
}

const step = (origin: Origin, title: string, says: readonly string[], signed?: boolean): Ordered => ({
  hlc: origin.hlc,
  at: origin.recordedAt,
  by: personWords(origin.author),
  entry: origin.event,
  title,
  says,
  ...(signed === undefined ? {} : { signed }),
});

/** On what basis a flight may be made with it, by whose word, until when, and what was done for it. */
function reliefSays(relief: ReliefOnRecord): readonly string[] {
  const { determinedBy, as, until, action, placard, recordEntry, category, notFor, steps } = relief;
  return [
    `Basis: ${relief.basis}${category === undefined ? "" : `, category ${category}`}`,
    until === undefined ? "Until: no day is set" : `Until: ${dayWords(until)}, the last day`,
    `Determined by ${determinedBy}, ${AS[as]}`,
    ...(action === "none" ? [] : [`The equipment was ${action}`]),
    ...(placard === undefined ? [] : [`Placard: ${placard}`]),
    ...(recordEntry === undefined ? [] : [`Entry in the aircraft's papers: ${recordEntry}`]),
    ...(notFor.length === 0
      ? []
      : [`Not for flights: ${notFor.map((kind) => kind.replaceAll("-", " ")).join(", ")}`]),
    ...steps.map(({ rule, words, holds }) => `${rule}: ${words}${holds ? "" : " (does not hold)"}`),
  ];
}

function reliefSteps(relief: ReliefOnRecord): readonly Ordered[] {
  const { ended } = relief;
  return [
    step(relief, "Relief", reliefSays(relief), relief.signed),
    ...(ended === undefined ? [] : [step(ended, "Relief ended", [ended.why])]),
  ];
}

const sizeOf = ({ value, unit }: Read): string => withSymbol(String(value), unit);

const RELEASED_AS = {
  "pilot-owner": "pilot-owner, ML.A.803",
  "certifying-staff": "certifying staff, ML.A.801(b)",
  organisation: "maintenance organisation, ML.A.801(b)",
  "not-known": "on an authority that is not known",
} as const;

/** What was written or pictured of it; a picture is in the ledger by its SHA-256 alone. */
function evidenceOf(id: string, { notes, photos }: AircraftState): readonly Ordered[] {
  const isOfIt = ({ subject }: { readonly subject: Subject }) =>
    subject.kind === "discrepancy" && subject.id === id;
  return [
    ...notes.filter(isOfIt).map((each) => step(each, "Note", [each.text])),
    ...photos.filter(isOfIt).map((each) => step(each, "Photo", [`SHA-256 ${each.sha256}`])),
  ];
}

function stepsOf(discrepancy: Discrepancy, { book, state }: Names, signed: SignedEvents): readonly Ordered[] {
  const { raised, measured, measurements, assessments, reliefs, closings, releases, reopenings } =
    discrepancy;
  const steps = [
    step(raised, "Written down", measured === undefined ? [] : [sizeOf(measured)]),
    ...measurements
      .filter(({ event }) => event !== raised.event)
      .map((each) =>
        step(each, "Measured", [sizeOf(each.measured), ...(each.words === undefined ? [] : [each.words])]),
      ),
    ...assessments.map((each) => {
      const name = book?.equipment.find(({ id }) => id === each.equipment)?.name ?? each.equipment;
      return step(each, "Looked into", [each.words, ...(name === undefined ? [] : [`Equipment: ${name}`])]);
    }),
    ...reliefs.flatMap(reliefSteps),
    ...closings.map((each) =>
      step(each, HOW[each.how], [each.words, `Released by ${each.releasedBy}`], signed.has(each.event)),
    ),
    ...releases.map((each) =>
      step(
        each,
        "Released",
        [`By ${each.by}, ${RELEASED_AS[each.as]}`, ...(each.authority === undefined ? [] : [each.authority])],
        signed.has(each.event),
      ),
    ),
    ...reopenings.map((each) => step(each, "Opened again", [each.words])),
    ...evidenceOf(discrepancy.id, state),
  ];
  // stable: what an event says twice (raised with a size) stays together
  return steps.sort((a, b) => (a.hlc < b.hlc ? -1 : a.hlc > b.hlc ? 1 : 0));
}

function dispositionOf(discrepancy: Discrepancy, standsOn: LocalDate): string {
  const { isOpen, closings } = discrepancy;
  if (!isOpen) {
    const hows = [...new Set(closings.map(({ how }) => HOW[how]))];
    return hows.join(", and by another: ");
  }
  const relief = reliefOnRecord(discrepancy);
  if (relief === undefined) return "Open";
  if (relief.until === undefined) return "Open, with relief";
  const on = dayWords(relief.until);
  return relief.until < standsOn ? `Open, relief ran out ${on}` : `Open, with relief until ${on}`;
}

/** Every discrepancy that was open at some time in the period: those still open first, each in order of raising. */
export function discrepanciesOf(
  state: AircraftState,
  names: Names,
  signed: SignedEvents,
  { period, standsOn }: { readonly period: RecordPeriod; readonly standsOn: LocalDate },
): readonly RecordDiscrepancy[] {
  const told = [...state.discrepancies.values()].flatMap((discrepancy): readonly RecordDiscrepancy[] => {
    const steps = stepsOf(discrepancy, names, signed);
    const wasOpen = discrepancy.isOpen || steps.some(({ at }) => dayOf(at) >= period.from);
    if (!wasOpen) return [];
    return [
      {
        id: discrepancy.id,
        disposition: dispositionOf(discrepancy, standsOn),
        isOpen: discrepancy.isOpen,
        words: discrepancy.words,
        where: whereWords(discrepancy, names),
        isCarriedIn: dayOf(discrepancy.raised.recordedAt) < period.from,
        steps: steps.map(({ hlc: _hlc, ...each }) => each),
      },
    ];
  });
  return [...told.filter(({ isOpen }) => isOpen), ...told.filter(({ isOpen }) => !isOpen)];
}
