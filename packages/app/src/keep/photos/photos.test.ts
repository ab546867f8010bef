import { sha256 } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import type { OpenKeep } from "../keep.ts";
import { FakeServer } from "../testing/fake-server.ts";
import { failPuts } from "../testing/faults.ts";
import { newPhone, pickUp } from "../testing/phone.ts";
import type { SmallPicture } from "./shrink.ts";

const SKR = "ZZ-SKR";
const tyre = { kind: "check", id: "left-tyre" } as const;
const picture = (text: string): SmallPicture => ({
  blob: new Blob([text], { type: "image/jpeg" }),
  mediaType: "image/jpeg",
  width_px: 1600,
  height_px: 1200,
});
const shrink = async (file: Blob) => picture(await file.text());
const hashOf = (keep: OpenKeep) => keep.snapshot().aircraft.get(SKR)?.state.photos[0]?.sha256 ?? "";

describe("a photo", () => {
  it("is kept with its event, small, and found after the page was killed", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const before = await pickUp(server, name, { shrink });
    await before.attachPhoto(SKR, tyre, new Blob(["a worn tyre"]));
    const keep = await pickUp(server, name);
    expect(hashOf(keep)).toBe(await sha256("a worn tyre"));
    const blob = await keep.photo(hashOf(keep));
    expect(blob?.type).toBe("image/jpeg");
    expect(await blob?.text()).toBe("a worn tyre");
    expect(keep.snapshot().status.photosToSend).toBe(1);
  });

  it("is kept with its event or not at all", async () => {
    const server = new FakeServer();
    for (let n = 1; ; n++) {
      const name = newPhone();
      const keep = await pickUp(server, name, { shrink });
      await keep.exchange();
      const fault = failPuts((call) => call >= n);
      const kept = await keep.attachPhoto(SKR, tyre, new Blob(["a worn tyre"])).then(
        () => true,
        () => false,
      );
      fault.mend();
      if (kept) {
        expect(n).toBeGreaterThan(5);
        break;
      }
      const again = await pickUp(server, name);
      expect(again.snapshot().aircraft.size).toBe(0);
      expect(again.snapshot().status.photosToSend).toBe(0);
      expect(await again.photo(await sha256("a worn tyre"))).toBeNull();
    }
  });

  it("goes to the server after its event, once, and from there to another phone", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone(), { shrink });
    await one.attachPhoto(SKR, tyre, new Blob(["a worn tyre"]));
    server.requests.length = 0;
    await one.exchange();
    const order = server.requests.filter((request) => /^(POST|PUT)/.test(request));
    expect(order).toEqual([`POST /api/aircraft/${SKR}/events`, `PUT /api/photos/${hashOf(one)}`]);
    server.requests.length = 0;
    await one.exchange();
    expect(server.requests.filter((request) => request.includes("photos"))).toEqual([]);

    const two = await pickUp(server, newPhone());
    await two.exchange();
    expect(await (await two.photo(hashOf(two)))?.text()).toBe("a worn tyre");
    server.intercept = () => Response.error();
    expect(await (await two.photo(hashOf(two)))?.text()).toBe("a worn tyre"); // kept here now
  });

  it("waits while its event waits", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone(), { shrink });
    await keep.attachPhoto(SKR, tyre, new Blob(["a worn tyre"]));
    server.intercept = (method) =>
      method === "POST"
        ? Response.json({ error: { code: "x", message: "Not now." } }, { status: 403 })
        : null;
    await keep.exchange();
    expect(server.requests.filter((request) => request.includes("photos"))).toEqual([]);
    expect(keep.snapshot().status).toMatchObject({ photosToSend: 1, trouble: "Not now." });
  });

  it("that the server will not have is not sent again, and the reason is shown", async () => {
    const server = new FakeServer();
    const keep = await pickUp(server, newPhone(), { shrink });
    await keep.attachPhoto(SKR, tyre, new Blob(["a worn tyre"]));
    server.intercept = (method) =>
      method === "PUT"
        ? Response.json(
            { error: { code: "type", message: "That is no JPEG, PNG or WebP picture." } },
            { status: 415 },
          )
        : null;
    await keep.exchange();
    expect(keep.snapshot().status).toMatchObject({
      photosToSend: 0,
      trouble: "The server will not take a photo: That is no JPEG, PNG or WebP picture.",
    });
    server.requests.length = 0;
    await keep.exchange();
    expect(server.requests.filter((request) => request.startsWith("PUT"))).toEqual([]);
  });

  it("of another phone that does not match its hash is not shown", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone(), { shrink });
    await one.attachPhoto(SKR, tyre, new Blob(["a worn tyre"]));
    await one.exchange();
    const two = await pickUp(server, newPhone());
    await two.exchange();
    server.intercept = (_, path) =>
      path.includes("photos")
        ? new Response("another picture", { headers: { "content-type": "image/jpeg" } })
        : null;
    expect(await two.photo(hashOf(two))).toBeNull();
  });

  it("that another phone took makes room when this one is full", async () => {
    const server = new FakeServer();
    const one = await pickUp(server, newPhone(), { shrink });
    await one.attachPhoto(SKR, tyre, new Blob(["another's"]));
    await one.exchange();
    const two = await pickUp(server, newPhone(), { shrink });
    await two.exchange();
    const others = hashOf(two);
    await two.photo(others);
    await two.attachPhoto(SKR, tyre, new Blob(["my own"]));
    const fault = failPuts((call) => call === 1);
    await two.append(SKR, [{ type: "note.written", body: { subject: tyre, text: "worn on one side" } }]);
    fault.mend();
    server.intercept = () => Response.error();
    expect(await two.photo(others)).toBeNull();
    expect(await (await two.photo(await sha256("my own")))?.text()).toBe("my own");
    expect(two.snapshot().aircraft.get(SKR)?.state.notes).toHaveLength(1);
  });
});
