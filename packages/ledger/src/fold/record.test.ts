import { describe, expect, it } from "vitest";
import { bookInForce, openDiscrepancies } from "../readers.ts";
import { placeholderSeal } from "../testing/phone.ts";
import { Scene } from "../testing/scene.ts";
import { fold } from "./fold.ts";

const AT = "2031-05-04T09:07:00.000+02:00";

function story() {
  const scene = new Scene();
  const phone = scene.phone("Ada");
  return { scene, phone, state: () => fold(scene.events) };
}

describe("discrepancies", () => {
  it("are open until closed, and keep every closing that two phones said", () => {
    const { scene, phone, state } = story();
    const other = scene.phone("Ben");
    const discrepancy = scene.id();
    const walk = scene.id();
    scene.say(phone, {
      type: "discrepancy.raised",
      body: {
        discrepancy,
        words: "a split of 12 mm",
        walk,
        check: "boot.left",
        measured: { value: 12, unit: "mm" },
      },
    });
    expect(openDiscrepancies(state()).map(({ id }) => id)).toEqual([discrepancy]);
    scene.say(phone, {
      type: "discrepancy.closed",
      body: { discrepancy, how: "put-right", words: "patched", releasedBy: "C. Dow" },
    });
    scene.say(other, {
      type: "discrepancy.closed",
      body: { discrepancy, how: "no-fault-found", words: "within limits", releasedBy: "E. Fay" },
    });
    expect(openDiscrepancies(state())).toEqual([]);
    expect(state().discrepancies.get(discrepancy)).toMatchObject({
      words: "a split of 12 mm",
      check: "boot.left",
      measured: { value: 12, unit: "mm" },
      closings: [
        { how: "put-right", releasedBy: "C. Dow" },
        { how: "no-fault-found", releasedBy: "E. Fay" },
      ],
    });
  });

  it("keep each word on who released them, and on which authority", () => {
    const { scene, phone, state } = story();
    const discrepancy = scene.id();
    scene.say(phone, { type: "discrepancy.raised", body: { discrepancy, words: "a dead light" } });
    scene.say(phone, {
      type: "discrepancy.closed",
      body: { discrepancy, how: "put-right", words: "new bulb", releasedBy: "Ada" },
    });
    const said = { as: "pilot-owner", by: "Ada", authority: "LIC 118", said: { owns: true } } as const;
    scene.say(phone, {
      type: "discrepancy.released",
      body: { discrepancy, rulePack: "eu-part-nco", ...said },
    });
    expect(state().discrepancies.get(discrepancy)).toMatchObject({ isOpen: false, releases: [said] });
  });

  it("closed by a clock that sorts before they were raised are closed all the same", () => {
    const { scene, state } = story();
    const ahead = scene.phone("Ada", 3_600_000);
    const right = scene.phone("Ben");
    const discrepancy = scene.id();
    scene.say(ahead, { type: "discrepancy.raised", body: { discrepancy, words: "a weep" } });
    scene.say(right, {
      type: "discrepancy.closed",
      body: { discrepancy, how: "put-right", words: "new seal", releasedBy: "C. Dow" },
    });
    expect(openDiscrepancies(state())).toEqual([]);
    expect(state().unplaced.size).toBe(0);
  });
});

describe("withdrawals", () => {
  it("take an event out of the state, and withdrawn themselves put it back", () => {
    const { scene, phone, state } = story();
    const noted = scene.say(phone, { type: "happening.recorded", body: { happening: "rain", at: AT } });
    const first = scene.say(phone, {
      type: "event.withdrawn",
      body: { event: noted.id, why: "it was spray" },
    });
    expect(state().happenings).toEqual([]);
    expect([...state().withdrawn]).toEqual([noted.id]);
    const second = scene.say(phone, {
      type: "event.withdrawn",
      body: { event: first.id, why: "rain after all" },
    });
    expect(state().happenings.map(({ event }) => event)).toEqual([noted.id]);
    expect([...state().withdrawn]).toEqual([first.id]);
    scene.say(phone, { type: "event.withdrawn", body: { event: second.id, why: "spray after all" } });
    expect(state().happenings).toEqual([]);
  });

  it("hold whatever their clock says, also before what they name", () => {
    const { scene, state } = story();
    const ahead = scene.phone("Ada", 3_600_000);
    const right = scene.phone("Ben");
    const noted = scene.say(ahead, { type: "happening.recorded", body: { happening: "rain", at: AT } });
    const undone = scene.say(right, {
      type: "event.withdrawn",
      body: { event: noted.id, why: "it was spray" },
    });
    expect(undone.hlc < noted.hlc).toBe(true);
    expect(state().happenings).toEqual([]);
  });

  it("that name each other in a circle have no effect", () => {
    const { scene, phone } = story();
    const [a, b] = [scene.id(), scene.id()];
    const noted = scene.say(phone, { type: "happening.recorded", body: { happening: "rain", at: AT } });
    const one = scene.say(phone, { type: "event.withdrawn", body: { event: b, why: "?" } });
    const other = scene.say(phone, { type: "event.withdrawn", body: { event: a, why: "?" } });
    const last = scene.say(phone, { type: "event.withdrawn", body: { event: noted.id, why: "?" } });
    const circle = [
      placeholderSeal(noted),
      { ...placeholderSeal(one), id: a },
      { ...placeholderSeal(other), id: b },
      placeholderSeal(last),
    ];
    expect([...fold(circle).withdrawn]).toEqual([noted.id]);
  });

  it("in a chain of ten thousand are settled in one pass", () => {
    const { scene, phone, state } = story();
    const noted = scene.say(phone, { type: "happening.recorded", body: { happening: "rain", at: AT } });
    let target = noted.id;
    for (let at = 0; at < 10_000; at += 1) {
      target = scene.say(phone, { type: "event.withdrawn", body: { event: target, why: "again" } }).id;
    }
    expect(state().happenings).toHaveLength(1);
    expect(state().withdrawn.size).toBe(5000);
  });
});

