import { emptyState, newId, readLedger } from "@witnessmark/ledger";
import { createElement } from "react";
import { renderToString } from "react-dom/server";
import { describe, expect, it, vi } from "vitest";
import type { Draft } from "./contract.ts";
import { reachServer } from "./exchange/reach-server.ts";
import { startKeep } from "./keep.ts";
import type { PageEvents } from "./options.ts";
import { KeepProvider, useKeepSnapshot } from "./react.ts";
import { FakeServer } from "./testing/fake-server.ts";
import { newPhone, pickUp } from "./testing/phone.ts";

const SKR = "ZZ-SKR";
const walk = newId();
const answered = (check: string): Draft => ({
  type: "check.answered",
  body: { walk, check, answer: "as-it-should-be" },
});

const Shown = () => createElement("p", null, useKeepSnapshot().person?.name ?? "nobody");

describe("a snapshot", () => {
  it("stays the same object until something in it changes, and shares what did not", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    await keep.append("ZZ-DUN", [answered("oil-level")]);
    const before = keep.snapshot();
    expect(keep.snapshot()).toBe(before);
    await keep.append(SKR, [answered("oil-level")]);
    const after = keep.snapshot();
    expect(after).not.toBe(before);
    expect(after.aircraft.get("ZZ-DUN")).toBe(before.aircraft.get("ZZ-DUN"));
    expect(after.people).toBe(before.people);
    await keep.exchange();
    const exchanged = keep.snapshot();
    expect(exchanged.aircraft.get(SKR)?.state).toBe(after.aircraft.get(SKR)?.state);
  });

  it("tells its listeners of a change, and no one who has left", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    const listener = vi.fn();
    const leave = keep.subscribe(listener);
    await keep.append(SKR, [answered("oil-level")]);
    expect(listener).toHaveBeenCalled();
    leave();
    listener.mockClear();
    await keep.append(SKR, [answered("left-tyre")]);
    expect(listener).not.toHaveBeenCalled();
  });

  it("is shown by a component under a provider", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    expect(renderToString(createElement(KeepProvider, { keep }, createElement(Shown)))).toBe(
      "<p>Ida Holm</p>",
    );
    expect(() => renderToString(createElement(Shown))).toThrow(
      "expected a KeepProvider above this component",
    );
  });

  it("says that the storage is being opened, until it is", async () => {
    const keep = startKeep({
      name: newPhone(),
      server: reachServer(new FakeServer().fetch),
      automatic: false,
      liveSource: null,
    });
    expect(keep.snapshot().phase).toBe("opening");
    await keep.opened;
    expect(keep.snapshot().phase).toBe("ready");
    expect(keep.snapshot().person).toBeNull();
  });
});

describe("other tabs on the same phone", () => {
  it("see what this one keeps, and who holds the phone", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const one = await pickUp(server, name);
    const two = await pickUp(server, name);
    await one.append(SKR, [answered("oil-level")]);
    await expect
      .poll(() => two.snapshot().aircraft.get(SKR)?.state)
      .toEqual(one.snapshot().aircraft.get(SKR)?.state);
    expect(two.snapshot().status.toSend).toBe(2);
    await two.introduce({ name: "Per Lie", role: "mechanic" });
    await expect.poll(() => one.snapshot().person?.name).toBe("Per Lie");
    await one.exchange();
    await expect.poll(() => two.snapshot().status).toMatchObject({ toSend: 0, server: "reached" });
  });

  it("see it at the latest when they are shown again", async () => {
    const server = new FakeServer();
    const name = newPhone();
    const shown = new Set<() => void>();
    const page: PageEvents = {
      isShown: () => true,
      onShown: (listener) => {
        shown.add(listener);
        return () => shown.delete(listener);
      },
      onHidden: () => () => {},
      onOnline: () => () => {},
    };
    const one = await pickUp(server, name);
    await one.append(SKR, [answered("oil-level")]);
    const two = await pickUp(server, name, { page });
    vi.stubGlobal("BroadcastChannel", undefined);
    const mute = await pickUp(server, name);
    vi.unstubAllGlobals();
    await mute.append(SKR, [answered("left-tyre")]);
    expect(two.snapshot().aircraft.get(SKR)?.state.checks.size).toBe(1);
    for (const listener of shown) listener();
    await expect.poll(() => two.snapshot().aircraft.get(SKR)?.state.checks.size).toBe(2);
  });
});

describe("an export", () => {
  it("is a sound ledger file with everything in it", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    await keep.append(SKR, [answered("oil-level")]);
    await keep.append(SKR, [answered("left-tyre")]);
    const blob = await keep.exportLedger(SKR);
    const read = await readLedger(await blob.text());
    expect(read.faults).toEqual([]);
    expect(read.header).toMatchObject({ aircraft: SKR, operator: "isles", events: 3 });
    expect(read.events.map((event) => event.type)).toEqual([
      "device.introduced",
      "check.answered",
      "check.answered",
    ]);
  });
});

describe("a promise not to clear the storage", () => {
  it("is asked for from a tap, and its answer shown", async () => {
    const storage = { persist: async () => true, persisted: async () => false, estimate: async () => ({}) };
    const keep = await pickUp(new FakeServer(), newPhone(), { storage });
    expect(keep.snapshot().status.persisted).toBe(false);
    expect(await keep.askToPersist()).toBe(true);
    expect(keep.snapshot().status.persisted).toBe(true);
  });
});

describe("an aircraft of which nothing is kept", () => {
  it("is not among the aircraft", async () => {
    const keep = await pickUp(new FakeServer(), newPhone());
    expect(keep.snapshot().aircraft.size).toBe(0);
    expect(emptyState("").eventCount).toBe(0);
    const text = await (await keep.exportLedger("ZZ-NONE")).text();
    expect(text.split("\n")).toHaveLength(3);
  });
});
