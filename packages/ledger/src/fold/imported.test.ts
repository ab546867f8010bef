import { describe, expect, it } from "vitest";
import { parseEvent } from "../parse-event.ts";
import { Scene } from "../testing/scene.ts";
import { fold } from "./fold.ts";

function story() {
  const scene = new Scene();
  const phone = scene.phone("Ada");
  const bundle = scene.id();
  const walk = scene.id();
  return {
    scene,
    phone,
    bundle,
    state: () => fold(scene.events),
    values: () =>
      fold(scene.events)
        .checks.get("tyre")
        ?.readings.map(({ read }) => read.value) ?? [],
    bring: (at: string, value: number, by = phone) =>
      scene.say(by, {
        type: "reading.imported",
        body: { import: bundle, check: "tyre", gauge: "g", at, read: { value, unit: "bar" }, by: "Old log" },
      }),
    read: (value: number) =>
      scene.say(phone, {
        type: "reading.recorded",
        body: { walk, check: "tyre", gauge: "g", read: { value, unit: "bar" } },
      }),
  };
}

describe("readings from a file", () => {
  it("stand where their own moment puts them: an old one is never the last", () => {
    const { bring, read, values } = story();
    read(5.2); // on 2031-05-04, as the scene begins
    bring("2030-03-01T09:00:00+01:00", 5.4);
    bring("2029-03-01T09:00:00+01:00", 5.5);
    bring("2030-06-01T09:00:00+01:00", 5.3);
    expect(values()).toEqual([5.5, 5.4, 5.3, 5.2]);
  });

  it("tell when they were read, by whom, and when they were brought in", () => {
    const { bring, state, bundle } = story();
    const event = bring("2030-03-01T09:00:00+01:00", 5.4);
    expect(state().checks.get("tyre")?.readings).toEqual([
      {
        event: event.id,
        device: event.device,
        deviceSeq: 1,
        author: event.author,
        hlc: event.hlc,
        recordedAt: "2030-03-01T09:00:00+01:00",
        walk: event.id,
        gauge: "g",
        read: { value: 5.4, unit: "bar" },
        imported: { import: bundle, broughtInAt: event.recordedAt, by: "Old log" },
      },
    ]);
  });

  it("that come twice count once, also when the moment is written with another offset", () => {
    const { scene, bring, values, phone } = story();
    const first = bring("2030-03-01T09:00:00+01:00", 5.4);
    bring("2030-03-01T08:00:00Z", 5.4, scene.phone("Ben"));
    bring("2030-03-01T08:00:00Z", 5.3);
    expect(values()).toEqual([5.4, 5.3]);
    // the other of the two stands in when the first no longer counts
    scene.say(phone, { type: "event.withdrawn", body: { event: first.id, why: "wrong file" } });
    expect(values().toSorted()).toEqual([5.3, 5.4]);
  });

  it("are taken back as a whole in one step, also those that come later, and that can be undone", () => {
    const { scene, bring, read, values, bundle, phone } = story();
    read(5.2);
    bring("2030-03-01T09:00:00+01:00", 5.4);
    bring("2029-03-01T09:00:00+01:00", 5.5);
    const back = scene.say(phone, { type: "event.withdrawn", body: { event: bundle, why: "wrong file" } });
    expect(values()).toEqual([5.2]);
    bring("2030-06-01T09:00:00+01:00", 5.3, scene.phone("Ben"));
    expect(values()).toEqual([5.2]);
    scene.say(phone, { type: "event.withdrawn", body: { event: back.id, why: "the right file after all" } });
    expect(values()).toEqual([5.5, 5.4, 5.3, 5.2]);
  });

  it("without a time of their own, or in no unit, are refused at the boundary", () => {
    const { scene, bring } = story();
    bring("2030-03-01T09:00:00+01:00", 5.4);
    const [event] = scene.events;
    expect(parseEvent(event)).toStrictEqual({ ok: true, event });
    for (const changed of [
      { at: "2030-03-01" },
      { at: "2030-02-30T09:00:00Z" },
      { read: { value: 1, unit: "furlong" } },
    ]) {
      const body = { ...(event?.body as object), ...changed };
      expect(parseEvent({ ...event, body }).ok).toBe(false);
    }
  });
});
