import { describe, expect, it } from "vitest";
import { currentWalk, lastAnswer } from "../readers.ts";
import type { Phone } from "../testing/phone.ts";
import { Scene } from "../testing/scene.ts";
import { fold } from "./fold.ts";

const AT = "2031-05-04T09:07:00.000+02:00";

/** One walk on one phone, with short words for what is said in it. */
function oneWalk() {
  const scene = new Scene();
  const phone = scene.phone("Ada");
  const walk = scene.id();
  scene.say(phone, {
    type: "walk.started",
    body: { walk, kind: "first-of-day", bookSha256: "b0".repeat(32) },
  });
  const answer = (check: string, by: Phone = phone) =>
    scene.say(by, { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } });
  const interrupt = (by: Phone = phone) =>
    scene.say(by, { type: "walk.interrupted", body: { walk, cause: "away", left: AT, back: AT } });
  const withdraw = (event: { readonly id: string }) =>
    scene.say(phone, { type: "event.withdrawn", body: { event: event.id, why: "a slip" } });
  const state = () => fold(scene.events);
  return { scene, phone, walk, answer, interrupt, withdraw, state };
}

describe("an interruption", () => {
  it("asks again for the last three different checks answered before it, oldest first", () => {
    const { answer, interrupt, state } = oneWalk();
    for (const check of ["a", "b", "c", "d", "d", "c"]) answer(check);
    const { id } = interrupt();
    const walk = currentWalk(state());
    expect(walk?.askedAgain).toEqual(["b", "d", "c"]);
    expect(walk?.interruptions[0]?.asksAgain).toEqual(["b", "d", "c"]);
    expect(lastAnswer(state(), "a")?.askedAgainBy).toBeUndefined();
    for (const check of ["b", "c", "d"]) expect(lastAnswer(state(), check)?.askedAgainBy).toBe(id);
  });

  it("asks for as many as there are when fewer than three were answered, and for none at the start", () => {
    const { answer, interrupt, state } = oneWalk();
    interrupt();
    expect(currentWalk(state())?.askedAgain).toEqual([]);
    answer("a");
    interrupt();
    expect(currentWalk(state())?.askedAgain).toEqual(["a"]);
  });

  it("is satisfied check by check as they are answered anew; what it asked stays on the walk", () => {
    const { answer, interrupt, state } = oneWalk();
    for (const check of ["a", "b", "c"]) answer(check);
    interrupt();
    answer("b");
    const walk = currentWalk(state());
    expect(walk?.askedAgain).toEqual(["a", "c"]);
    expect(walk?.interruptions[0]?.asksAgain).toEqual(["a", "b", "c"]);
    expect(
      state()
        .checks.get("b")
        ?.answers.map((each) => "askedAgainBy" in each),
    ).toEqual([false, false]);
  });

  it("asks anew when another follows, whether the first was satisfied or not", () => {
    const { answer, interrupt, state } = oneWalk();
    for (const check of ["a", "b", "c"]) answer(check);
    interrupt();
    answer("c");
    const second = interrupt();
    expect(currentWalk(state())?.askedAgain).toEqual(["a", "b", "c"]);
    expect(lastAnswer(state(), "c")?.askedAgainBy).toBe(second.id);
  });

  it("that is withdrawn asks for nothing", () => {
    const { answer, interrupt, withdraw, state } = oneWalk();
    answer("a");
    withdraw(interrupt());
    expect(currentWalk(state())?.askedAgain).toEqual([]);
    expect(lastAnswer(state(), "a")?.askedAgainBy).toBeUndefined();
  });

  it("asks anew when the answer that satisfied it is withdrawn", () => {
    const { answer, interrupt, withdraw, state } = oneWalk();
    answer("a");
    interrupt();
    withdraw(answer("a"));
    expect(currentWalk(state())?.askedAgain).toEqual(["a"]);
  });

  it("of one phone leaves alone what the other answered meanwhile", () => {
    const { scene, answer, interrupt, state } = oneWalk();
    const other = scene.phone("Ben");
    for (const check of ["a", "b", "c", "d"]) answer(check);
    for (const check of ["w", "x", "y", "z"]) answer(check, other);
    interrupt();
    expect(currentWalk(state())?.askedAgain).toEqual(["b", "c", "d"]);
  });

  it("of a phone that took over without an answer of its own asks for the last three of all", () => {
    const { scene, answer, interrupt, state } = oneWalk();
    for (const check of ["a", "b", "c", "d"]) answer(check);
    interrupt(scene.phone("Ben"));
    expect(currentWalk(state())?.askedAgain).toEqual(["b", "c", "d"]);
  });

  it("asks nothing of another walk", () => {
    const { scene, phone, answer, interrupt, state } = oneWalk();
    const earlier = scene.id();
    const body = { walk: earlier, check: "a", answer: "as-it-should-be" } as const;
    scene.say(phone, { type: "check.answered", body });
    answer("b");
    interrupt();
    expect(currentWalk(state())?.askedAgain).toEqual(["b"]);
    expect(lastAnswer(state(), "a")?.askedAgainBy).toBeUndefined();
  });
});

describe("answers and readings", () => {
  it("of two phones to one check both stay, in the order of their stamps", () => {
    const { scene, walk, answer, phone, state } = oneWalk();
    const other = scene.phone("Ben");
    answer("a");
    const body = { walk, check: "a", answer: "not-right" } as const;
    scene.say(other, { type: "check.answered", body });
    expect(
      state()
        .checks.get("a")
        ?.answers.map(({ device, answer: said }) => [device, said]),
    ).toEqual([
      [phone.device, "as-it-should-be"],
      [other.device, "not-right"],
    ]);
  });

  it("carry who, when and on which phone", () => {
    const { scene, phone, walk, state } = oneWalk();
    const read = { value: 5.18, unit: "bar" } as const;
    const temperature = { value: -4, unit: "degC" } as const;
    const body = { walk, check: "tyre", gauge: "tyre-gauge", read, temperature };
    const event = scene.say(phone, { type: "reading.recorded", body });
    expect(state().checks.get("tyre")?.readings).toStrictEqual([
      {
        event: event.id,
        device: phone.device,
        deviceSeq: 2,
        author: phone.about.author,
        hlc: event.hlc,
        recordedAt: event.recordedAt,
        walk,
        gauge: "tyre-gauge",
        read,
        temperature,
      },
    ]);
  });

  it("say why a check could not be made", () => {
    const { scene, phone, walk, state } = oneWalk();
    const body = { walk, check: "a", answer: "could-not-check", reason: "too-dark" } as const;
    scene.say(phone, { type: "check.answered", body });
    expect(lastAnswer(state(), "a")).toMatchObject({ answer: "could-not-check", reason: "too-dark" });
  });
});
