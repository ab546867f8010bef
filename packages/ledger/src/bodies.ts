import type { HappeningKind, WalkKind } from "@witnessmark/book";
import * as z from "zod/mini";
import type { Answer, Author, Bodies, CouldNotReason, EventType, Status, Subject } from "./event.ts";
import { FlightPart } from "./flight-part.ts";
import {
  count,
  finite,
  matching,
  Name,
  oneOf,
  ReadValue,
  Sha256,
  text,
  Uuid,
  UuidV7,
  When,
  Words,
} from "./parts.ts";
import { RECORD_BODIES } from "./record-bodies.ts";

/*
 * What each body must be at schema version 1. Every part says in words what is expected, since those words are what a
 * person reads. A part added to a body is a new schema version.
 */

export const AuthorPart = z.strictObject({
  id: UuidV7,
  name: text(1, 120),
  role: oneOf<Author["role"]>({
    pilot: true,
    mechanic: true,
    owner: true,
    instructor: true,
    "ground-crew": true,
  }),
});

const SubjectPart = z.strictObject({
  kind: oneOf<Subject["kind"]>({ check: true, discrepancy: true, happening: true, walk: true }),
  id: Name,
});

const WalkKindName = oneOf<WalkKind>({ "first-of-day": true, turnaround: true, "after-flight": true });
const HappeningName = oneOf<HappeningKind>({
  fuelled: true,
  unattended: true,
  rain: true,
  frost: true,
  maintenance: true,
  flown: true,
  towed: true,
  loaded: true,
});
const AnswerName = oneOf<Answer>({ "as-it-should-be": true, "not-right": true, "could-not-check": true });
const ReasonName = oneOf<CouldNotReason>({
  "too-dark": true,
  "out-of-reach": true,
  "too-hot": true,
  "no-tool": true,
  weather: true,
  "something-else": true,
});
const StatusName = oneOf<Status>({ clear: true, caution: true, stop: true, open: true });

const Coordinate = matching(/^[A-Za-z0-9_-]{43}$/, "a P-256 coordinate in base64url, 43 characters");
const Verdicts = 5000;

