import { StoreError } from "@witnessmark/store";
import type { Context } from "hono";
import { HTTPException } from "hono/http-exception";
import type { ContentfulStatusCode } from "hono/utils/http-status";
import type { ErrorAnswer } from "./protocol.ts";

/** A request that is refused, in words for a person and a code for a program. */
export class Refusal extends Error {
  override readonly name = "Refusal";
  readonly status: ContentfulStatusCode;
  readonly code: string;
  readonly field: string | undefined;
  readonly retryAfter_s: number | undefined;
  constructor(
    status: ContentfulStatusCode,
    code: string,
    message: string,
    more: { readonly field?: string; readonly retryAfter_s?: number } = {},
  ) {
    super(message);
    this.status = status;
    this.code = code;
    this.field = more.field;
    this.retryAfter_s = more.retryAfter_s;
  }
}

/** Turns whatever was thrown into a refusal; `null` when it is a fault of this program. */
export function refusalOf(error: unknown): Refusal | null {
  if (error instanceof Refusal) return error;
  if (error instanceof StoreError) return ofStore(error);
  if (error instanceof HTTPException) {
    // The routes' own reading of a body throws these, each with a status that has a body.
    const status = error.status as ContentfulStatusCode;
    const message = `The body does not read (${error.message}). Expected JSON, with content-type application/json, as the list of routes at /api says.`;
    return new Refusal(status, "bad-request", message);
  }
  return null;
}

function ofStore(error: StoreError): Refusal {
  switch (error.code) {
    case "full":
      return new Refusal(507, "disk-full", error.message);
    case "busy":
      return new Refusal(503, "busy", error.message, { retryAfter_s: 1 });
    case "unreachable":
      return new Refusal(503, "database-out-of-reach", error.message, { retryAfter_s: 5 });
    case "newer":
    case "altered":
    case "damaged":
      return new Refusal(500, `database-${error.code}`, error.message);
    default:
      return error.code satisfies never;
  }
}

/** Sends a refusal, or, for a fault of this program, says that it is one and tells `onProblem` of it. */
export function answerError(error: unknown, c: Context, onProblem: (problem: unknown) => void): Response {
  const refusal = refusalOf(error);
  if (refusal === null || refusal.status === 500) onProblem(error);
  const { status, code, message, field, retryAfter_s } =
    refusal ??
    new Refusal(
      500,
      "fault",
      "The server failed at this. It is written in its log. Send it again; what was acknowledged is safe.",
    );
  if (retryAfter_s !== undefined) c.header("Retry-After", String(retryAfter_s));
  // What is still on its way is not read; the next request needs another connection.
  if (status === 413) c.header("Connection", "close");
  const answer: ErrorAnswer = { error: { code, message, ...(field === undefined ? {} : { field }) } };
  return c.json(answer, status);
}
