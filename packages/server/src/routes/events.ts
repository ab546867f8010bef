import { createRoute, type RouteConfigToTypedResponse } from "@hono/zod-openapi";
import type { KeptEvent, Page } from "@witnessmark/store";
import { bodyLimit } from "hono/body-limit";
import { z } from "zod";
import { EVENTS_MOST_B } from "../guard/limits.ts";
import {
  type DevicesAnswer,
  PAGE_EVENTS,
  PROTOCOL_VERSION,
  type PushAnswer,
  type QuarantineAnswer,
} from "../protocol.ts";
import { Refusal } from "../refusal.ts";
import {
  AircraftListSchema,
  AircraftParam,
  DevicesAnswerSchema,
  PullAnswerSchema,
  PushAnswerSchema,
  PushRequestSchema,
  QuarantineAnswerSchema,
} from "../schemas.ts";
import { sift } from "../sift.ts";
import { newRoutes, refusals } from "./new-routes.ts";
import type { Parts } from "./parts.ts";

const params = z.object({ aircraft: AircraftParam });
const NO_STORE = { "Cache-Control": "no-store" };

const aircraft = createRoute({
  method: "get",
  path: "/aircraft",
  summary: "Every aircraft with at least one event, and how far its ledger goes",
  responses: {
    200: { description: "The aircraft", content: { "application/json": { schema: AircraftListSchema } } },
    ...refusals,
  },
});

const push = createRoute({
  method: "post",
  path: "/aircraft/{aircraft}/events",
  summary: "Send events; each is answered by itself, and what is acknowledged is committed",
  description: `At most ${PAGE_EVENTS} events and ${EVENTS_MOST_B} bytes.`,
  middleware: [
    bodyLimit({
      maxSize: EVENTS_MOST_B,
      onError: () => {
        throw new Refusal(
          413,
          "too-large",
          `A push is at most ${EVENTS_MOST_B} bytes. Send fewer events at a time. Nothing of this was kept.`,
        );
      },
    }),
  ],
  request: {
    params,
    body: { required: true, content: { "application/json": { schema: PushRequestSchema } } },
  },
  responses: {
    200: {
      description: "What became of each",
      content: { "application/json": { schema: PushAnswerSchema } },
    },
    ...refusals,
  },
});

const pull = createRoute({
  method: "get",
  path: "/aircraft/{aircraft}/events",
  summary: "Get the events after a place in the aircraft's ledger",
  request: {
    params,
    query: z.object({
      after: z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER).default(0),
      limit: z.coerce.number().int().min(1).max(PAGE_EVENTS).default(PAGE_EVENTS),
      afterId: z.string().max(100).optional().meta({
        description:
          "The id of the event at `after`, as the reader knows it. When another stands there, the answer is 409 another-history: start again from zero.",
      }),
    }),
  },
  responses: {
    200: { description: "A page", content: { "application/json": { schema: PullAnswerSchema } } },
    ...refusals,
  },
});

const devices = createRoute({
  method: "get",
  path: "/aircraft/{aircraft}/devices",
  summary: "How far each device's events are here without a hole",
  request: { params },
  responses: {
    200: { description: "Per device", content: { "application/json": { schema: DevicesAnswerSchema } } },
    ...refusals,
  },
});

const quarantine = createRoute({
  method: "get",
  path: "/aircraft/{aircraft}/quarantine",
  summary: "What was set aside, with the reason",
  request: {
    params,
    query: z.object({ limit: z.coerce.number().int().min(1).max(PAGE_EVENTS).default(PAGE_EVENTS) }),
  },
  responses: {
    200: { description: "Newest first", content: { "application/json": { schema: QuarantineAnswerSchema } } },
    ...refusals,
  },
});

export function eventRoutes({ store, own, operator, now_ms }: Parts) {
  return newRoutes()
    .openapi(aircraft, async (c) => {
      const answer = { epoch: await store.epoch(), aircraft: [...(await own.heads())] };
      return c.json(answer, 200, NO_STORE);
    })
    .openapi(push, async (c) => {
      const { protocolVersion, events } = c.req.valid("json");
      requireProtocol(protocolVersion);
      const name = c.req.valid("param").aircraft;
      const arrivals = await Promise.all(events.map((event) => sift(event, operator, name)));
      const answer: PushAnswer = await own.append(name, arrivals, now_ms());
      return c.json({ ...answer, results: [...answer.results] }, 200, NO_STORE);
    })
    .openapi(pull, async (c) => {
      const name = c.req.valid("param").aircraft;
      const { after, limit, afterId } = c.req.valid("query");
      if (after > 0 && afterId !== undefined && (await own.idAt(name, after)) !== afterId) {
        throw new Refusal(
          409,
          "another-history",
          `Number ${after} of ${name} is another event here than the one you have. Start again from zero, and send what the server lacks.`,
          { field: "afterId" },
        );
      }
      const page = await own.page(name, { after, limit, most_B: EVENTS_MOST_B });
      // The events are put in as they were kept: to parse and write them again would take time and change nothing.
      return c.newResponse(pageJson(page), 200, {
        ...NO_STORE,
        "Content-Type": "application/json",
      }) as Response & RouteConfigToTypedResponse<typeof pull>; // what pageJson writes
    })
    .openapi(devices, async (c) => {
      const answer: DevicesAnswer = {
        epoch: await store.epoch(),
        devices: Object.fromEntries(await own.devices(c.req.valid("param").aircraft)),
      };
      return c.json(answer, 200, NO_STORE);
    })
    .openapi(quarantine, async (c) => {
      const kept = await own.quarantine(
        c.req.valid("param").aircraft,
        c.req.valid("query").limit,
        EVENTS_MOST_B,
      );
      const answer: QuarantineAnswer = {
        events: kept.map(({ receivedAt_ms, reason, text }) => ({
          receivedAt: iso(receivedAt_ms),
          reason,
          text,
        })),
      };
      return c.json({ events: [...answer.events] }, 200, NO_STORE);
    });
}

const iso = (time_ms: number) => new Date(time_ms).toISOString();

/** @throws {Refusal} 426 for a phone that is older or newer than this server's rules */
function requireProtocol(theirs: number): void {
  if (theirs === PROTOCOL_VERSION) return;
  const remedy =
    theirs < PROTOCOL_VERSION
      ? "Open the app while this server is in reach, and take up its update"
      : "Update the server";
  throw new Refusal(
    426,
    "protocol-version",
    `The app speaks version ${theirs} of the protocol, this server version ${PROTOCOL_VERSION}. ${remedy}. What is kept on the phone stays there.`,
    { field: "protocolVersion" },
  );
}

/** @param more further parts of the answer, by name */
export function pageJson({ epoch, head, events }: Page, more: Readonly<Record<string, number>> = {}): string {
  const list = events.map(
    ({ ledgerSeq, receivedAt_ms, text }: KeptEvent) =>
      `{"ledgerSeq":${ledgerSeq},"receivedAt":"${iso(receivedAt_ms)}","event":${text}}`,
  );
  const rest = Object.entries(more).map(([name, value]) => `"${name}":${value},`);
  return `{"epoch":${JSON.stringify(epoch)},"head":${head},${rest.join("")}"events":[${list.join(",")}]}`;
}