/** Each is made when an event of its type is first read: making all of them holds a phone up. */
const MADE_WHEN_READ: { readonly [T in EventType]: () => z.ZodMiniType<Bodies[T]> } = {
  "device.introduced": () =>
    z.strictObject({
      label: text(1, 120),
      key: z.discriminatedUnion("kind", [
        z.strictObject({
          kind: z.literal("ecdsa-p256", { error: "ecdsa-p256" }),
          publicKey: z.strictObject({ x: Coordinate, y: Coordinate }),
        }),
        z.strictObject({ kind: z.literal("none", { error: "none" }), why: text(1, 400) }),
      ]),
    }),
  "book.adopted": () =>
    z.strictObject({
      sha256: Sha256,
      revision: count(0, 1_000_000_000),
      registration: text(1, 40),
      type: text(1, 200),
      text: text(1, 1_500_000),
    }),
  "aircraft.archived": () => z.strictObject({ why: Words }),
  "aircraft.restored": () => z.strictObject({}),
  "walk.started": () =>
    z.strictObject({
      walk: Uuid,
      kind: WalkKindName,
      bookSha256: Sha256,
      onPaper: z.exactOptional(z.strictObject({ begun: When, ended: When })),
    }),
  "walk.interrupted": () =>
    z.strictObject({
      walk: Uuid,
      cause: oneOf({ away: true, said: true }),
      left: When,
      back: When,
    }),
  "walk.finished": () => z.strictObject({ walk: Uuid }),
  "walk.abandoned": () => z.strictObject({ walk: Uuid, why: Words }),
  "check.answered": () =>
    z.strictObject({
      walk: Uuid,
      check: Name,
      answer: AnswerName,
      reason: z.exactOptional(ReasonName),
    }),
  "reading.recorded": () =>
    z.strictObject({
      walk: Uuid,
      check: Name,
      gauge: Name,
      read: ReadValue,
      temperature: z.exactOptional(ReadValue),
    }),
  "note.written": () => z.strictObject({ subject: SubjectPart, text: text(1, 10_000) }),
  "photo.attached": () =>
    z.strictObject({
      subject: SubjectPart,
      sha256: Sha256,
      mediaType: oneOf({ "image/jpeg": true, "image/png": true, "image/webp": true }),
      size_B: count(1, 100_000_000),
      width_px: count(1, 100_000),
      height_px: count(1, 100_000),
    }),
  "happening.recorded": () =>
    z.strictObject({
      happening: HappeningName,
      at: When,
      words: z.exactOptional(text(1, 600)),
    }),
  "groundGear.removed": () =>
    z.strictObject({
      item: Name,
      count: count(1, 1000),
      stowedIn: text(1, 400),
      walk: z.exactOptional(Uuid),
    }),
  "groundGear.fitted": () =>
    z.strictObject({ item: Name, count: count(1, 1000), walk: z.exactOptional(Uuid) }),
  "discrepancy.raised": () =>
    z.strictObject({
      discrepancy: Uuid,
      words: Words,
      walk: z.exactOptional(Uuid),
      check: z.exactOptional(Name),
      point: z.exactOptional(Name),
      fault: z.exactOptional(Name),
      measured: z.exactOptional(ReadValue),
      jasc: z.exactOptional(matching(/^\d{4}$/, "four figures of the JASC table")),
    }),
  "discrepancy.closed": () =>
    z.strictObject({
      discrepancy: Uuid,
      how: oneOf({ "put-right": true, "no-fault-found": true }),
      words: Words,
      releasedBy: text(1, 400),
    }),
  ...RECORD_BODIES,
  "flight.planned": () => z.strictObject({ flight: Uuid, planned: FlightPart }),
  "flight.dropped": () => z.strictObject({ flight: Uuid, why: text(0, 400) }),
  "decision.signed": () =>
    z.strictObject({
      decision: Uuid,
      walk: Uuid,
      answer: oneOf({ go: true, "not-going": true }),
      flight: z.nullable(FlightPart),
      at: When,
      bookSha256: Sha256,
      assessmentSha256: Sha256,
      counts: z.strictObject({
        clear: count(0, 100_000),
        caution: count(0, 100_000),
        stop: count(0, 100_000),
        open: count(0, 100_000),
      }),
      restsOn: z
        .array(z.strictObject({ verdict: Name, status: StatusName }))
        .check(z.maxLength(Verdicts, { error: `at most ${Verdicts} verdicts` })),
      heads: z.record(Uuid, count(0, Number.MAX_SAFE_INTEGER)),
      reasons: z
        .array(z.strictObject({ verdict: Name, words: Words, basis: z.exactOptional(text(1, 1000)) }))
        .check(z.maxLength(Verdicts, { error: `at most ${Verdicts} reasons` })),
      words: z.exactOptional(text(1, 600)),
    }),
  "event.withdrawn": () => z.strictObject({ event: Uuid, why: Words }),
};

const made = new Map<EventType, z.ZodMiniType>();

export function bodyOf(type: EventType): z.ZodMiniType {
  const schema = made.get(type) ?? MADE_WHEN_READ[type]();
  made.set(type, schema);
  return schema;
}

const envelope = {
  id: UuidV7,
  operator: text(1, 120),
  aircraft: text(1, 40),
  device: UuidV7,
  deviceSeq: count(1, Number.MAX_SAFE_INTEGER),
  author: AuthorPart,
  hlc: matching(/^\d{15}-\d{5}$/, "15 figures of milliseconds, a hyphen, 5 figures of counter"),
  recordedAt: When,
  clockOffset_ms: z.exactOptional(finite),
  type: text(1, 120),
  schemaVersion: count(1, 1_000_000),
  body: z.optional(z.unknown()), // its presence, size and parts are judged by parseEvent
  previousHash: z.nullable(Sha256),
  hash: Sha256,
  signature: z.exactOptional(text(1, 400)),
};

/** The envelope of an event that this version knows: nothing beside what it knows. */
export const KnownEnvelope = z.strictObject(envelope);
/** The envelope of an event of a later version: what that version added is carried. */
export const AnyEnvelope = z.looseObject({
  ...envelope,
  author: z.looseObject({ id: UuidV7, name: text(1, 120) }),
});
