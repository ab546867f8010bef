import { OpenAPIHono } from "@hono/zod-openapi";
import type { Env } from "../guard/gate.ts";
import { Refusal } from "../refusal.ts";
import { ErrorAnswerSchema } from "../schemas.ts";

/** An empty set of routes; a request that does not fit a route's schema is refused in the words of this program. */
export function newRoutes() {
  return new OpenAPIHono<Env>({
    defaultHook: (result) => {
      if (result.success) return;
      const [issue] = result.error.issues;
      const field = issue?.path.join(".") ?? "";
      const where = field === "" ? "The body" : field;
      throw new Refusal(
        400,
        "bad-request",
        `${where} is not as expected: ${issue?.message ?? "it does not read"}.`,
        {
          field,
        },
      );
    },
  });
}

/** Every route may answer these; each says why in a sentence. */
export const refusals = {
  default: {
    description: "A refusal: what was expected, what came, and what to do",
    content: { "application/json": { schema: ErrorAnswerSchema } },
  },
} as const;
