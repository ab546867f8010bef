import type { OpenAPIHono } from "@hono/zod-openapi";
import type { Env } from "../guard/gate.ts";
import { descriptionPage, PAGE_STYLE } from "./description-page.ts";

const ABOUT = {
  openapi: "3.1.0",
  info: {
    title: "Witnessmark",
    version: "1",
    description:
      "The server of Witnessmark. Phones keep everything and send it here when they can. What is acknowledged is committed. Every refusal is an ErrorAnswer with a sentence for a person and a code for a program.",
  },
};

/** The routes as OpenAPI, and as a page to read. */
export function addDescription(api: OpenAPIHono<Env>): void {
  const describe = () => api.getOpenAPI31Document(ABOUT);
  api.get("/api/openapi.json", (c) => c.json(describe(), 200));
  api.get("/api/page.css", (c) => c.body(PAGE_STYLE, 200, { "Content-Type": "text/css; charset=utf-8" }));
  api.get("/api", (c) => c.html(descriptionPage(describe())));
}
