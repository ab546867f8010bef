import type { MouseEvent, PointerEvent } from "react";
import { afterEach, beforeEach, describe, expect, it, vi } from "vitest";

/** As much of an element as is asked of it. */
class Thing extends EventTarget {
  disabled = false;
  readonly #within: readonly Thing[];
  constructor(...within: Thing[]) {
    super();
    this.#within = within;
  }
  contains(other: Thing): boolean {
    return other === this || this.#within.includes(other);
  }
  getBoundingClientRect() {
    return { left: 0, right: 100, top: 0, bottom: 72 };
  }
}

let page: EventTarget;
let onTap: typeof import("./on-tap.ts").onTap;

beforeEach(async () => {
  page = new EventTarget();
  vi.stubGlobal("document", page);
  vi.stubGlobal("Node", Thing);
  vi.resetModules();
  ({ onTap } = await import("./on-tap.ts"));
});
afterEach(() => vi.unstubAllGlobals());

function tell(type: string, fields: object = {}): Event {
  const event = Object.assign(new Event(type, { cancelable: true }), fields);
  page.dispatchEvent(event);
  return event;
}

const finger = { pointerId: 4, isPrimary: true, pointerType: "touch" };

/** A finger comes down on `on` and leaves the glass over `button`; then what the browser makes of it. */
function tapped(
  button: Thing,
  act: () => void,
  given: { on?: Thing; at?: object; held_ms?: number; after?: string } = {},
) {
  const events = onTap(act);
  const down = Object.assign(new Event("pointerdown"), finger);
  Object.defineProperty(down, "target", { value: given.on ?? button });
  page.dispatchEvent(down);
  if (given.after !== undefined) tell(given.after);
  const up = {
    currentTarget: button,
    clientX: 50,
    clientY: 30,
    pointerId: 4,
    timeStamp: down.timeStamp + (given.held_ms ?? 80),
    ...given.at,
  };
  events.onPointerUp(up as unknown as PointerEvent<HTMLButtonElement>); // what is used of it
  return {
    touchEnd: tell("touchend"),
    click: tell("click", { detail: 1 }),
  };
}

describe("a finger on a button that keeps something", () => {
  it("acts when it leaves the glass, once: the click after it reaches nothing", () => {
    const act = vi.fn();
    const reached = vi.fn();
    const button = new Thing();
    page.addEventListener("click", reached);
    const { touchEnd, click } = tapped(button, act);
    expect(act).toHaveBeenCalledTimes(1);
    expect(touchEnd.defaultPrevented).toBe(true);
    expect(click.defaultPrevented).toBe(true);
    expect(reached).not.toHaveBeenCalled();
  });

  it("may come down on something inside it", () => {
    const act = vi.fn();
    const word = new Thing();
    tapped(new Thing(word), act, { on: word });
    expect(act).toHaveBeenCalledTimes(1);
  });

  it.each([
    { name: "came down elsewhere", given: { on: new Thing() } },
    { name: "slid off", given: { at: { clientY: 73 } } },
    { name: "was held long", given: { held_ms: 501 } },
    { name: "became a scroll", given: { after: "pointercancel" } },
    { name: "is another finger", given: { at: { pointerId: 5 } } },
  ])("does nothing when it $name, and leaves the rest to the browser", ({ given }) => {
    const act = vi.fn();
    const reached = vi.fn();
    page.addEventListener("click", reached);
    const { touchEnd } = tapped(new Thing(), act, given);
    expect(act).not.toHaveBeenCalled();
    expect(touchEnd.defaultPrevented).toBe(false);
    expect(reached).toHaveBeenCalledTimes(1);
  });

  it("does nothing on a button that cannot be pressed", () => {
    const act = vi.fn();
    tapped(Object.assign(new Thing(), { disabled: true }), act);
    expect(act).not.toHaveBeenCalled();
  });
});

describe("a click", () => {
  it("acts: of a mouse, a keyboard, a screen reader", () => {
    const act = vi.fn();
    onTap(act).onClick({} as MouseEvent<HTMLButtonElement>);
    expect(act).toHaveBeenCalledTimes(1);
  });

  it("of the next finger or key counts again after a tap that acted", () => {
    const reached = vi.fn();
    page.addEventListener("click", reached);
    tapped(new Thing(), () => {});
    tell("click", { detail: 0 });
    expect(reached).toHaveBeenCalledTimes(1);
    tell("pointerdown", { ...finger, pointerType: "mouse" });
    tell("click", { detail: 1 });
    expect(reached).toHaveBeenCalledTimes(2);
  });
});
