import { KINDS_OF_OPERATION, TIMED_SUBJECTS } from "@witnessmark/book";
import * as z from "zod/mini";
import { count, finite, matching, Name, oneOf, ReadValue, text, Uuid, When, Words } from "./parts.ts";
import type {
  RecordBodies,
  ReleaseRole,
  ReliefAction,
  ReliefRole,
  ServicedThing,
  ServicingKind,
} from "./record-event.ts";

/** What the bodies of the record's events must be at schema version 1. */

const DATE = "a date that exists, as 2026-11-12";
const LocalDatePart = z.string({ error: DATE }).check(z.iso.date({ error: DATE }));

const listOf = <T extends z.ZodMiniType>(part: T, most: number) =>
  z.array(part).check(z.maxLength(most, { error: `at most ${most}` }));

const COUNTED = "a number from 0 to 10 million";
const Counted = finite.check(z.gte(0, { error: COUNTED }), z.lte(10_000_000, { error: COUNTED }));
const CountersPart = z
  .record(Name, Counted)
  .check(z.refine((all) => Object.keys(all).length <= 50, { error: "at most 50 counters" }));

const KindPart = z.enum(KINDS_OF_OPERATION, { error: `one of ${KINDS_OF_OPERATION.join(", ")}` });
const Jasc = matching(/^\d{4}$/, "four figures of the JASC table");
const Landings = count(0, 1000);

const METRES = "metres, at most 100 from the datum";
const Metres = finite.check(z.gte(-100, { error: METRES }), z.lte(100, { error: METRES }));

const Months = count(1, 10_000);
const LimitPart = z.discriminatedUnion("by", [
  z.strictObject({ by: z.literal("calendar-months"), months: Months }),
  z.strictObject({ by: z.literal("months"), months: Months }),
  z.strictObject({ by: z.literal("days"), days: Months }),
  z.strictObject({ by: z.literal("date"), on: LocalDatePart }),
  z.strictObject({
    by: z.literal("counter"),
    counter: Name,
    every: finite.check(z.gt(0, { error: "more than 0" }), z.lte(1_000_000, { error: "at most a million" })),
  }),
  z.strictObject({ by: z.literal("data-cycle") }),
  z.strictObject({ by: z.literal("printed") }),
]);

const AddedItemPart = z.strictObject({
  id: matching(/^[a-z0-9]+(-[a-z0-9]+)*$/, "lower-case letters and figures joined by hyphens"),
  name: text(1, 400),
  about: z.enum(TIMED_SUBJECTS, { error: `one of ${TIMED_SUBJECTS.join(", ")}` }),
  component: z.exactOptional(Name),
  rule: z.exactOptional(text(1, 400)),
  limits: listOf(LimitPart, 6).check(z.minLength(1, { error: "at least one limit" })),
  combine: oneOf({ first: true, later: true }),
  recurring: z.boolean(),
  endsLife: z.boolean(),
  neededFor: z.exactOptional(listOf(KindPart, 20)),
  atLeast: z.exactOptional(Months),
  counts: z.exactOptional(
    oneOf({ landings: true, "night-landings": true, "tailwheel-landings": true, approaches: true }),
  ),
  instead: z.exactOptional(text(1, 400)),
  why: text(1, 400),
});

const ComponentPart = z.strictObject({
  component: Name,
  serial: text(1, 120),
  on: LocalDatePart,
  ran: CountersPart,
  counters: z.exactOptional(CountersPart),
});