describe("the rest of the record", () => {
  it("keeps every book, the last in force", () => {
    const { scene, phone, state } = story();
    for (const revision of [1, 2]) {
      const body = {
        sha256: `${revision}`.repeat(64),
        revision,
        registration: "ZZ-SKR",
        type: "Invented",
        text: "…",
      };
      scene.say(phone, { type: "book.adopted", body });
    }
    expect(state().books.map(({ revision }) => revision)).toEqual([1, 2]);
    expect(bookInForce(state())?.revision).toBe(2);
    expect(bookInForce(fold([]))).toBeUndefined();
  });

  it("knows when a happening was, as the person says, and how each device introduced itself", () => {
    const { scene, phone, state } = story();
    const key = { kind: "none", why: "private browsing" } as const;
    scene.say(phone, { type: "device.introduced", body: { label: "Ada's phone", key } });
    scene.say(phone, {
      type: "happening.recorded",
      body: { happening: "frost", at: AT, words: "on the tail" },
    });
    expect(state().happenings[0]).toMatchObject({ kind: "frost", words: "on the tail", at: AT });
    expect(state().happenings[0]?.at_ms).toBe(Date.UTC(2031, 4, 4, 7, 7));
    expect(state().devices.get(phone.device)).toMatchObject({ label: "Ada's phone", key });
    expect(state().heads.get(phone.device)).toBe(2);
  });

  it("is archived and restored", () => {
    const { scene, phone, state } = story();
    scene.say(phone, { type: "aircraft.archived", body: { why: "sold" } });
    expect(state().archived).toBe(true);
    scene.say(phone, { type: "aircraft.restored", body: {} });
    expect(state().archived).toBe(false);
  });

  it("carries notes, photos by hash, and decisions with whether they are signed", () => {
    const { scene, phone } = story();
    const subject = { kind: "check", id: "boot.left" } as const;
    scene.say(phone, { type: "note.written", body: { subject, text: "dry" } });
    const photo = {
      sha256: "c1".repeat(32),
      mediaType: "image/png",
      size_B: 9,
      width_px: 1,
      height_px: 1,
    } as const;
    scene.say(phone, { type: "photo.attached", body: { subject, ...photo } });
    const said = {
      walk: scene.id(),
      answer: "not-going",
      flight: null,
      at: AT,
      bookSha256: "b0".repeat(32),
      assessmentSha256: "a5".repeat(32),
      counts: { clear: 1, caution: 0, stop: 1, open: 0 },
      restsOn: [{ verdict: "check:boot.left", status: "stop" }],
      heads: { [phone.device]: 2 },
      reasons: [],
    } as const;
    const decision = scene.id();
    scene.say(phone, { type: "decision.signed", body: { decision, ...said } });
    const [noteEvent, photoEvent, decisionEvent] = scene.events;
    if (noteEvent === undefined || photoEvent === undefined || decisionEvent === undefined)
      throw new Error("told three");
    const state = fold([noteEvent, photoEvent, { ...decisionEvent, signature: "AA" }]);
    expect(state.notes[0]).toMatchObject({ subject, text: "dry" });
    expect(state.photos[0]).toMatchObject({ subject, sha256: photo.sha256, mediaType: "image/png" });
    expect(state.decisions[0]).toMatchObject({
      id: decision,
      ...said,
      signed: true,
      hash: decisionEvent.hash,
    });
    expect(fold(scene.events).decisions[0]?.signed).toBe(false);
  });

  it("keeps events of a type or version it does not know, and counts them", () => {
    const { scene, phone } = story();
    scene.say(phone, { type: "aircraft.restored", body: {} });
    scene.say(phone, { type: "aircraft.archived", body: { why: "sold" } });
    const [first, second] = scene.events;
    if (first === undefined || second === undefined) throw new Error("told two");
    const state = fold([
      { ...first, type: "mood.noted" },
      { ...second, schemaVersion: 2 },
    ]);
    expect(state.unknown.map(({ event, type, schemaVersion }) => [event, type, schemaVersion])).toEqual([
      [first.id, "mood.noted", 1],
      [second.id, "aircraft.archived", 2],
    ]);
    expect(state.archived).toBe(false);
    expect(state.eventCount).toBe(2);
    expect(state.heads.get(phone.device)).toBe(2);
  });

  it("is of one aircraft: another's event is refused by name", () => {
    const { scene, phone } = story();
    scene.say(phone, { type: "aircraft.restored", body: {} });
    scene.say(phone, { type: "aircraft.restored", body: {} });
    const [first, second] = scene.events;
    if (first === undefined || second === undefined) throw new Error("told two");
    expect(() => fold([first, { ...second, aircraft: "ZZ-DUN" }])).toThrow(
      `fold: expected events of ZZ-SKR only, found ${second.id} of ZZ-DUN; fold each aircraft by itself`,
    );
  });
});
