import { describe, expect, it } from "vitest";
import { Scene } from "../testing/scene.ts";
import { fold } from "./fold.ts";

function chocks() {
  const scene = new Scene();
  const phone = scene.phone("Ada");
  const putOn = (count: number) =>
    scene.say(phone, { type: "groundGear.fitted", body: { item: "chocks", count } });
  const remove = (count: number, stowedIn: string) =>
    scene.say(phone, { type: "groundGear.removed", body: { item: "chocks", count, stowedIn } });
  const state = () => fold(scene.events).groundGear.get("chocks");
  const stowed = () => state()?.removals.map(({ count, stowedIn }) => [count, stowedIn]);
  return { putOn, remove, state, stowed };
}

describe("ground gear", () => {
  it("counts what is on, and says where each piece is that came off", () => {
    const { putOn, remove, state, stowed } = chocks();
    putOn(3);
    remove(1, "nose locker");
    const last = remove(2, "aft baggage");
    expect(state()?.fitted).toBe(0);
    expect(state()?.last.event).toBe(last.id);
    expect(stowed()).toEqual([
      [1, "nose locker"],
      [2, "aft baggage"],
    ]);
  });

  it("never counts below none, where the ledger began after the pieces were put on", () => {
    const { remove, state, stowed } = chocks();
    remove(2, "aft baggage");
    expect(state()?.fitted).toBe(0);
    expect(stowed()).toEqual([[2, "aft baggage"]]);
  });

  it("takes pieces that go on from those that came off first", () => {
    const { putOn, remove, state, stowed } = chocks();
    putOn(3);
    remove(1, "nose locker");
    remove(2, "aft baggage");
    putOn(2);
    expect(state()?.fitted).toBe(2);
    expect(stowed()).toEqual([[1, "aft baggage"]]);
    putOn(1);
    expect(stowed()).toEqual([]);
  });
});
