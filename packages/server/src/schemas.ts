import type { LedgerEvent } from "@witnessmark/ledger";
import { z } from "zod";
import type {
  About,
  AircraftList,
  DevicesAnswer,
  ErrorAnswer,
  NeededAnswer,
  PullAnswer,
  PushAnswer,
  QuarantineAnswer,
  WeatherAnswer,
} from "./protocol.ts";
import { PAGE_EVENTS } from "./protocol.ts";

/*
 * What goes over the wire, as schemas: the server's description is made from them, and the client checks with them
 * that it was this program that answered, and not a hotel's sign-in page. Each must fit its type in protocol.ts.
 */

const Count = z.int().min(0);
const Seq = z.int().min(1);
const Epoch = z.string().meta({
  description: "Another one means another database, or an older copy put back: start again from zero.",
});

/** An event is judged by the ledger, one by one; here it is any JSON value. */
const AnyEvent = z
  .custom<LedgerEvent>(() => true)
  .meta({ type: "object", description: "One event of the ledger (packages/ledger/src/event.ts)." });

export const AboutSchema = z
  .object({
    program: z.literal("witnessmark"),
    version: z.string(),
    protocolVersion: z.int(),
    operator: z.string(),
    epoch: Epoch,
    now: z.string().meta({ description: "The server's clock, ISO 8601 UTC." }),
  })
  .meta({ id: "About" }) satisfies z.ZodType<About>;

export const WeatherAnswerSchema = z
  .object({
    from: z.string(),
    at: z.string(),
    reports: z.array(
      z.object({ code: z.string(), metar: z.string().exactOptional(), taf: z.string().exactOptional() }),
    ),
  })
  .meta({ id: "Weather" }) satisfies z.ZodType<WeatherAnswer>;

export const AircraftListSchema = z
  .object({ epoch: Epoch, aircraft: z.array(z.object({ aircraft: z.string(), head: Count })) })
  .meta({ id: "AircraftList" }) satisfies z.ZodType<AircraftList>;

export const PushRequestSchema = z
  .object({
    protocolVersion: z.int(),
    events: z
      .array(z.unknown())
      .max(PAGE_EVENTS)
      .meta({
        type: "array",
        items: { type: "object" },
        description: "Events, in the order of their device.",
      }),
  })
  .meta({ id: "PushRequest" });

export const PushAnswerSchema = z
  .object({
    epoch: Epoch,
    head: Count,
    results: z
      .array(
        z.discriminatedUnion("outcome", [
          z.object({ id: z.string(), outcome: z.literal("accepted"), ledgerSeq: Seq }),
          z.object({ id: z.string(), outcome: z.literal("duplicate"), ledgerSeq: Seq }),
          z.object({ id: z.string(), outcome: z.literal("conflict"), reason: z.string() }),
          z.object({ id: z.string(), outcome: z.literal("quarantined"), reason: z.string() }),
        ]),
      )
      .meta({ description: "One answer for each event, in the order they were sent." }),
  })
  .meta({ id: "PushAnswer" }) satisfies z.ZodType<PushAnswer>;

export const PullAnswerSchema = z
  .object({
    epoch: Epoch,
    head: Count,
    events: z
      .array(z.object({ ledgerSeq: Seq, receivedAt: z.string(), event: AnyEvent }))
      .meta({ description: "Without a hole. A page can hold fewer than asked for: go on until `head`." }),
  })
  .meta({ id: "PullAnswer" }) satisfies z.ZodType<PullAnswer>;

export const NeededAnswerSchema = z
  .object({
    epoch: Epoch,
    head: Count,
    upTo: Count,
    to: Count.meta({ description: "Looked through up to this number; ask again from here until `upTo`." }),
    wholeFrom: Count.meta({ description: "From this number on nothing is left out." }),
    events: z.array(z.object({ ledgerSeq: Seq, receivedAt: z.string(), event: AnyEvent })),
  })
  .meta({ id: "NeededAnswer" }) satisfies z.ZodType<NeededAnswer>;

export const DevicesAnswerSchema = z
  .object({ epoch: Epoch, devices: z.record(z.string(), Seq) })
  .meta({ id: "DevicesAnswer" }) satisfies z.ZodType<DevicesAnswer>;

export const QuarantineAnswerSchema = z
  .object({
    events: z
      .array(z.object({ receivedAt: z.string(), reason: z.string(), text: z.string() }))
      .meta({ description: "Newest first." }),
  })
  .meta({ id: "QuarantineAnswer" }) satisfies z.ZodType<QuarantineAnswer>;

export const LiveMessageSchema = z.object({ aircraft: z.string(), head: Count, epoch: Epoch });

export const ErrorAnswerSchema = z
  .object({
    error: z.object({ code: z.string(), message: z.string(), field: z.exactOptional(z.string()) }),
  })
  .meta({ id: "ErrorAnswer" }) satisfies z.ZodType<ErrorAnswer>;

export const AircraftParam = z
  .string()
  .min(1)
  .max(40)
  .refine((text) => text.isWellFormed() && !text.includes("\0"))
  .meta({ description: "The aircraft's registration.", example: "ZZ-SKR" });

export const Sha256Param = z
  .string()
  .regex(/^[0-9a-f]{64}$/)
  .meta({ description: "SHA-256 of the picture, 64 lower-case hexadecimal figures." });
