import { walkedLedger } from "@witnessmark/sheet/testing/walked-ledger";
import { expect, it } from "vitest";
import { makeClient } from "../client.ts";
import { rawRequest } from "../testing/raw-request.ts";
import { serve } from "../testing/serve.ts";

it("hands out the sheet of a signed decision as a PDF with the record in it, and says when there is none", async () => {
  const { url } = await serve({ operator: "own" });
  const { events, decision } = await walkedLedger();
  const pushed = await makeClient(url).push("ZZ-SML", events);
  expect(pushed.results.map(({ outcome }) => outcome)).toEqual(events.map(() => "accepted"));

  const answer = await fetch(`${url}/api/aircraft/ZZ-SML/decisions/${decision}/sheet.pdf`);
  expect(answer.status).toBe(200);
  expect(answer.headers.get("content-type")).toBe("application/pdf");
  const pdf = Buffer.from(await answer.arrayBuffer()).toString("latin1");
  expect(pdf).toMatch(/^%PDF-/);
  expect(pdf).toContain("decision.json");

  const none = await rawRequest(
    url,
    "/api/aircraft/ZZ-SML/decisions/01900000-0000-7000-8000-00000000ffff/sheet.pdf",
  );
  expect(none.status).toBe(404);
  expect(JSON.parse(none.body).error.message).toContain("There is no decision");
  const nobody = await rawRequest(url, `/api/aircraft/ZZ-NON/decisions/${decision}/sheet.pdf`);
  expect(JSON.parse(nobody.body).error.message).toBe("There are no events of ZZ-NON here.");
  expect((await rawRequest(url, "/api/aircraft/ZZ-SML/decisions/nonsense/sheet.pdf")).status).toBe(400);
});