export const RECORD_BODIES: { readonly [T in keyof RecordBodies]: () => z.ZodMiniType<RecordBodies[T]> } = {
  "discrepancy.placed": () =>
    z.strictObject({
      discrepancy: Uuid,
      place: z.strictObject({ x_m: Metres, y_m: Metres, z_m: Metres }),
      point: z.exactOptional(Name),
      jasc: z.exactOptional(Jasc),
    }),
  "discrepancy.assessed": () =>
    z.strictObject({
      discrepancy: Uuid,
      words: Words,
      equipment: z.exactOptional(Name),
    }),
  "discrepancy.measured": () =>
    z.strictObject({
      discrepancy: Uuid,
      measured: ReadValue,
      words: z.exactOptional(Words),
    }),
  "discrepancy.relieved": () =>
    z.strictObject({
      discrepancy: Uuid,
      relief: Uuid,
      rulePack: matching(/^[a-z0-9]+(-[a-z0-9]+)*$/, "the id of a rule pack, such as us-part-91"),
      basis: text(1, 200),
      equipment: Name,
      steps: listOf(z.strictObject({ rule: text(1, 200), words: Words, holds: z.boolean() }), 60),
      action: oneOf<ReliefAction>({ removed: true, deactivated: true, none: true }),
      placard: z.exactOptional(text(1, 400)),
      recordEntry: z.exactOptional(Words),
      determinedBy: text(1, 200),
      as: oneOf<ReliefRole>({ pilot: true, mechanic: true, "certifying-staff": true, owner: true }),
      notFor: listOf(KindPart, 20),
      until: z.exactOptional(LocalDatePart),
      category: z.exactOptional(oneOf({ A: true, B: true, C: true, D: true })),
    }),
  "discrepancy.reliefEnded": () => z.strictObject({ discrepancy: Uuid, relief: Uuid, why: Words }),
  "discrepancy.reopened": () => z.strictObject({ discrepancy: Uuid, words: Words }),
  "discrepancy.released": () =>
    z.strictObject({
      discrepancy: Uuid,
      rulePack: Name,
      as: oneOf<ReleaseRole>({
        "pilot-owner": true,
        "certifying-staff": true,
        organisation: true,
        "not-known": true,
      }),
      by: text(1, 400),
      authority: z.exactOptional(text(1, 400)),
      said: z.record(Name, z.boolean({ error: "yes or no: true or false" })),
    }),
  "timedItem.done": () =>
    z.strictObject({
      item: Name,
      on: LocalDatePart,
      counters: CountersPart,
      by: text(1, 200),
      reference: z.exactOptional(text(1, 400)),
      words: z.exactOptional(Words),
      holder: z.exactOptional(Uuid),
      until: z.exactOptional(LocalDatePart),
      serial: z.exactOptional(text(1, 120)),
      import: z.exactOptional(Uuid),
    }),
  "timedItem.added": () => z.strictObject({ item: AddedItemPart, import: z.exactOptional(Uuid) }),
  "timedItem.dropped": () => z.strictObject({ item: Name, why: Words }),
  "counters.read": () => z.strictObject({ at: When, counters: CountersPart, walk: z.exactOptional(Uuid) }),
  "counter.replaced": () => z.strictObject({ counter: Name, at: When, showed: Counted, shows: Counted }),
  "component.fitted": () => ComponentPart,
  "component.removed": () => ComponentPart,
  "flight.made": () =>
    z.strictObject({
      made: Uuid,
      flight: z.exactOptional(Uuid),
      from: text(0, 120),
      to: text(0, 120),
      takeOff: When,
      landing: When,
      landings: z.strictObject({
        day: Landings,
        night: Landings,
        nightFullStop: Landings,
        dayFullStop: z.exactOptional(Landings),
      }),
      approaches: z.exactOptional(Landings),
      pilot: z.exactOptional(Uuid),
      words: z.exactOptional(Words),
    }),
  "servicing.recorded": () =>
    z.strictObject({
      at: When,
      what: oneOf<ServicingKind>({ refilled: true, drained: true, changed: true, adjusted: true }),
      of: oneOf<ServicedThing>({
        fuel: true,
        oil: true,
        hydraulic: true,
        oxygen: true,
        tyre: true,
        strut: true,
        battery: true,
        other: true,
      }),
      check: z.exactOptional(Name),
      point: z.exactOptional(Name),
      amount: z.exactOptional(ReadValue),
      words: z.exactOptional(Words),
      walk: z.exactOptional(Uuid),
    }),
  "aircraft.parked": () =>
    z.strictObject({
      at: When,
      where: text(1, 400),
      secured: text(0, 400),
      walk: z.exactOptional(Uuid),
    }),
  "experience.recorded": () =>
    z.strictObject({
      person: Uuid,
      on: LocalDatePart,
      dayLandings: Landings,
      nightLandings: Landings,
      nightFullStop: Landings,
      dayFullStop: z.exactOptional(Landings),
      approaches: Landings,
      tailwheel: z.boolean(),
      class: text(1, 120),
      words: z.exactOptional(Words),
    }),
  "reading.imported": () =>
    z.strictObject({
      import: Uuid,
      check: Name,
      gauge: Name,
      at: When,
      read: ReadValue,
      temperature: z.exactOptional(ReadValue),
      by: z.exactOptional(text(1, 200)),
      words: z.exactOptional(Words),
    }),
  "evidence.declined": () => z.strictObject({ walk: Uuid, check: Name, why: Words }),
};
