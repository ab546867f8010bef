import { describe, expect, it } from "vitest";
import type { Book } from "./book.ts";
import { bookOf, DEMO_BOOKS } from "./testing/demo-books.ts";

// What a walk of such aircraft looks at, by general trade practice: common practice, no one source.

const firstOfDay = (book: Book) => book.checks.filter(({ walks }) => walks.includes("first-of-day"));
const idsOf = (book: Book) => new Set(firstOfDay(book).map(({ id }) => id));
const both = (check: string, point: string) => [`${check}.left-${point}`, `${check}.right-${point}`];

/** Each with the checks of the turboprop's first walk of the day that look at it, on every side it has. */
const COVERED: Readonly<Record<string, readonly string[]>> = {
  "baggage security and weight limit": ["bags-net", "bags-weigh"],
  "emergency oxygen pressure and valve": ["oxygen-pressure", "oxygen-valve"],
  antennas: ["top-antennas", "belly-antennas"],
  windows: ["cabin-windows", "windscreen"],
  "both static ports": both("static-ports", "static-ports"),
  "pitot tube and its heat": ["pitot", "pitot-heat"],
  step: ["step"],
  "gear doors and wells": [...both("wheel-well", "wheel-well"), "wheel-well.nose-wheel-well"],
  "hydraulic reservoir level": ["hydraulic-level"],
  "inspection panels and their fasteners": both("wing-panels", "wing-panels"),
  "leading-edge ice protection of wing and tail": [
    ...both("wing-boot", "wing-boot"),
    ...both("tail-boot", "tail-boot"),
  ],
  "elevator, rudder and aileron travel and stops": [
    ...both("elevator-travel", "elevator"),
    "rudder-travel",
    ...both("aileron-travel", "aileron"),
    "controls",
  ],
  "static dischargers": [...both("wing-wicks", "wing-wicks"), "tail-wicks"],
  "trim tabs, their links and play": ["trim-tab-play", "rudder-tab"],
  "whole-airframe-parachute hatch seal": ["parachute-hatch"],
  "ground-power door": ["ground-power"],
  "flaps: drives, tracks, hinges, slots or vanes": [
    ...both("flap-drive", "flap-drive"),
    ...both("flap-tracks", "flap-tracks"),
    ...both("flap-slot", "flap-slot"),
  ],
  "every exterior light": [
    "lights-on",
    "left-tip-light",
    "right-tip-light",
    "tail-light",
    "beacon",
    "landing-light",
    "taxi-light",
    "ice-light",
  ],
  "outside-air-temperature probe": ["air-temperature"],
  "stall sensor": ["stall-vane", "vane-heat"],
  "fuel caps, vents, drains and quantity": [
    ...both("fuel-cap", "fuel-cap"),
    ...both("fuel-vent", "fuel-vent"),
    ...both("fuel-sample", "tank-drain"),
    ...both("fuel-dip", "fuel-cap"),
    ...both("fuel-gauge", "fuel-gauge"),
  ],
  "wheel and axle security, tyres, brakes, struts, leaks": [
    ...both("main-wheel", "brake"),
    ...both("main-tyre-pressure", "main-tyre"),
    ...both("tyre-tread", "main-tyre"),
    ...both("brake-lining", "brake"),
    ...both("main-strut", "strut"),
    "nose-wheel",
    "nose-tyre-pressure",
    "tyre-tread.nose-tyre",
    "nose-strut",
  ],
  "cowling latches and fasteners": both("cowl-latches", "cowl-latches"),
  "cooling and cooler exits": ["oil-cooler", "generator-air"],
  "exhaust and its hardware": both("exhaust", "exhaust"),
  "propeller and spinner": ["blades", "hub", "spinner", "blade-heat"],
  "engine inlet, its lip heat and what is inside it": ["intake-inside", "intake-lip"],
  "oil level and filler": ["oil-level", "oil-cap"],
  breather: ["breather"],
  "cabin-air cooler exit": ["air-cooler-exit"],
  "doors and latches": ["door-latch", "exit", "doors-again"],
  documents: ["papers"],
};

describe("the demo's books, walked first thing in the day", () => {
  it.each([
    { name: "zz-skr", least: 95 },
    { name: "zz-dun", least: 60 },
    { name: "zz-brk", least: 60 },
  ] as const)("$name asks for at least $least checks", ({ name, least }) => {
    expect(firstOfDay(bookOf(name)).length).toBeGreaterThanOrEqual(least);
  });

  it.each(Object.entries(COVERED))("the turboprop looks at %s", (_, checks) => {
    const there = idsOf(bookOf("zz-skr"));
    expect(checks.filter((id) => !there.has(id))).toEqual([]);
  });

  it("the turboprop counts its controls lock off", () => {
    expect(bookOf("zz-skr").groundGear.map(({ id }) => id)).toContain("control-lock");
  });

  it.each(DEMO_BOOKS)("%s names the side of whatever it has two of, and looks at both", (name) => {
    const book = bookOf(name);
    const looked = new Set(firstOfDay(book).map(({ point }) => point));
    const points = [...looked].flatMap((id) => book.points.get(id) ?? []);
    const twins = points.flatMap((point) => {
      if (!/^left-/.test(point.id)) return [];
      const right = book.points.get(point.id.replace(/^left-/, "right-"));
      return right === undefined ? [] : [[point, right] as const];
    });
    expect(twins.length).toBeGreaterThan(4);
    for (const [left, right] of twins) {
      expect(looked, right.id).toContain(right.id);
      expect(left.name).toMatch(/\bleft\b/i);
      expect(right.name).toMatch(/\bright\b/i);
    }
  });

  it.each(DEMO_BOOKS)(
    "every check of %s says what right looks like, why, and what it means if missed",
    (name) => {
      for (const { id, shouldBe, why, hazard } of bookOf(name).checks) {
        expect(
          [shouldBe, why, hazard.ifMissed].every((text) => text.trim().length > 3),
          id,
        ).toBe(true);
      }
    },
  );

  it.each(DEMO_BOOKS)("%s asks again, before boarding, for what can be undone after the walk", (name) => {
    const again = firstOfDay(bookOf(name)).filter(({ id }) => id.endsWith("-again"));
    expect(again.length).toBeGreaterThanOrEqual(3);
  });
});
