import { isKnownEvent } from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { demoBook, firstOfDay, REGISTRATION } from "./harness/book.ts";
import type { Phone } from "./harness/browser.ts";
import { Decide } from "./harness/decide.ts";
import { pagesOf } from "./harness/paper.ts";
import { jpeg } from "./harness/picture-file.ts";
import { badReading, goodReading } from "./harness/readings.ts";
import { phoneLedger, serverEvents, serverLedger } from "./harness/records.ts";
import { openScene, type Scene } from "./harness/scene.ts";
import {
  allOnServer,
  apronHas,
  introduce,
  keptWhere,
  readyForNoNet,
  toApron,
  toSheet,
  toWalk,
} from "./harness/screens.ts";
import { percentile, stopwatch, tapTimes } from "./harness/stopwatch.ts";
import { Walker } from "./harness/walker.ts";

const FAULT = "seen while no net was there";
const DONE = "Replaced and tried";

describe("a whole first walk of the day on a 360 by 740 phone, with no net and no server", () => {
  let scene: Scene;
  let phone: Phone;
  let walker: Walker;
  let decide: Decide;
  let taps = { count: 0, kept_ms: [] as number[] };
  const stowed = new Map<string, string>();
  let hash = "";
  const did = { outside: "", notRight: "", leftOpen: "", lookedAgain: "" };

  const countTaps = async () => {
    const { count, kept_ms } = await tapTimes(phone.page);
    taps = { count: taps.count + count, kept_ms: [...taps.kept_ms, ...kept_ms] };
  };

  beforeAll(async () => {
    scene = await openScene();
    phone = await scene.phone({ before: stopwatch });
    walker = new Walker(phone.page, await demoBook(), await jpeg(phone.page));
    decide = new Decide(phone.page);
    return scene.end;
  });

  it("asks who holds the phone, and shows the aircraft of the demo", async () => {
    await introduce(phone.page, "MK");
    await apronHas(phone.page, REGISTRATION);
    await readyForNoNet(phone.page);
  });

  it("is walked step by step to its end", async () => {
    await scene.server.stop();
    await phone.context.setOffline(true);
    await toWalk(phone.page);
    await walker.startFirstOfDay();
    const plan = firstOfDay(walker.book);
    expect(await walker.left()).toEqual({ left: plan.length, of: plan.length });

    const order: string[] = [];
    for (const [at, { step }] of plan.entries()) {
      const inHand = await walker.inHand();
      expect(inHand.step.id).toBe(step.id);
      order.push(step.id);
      if (step.kind === "ground-gear") {
        const place = step.item.stowedIn.at(-1) ?? "";
        stowed.set(step.id, place);
        await walker.countOff(capital(place));
      } else if (step.check.reading !== undefined && did.outside === "") {
        did.outside = step.id;
        await walker.read(badReading(walker.book, step.check));
        await walker.kept(walker.yes, "as it should be");
        await walker.takeBack();
        await expect.poll(async () => (await walker.inHand()).step.id).toBe(step.id);
        await walker.read(goodReading(walker.book, step.check));
        await walker.kept(walker.yes, "as it should be");
      } else if (isFree(plan, step) && at > 10 && did.notRight === "") {
        did.notRight = step.id;
        await walker.notRight(FAULT, true);
      } else if (isFree(plan, step) && at > 20 && did.leftOpen === "") {
        did.leftOpen = step.id;
        await walker.couldNotCheck("Too dark");
      } else if (isFree(plan, step) && at > 30 && did.lookedAgain === "") {
        did.lookedAgain = step.id;
        await walker.couldNotCheck("Out of reach");
      } else {
        await walker.doStep();
      }
    }
    expect(order).toEqual(plan.map(({ step }) => step.id));
    expect(Object.values(did)).not.toContain("");
    expect((await walker.left()).left).toBe(2);
    expect(await keptWhere(phone.page).textContent()).toBe("Kept on phone");
    await walker.finish();
  });

  it("shows on Decide what is not right, and what is not known", async () => {
    expect(await decide.count("stop")).toBeGreaterThanOrEqual(1);
    expect(await decide.count("open")).toBe(2);
    await decide.verdicts.filter({ hasText: FAULT }).first().waitFor();
    await decide.notGoing();
  });

  it("can be put right, and looked at again, and then is no stop any more", async () => {
    await decide.putRight(FAULT, DONE, "A. Mechanic, 42");
    for (const id of [did.notRight, did.lookedAgain]) {
      const step = firstOfDay(walker.book).find((each) => each.step.id === id);
      if (step === undefined) throw new Error(`expected the step ${id}`);
      await walker.goTo(step);
      await walker.doStep();
    }
    await toSheet(phone.page, "Decide");
    expect(await decide.count("stop")).toBe(0);
    expect(await decide.count("open")).toBe(1);
  });

  it("is signed go, with a reason for each thing that is not clear", async () => {
    await decide.go("It was light enough from the other side", "none needed");
    expect(await decide.last.textContent()).toContain("MK");
  });

  it("has a sheet that prints with no net, with the hash of what was signed", async () => {
    const sheet = await decide.sheet();
    hash = (await sheet.getByText(/^[0-9A-F]{4}( [0-9A-F]{4}){3}$/).textContent()) ?? "";
    await phone.page.emulateMedia({ media: "print" });
    const paper = (await sheet.allInnerTexts()).join("");
    for (const said of [REGISTRATION, "MK", hash, "It was light enough from the other side"]) {
      expect(paper).toContain(said);
    }
    const pdf = await phone.page.pdf({ format: "A4", preferCSSPageSize: true });
    expect(pdf.subarray(0, 5).toString()).toBe("%PDF-");
    // what has no room on the first page is laid overleaf, and nothing runs over by itself
    expect(pagesOf(pdf)).toBe(1 + (await sheet.locator(".paper-overleaf").count()));
    await phone.page.emulateMedia({ media: "screen" });
  });

  it("is all there after the app was started again with no net", async () => {
    const before = await phoneLedger(phone.page, REGISTRATION);
    await toSheet(phone.page, "Decide");
    await countTaps();
    await phone.page.reload();
    await decide.last.getByRole("heading", { name: /^Go/ }).waitFor();
    await toSheet(phone.page, "Walk");
    await toApron(phone.page);
    const after = await phoneLedger(phone.page, REGISTRATION);
    expect(after.faults).toEqual([]);
    expect(after.events).toEqual(before.events);
  });

  it("is on the server, whole and once, as soon as the server is back, and its ledger holds", async () => {
    await scene.serverAgain();
    await phone.context.setOffline(false);
    await toApron(phone.page);
    await allOnServer(phone.page);
    const onPhone = await phoneLedger(phone.page, REGISTRATION);
    const onServer = await serverEvents(scene.server.url, REGISTRATION);
    expect(onServer.map(({ id }) => id).toSorted()).toEqual(onPhone.events.map(({ id }) => id).toSorted());
    const ledger = await serverLedger(scene.server.url, REGISTRATION);
    expect(ledger.faults).toEqual([]);
    expect(ledger.events).toHaveLength(onServer.length);

    const known = ledger.events.filter(isKnownEvent);
    for (const [item, place] of stowed) {
      const removed = known.filter(
        (event) => event.type === "groundGear.removed" && event.body.item === item,
      );
      const last = removed.at(-1);
      expect(last?.type === "groundGear.removed" && last.body.stowedIn).toBe(place);
    }
    const decisions = known.flatMap((event) => (event.type === "decision.signed" ? [event] : []));
    expect(decisions.map(({ body }) => body.answer)).toEqual(["not-going", "go"]);
    // what stands on the paper is the beginning of the hash of the signed event
    expect(decisions.at(-1)?.hash.toUpperCase().startsWith(hash.replaceAll(" ", ""))).toBe(true);
    expect(known.some((event) => event.type === "photo.attached")).toBe(true);
    expect(phone.complaints).toEqual([]);
  });

  it("measures its taps", async () => {
    await countTaps();
    console.log(
      `whole walk: ${taps.count} taps; tap to kept, median ${percentile(taps.kept_ms, 0.5).toFixed(0)} ms, ` +
        `95th percentile ${percentile(taps.kept_ms, 0.95).toFixed(0)} ms, of ${taps.kept_ms.length}`,
    );
    expect(taps.kept_ms.length).toBeGreaterThan(firstOfDay(walker.book).length);
  });
});

type Plan = ReturnType<typeof firstOfDay>;

/** A check that is answered with one tap, and on which no other check rests. */
const isFree = (plan: Plan, step: Plan[number]["step"]): boolean =>
  step.kind === "check" &&
  step.check.reading === undefined &&
  step.check.evidence !== "photo" &&
  !plan.some((other) => other.step.kind === "check" && other.step.check.after.includes(step.id));

const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
