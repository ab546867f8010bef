import {
  type Box,
  type Camera,
  cssBetween,
  keptOver,
  type Px,
  panned,
  pinched,
  type ScaleBounds,
  turnedAbout,
  zoomedAbout,
} from "./camera.ts";

/** What a drawing wants to know of the fingers on it. All places are pixels of its own, from where its 0,0 lies. */
export interface Fingers {
  /** The camera that the drawing goes back to: at it, one finger is the page's. */
  readonly home: Camera;
  readonly bounds: ScaleBounds;
  /** What must not be lost out of sight. */
  readonly box: Box;
  /** Where 0,0 lies in the element, pixels. */
  readonly zero: Px;
  readonly middle: Px;
  readonly turns: boolean;
  /** The view after a gesture: draw it. */
  readonly onRest: (camera: Camera) => void;
  readonly onTap: (at: Px, coarse: boolean) => void;
  /** What is taken hold of here, if anything can be dragged from here. */
  readonly hold: (at: Px, coarse: boolean) => string | null;
  readonly onDrag: (id: string, at: Px, done: boolean) => void;
}

const SLOP_px = 8;
const REST_ms = 140;
const WHEEL_1 = 0.0022;

interface Finger {
  readonly start: Px;
  readonly last: Px;
}

/** Whether some element round it could scroll, so that a finger's move may be meant for the page. */
function isInScroller(element: Element): boolean {
  for (let at: Element | null = element.parentElement; at !== null; at = at.parentElement) {
    if (at.scrollHeight <= at.clientHeight + 1) continue;
    if (at === document.documentElement || /auto|scroll/.test(getComputedStyle(at).overflowY)) return true;
  }
  return false;
}

/**
 * The fingers, the mouse and the wheel on a drawing. While they move, one CSS transform moves what is drawn already;
 * when they rest, the drawing is told to draw what is seen.
 */
export class Gestures {
  #drawn: Camera;
  #seen: Camera;
  #frame = 0;
  #rest: ReturnType<typeof setTimeout> | undefined;
  readonly #fingers = new Map<number, Finger>();
  #moved = false;
  /** The one finger that is down moves the page, not the drawing. */
  #isPages = false;
  #held: { readonly id: string; readonly from: Px } | null = null;
  #asked: Fingers;
  readonly #surface: HTMLElement;
  readonly #layer: () => readonly (SVGElement | HTMLElement)[];

  constructor(
    surface: HTMLElement,
    layer: () => readonly (SVGElement | HTMLElement)[],
    asked: Fingers,
    drawn: Camera,
  ) {
    this.#surface = surface;
    this.#layer = layer;
    this.#asked = asked;
    this.#drawn = drawn;
    this.#seen = drawn;
  }

  /** What it is now; what is drawn already and what fingers do meanwhile stays. */
  ask(asked: Fingers, drawn: Camera): void {
    this.#asked = asked;
    if (drawn === this.#drawn) return;
    this.#drawn = drawn;
    if (this.#fingers.size === 0) this.#seen = drawn;
    this.#show();
  }

  listen(): () => void {
    const surface = this.#surface;
    const hearing = new AbortController();
    const { signal } = hearing;
    surface.addEventListener("pointerdown", this.#down, { signal });
    surface.addEventListener("pointermove", this.#move, { signal });
    surface.addEventListener("pointerup", this.#up, { signal });
    surface.addEventListener("pointercancel", this.#up, { signal });
    surface.addEventListener("click", this.#click, { signal });
    // a browser asks whether a touch is its own only of listeners that may say no
    surface.addEventListener("touchmove", this.#touch, { signal, passive: false });
    surface.addEventListener("wheel", this.#wheel, { signal, passive: false });
    return () => {
      hearing.abort();
      clearTimeout(this.#rest);
      cancelAnimationFrame(this.#frame);
    };
  }

  #at({ clientX, clientY }: MouseEvent): Px {
    const box = this.#surface.getBoundingClientRect();
    return [clientX - box.left - this.#asked.zero[0], clientY - box.top - this.#asked.zero[1]];
  }

  get #isHome(): boolean {
    return this.#drawn === this.#asked.home && this.#seen === this.#drawn;
  }

  readonly #down = (event: PointerEvent) => {
    if (event.button !== 0) return;
    const at = this.#at(event);
    this.#fingers.set(event.pointerId, { start: at, last: at });
    if (this.#fingers.size > 1) {
      this.#moved = true;
      this.#held = null;
      this.#isPages = false;
      return;
    }
    this.#moved = false;
    const id = this.#asked.hold(at, event.pointerType !== "mouse");
    this.#held = id === null ? null : { id, from: at };
    this.#isPages =
      id === null && event.pointerType !== "mouse" && this.#isHome && isInScroller(this.#surface);
  };

  readonly #touch = (event: TouchEvent) => {
    if (event.cancelable && (event.touches.length > 1 || !this.#isPages)) event.preventDefault();
  };

  readonly #move = (event: PointerEvent) => {
    const finger = this.#fingers.get(event.pointerId);
    if (finger === undefined) return;
    const at = this.#at(event);
    const [first, second] = [...this.#fingers.entries()];
    if (first === undefined) return;
    if (second === undefined && !this.#moved) {
      if (Math.hypot(at[0] - finger.start[0], at[1] - finger.start[1]) < SLOP_px) return;
      this.#moved = true;
      this.#surface.setPointerCapture(event.pointerId);
    }
    this.#fingers.set(event.pointerId, { ...finger, last: at });
    if (this.#isPages) return;
    if (this.#held !== null) {
      this.#asked.onDrag(this.#held.id, at, false);
      return;
    }
    const { bounds, turns } = this.#asked;
    if (second === undefined) this.#see(panned(this.#seen, at[0] - finger.last[0], at[1] - finger.last[1]));
    else {
      const other = (first[0] === event.pointerId ? second : first)[1].last;
      this.#see(pinched(this.#seen, [finger.last, other], [at, other], bounds, turns));
    }
  };

  readonly #up = (event: PointerEvent) => {
    const finger = this.#fingers.get(event.pointerId);
    if (finger === undefined) return;
    this.#fingers.delete(event.pointerId);
    if (this.#held !== null && this.#moved) this.#asked.onDrag(this.#held.id, finger.last, true);
    this.#held = null;
    if (this.#fingers.size === 0 && this.#seen !== this.#drawn) this.#asked.onRest(this.#seen);
  };

  readonly #click = (event: MouseEvent) => {
    if (this.#moved) {
      this.#moved = false;
      return;
    }
    const coarse = event instanceof PointerEvent && event.pointerType !== "mouse" && event.pointerType !== "";
    this.#asked.onTap(this.#at(event), coarse);
  };

  readonly #wheel = (event: WheelEvent) => {
    if (!event.ctrlKey && this.#isHome && isInScroller(this.#surface)) return;
    event.preventDefault();
    const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
    const by = Math.exp(-event.deltaY * lines * WHEEL_1 * (event.ctrlKey ? 3 : 1));
    this.#see(zoomedAbout(this.#seen, by, this.#at(event), this.#asked.bounds));
    clearTimeout(this.#rest);
    this.#rest = setTimeout(() => this.#asked.onRest(this.#seen), REST_ms);
  };

  #see(camera: Camera): void {
    this.#seen = keptOver(camera, this.#asked.box, this.#asked.middle);
    if (this.#frame !== 0) return;
    this.#frame = requestAnimationFrame(() => {
      this.#frame = 0;
      this.#show();
    });
  }

  #show(): void {
    const css = this.#seen === this.#drawn ? "" : cssBetween(this.#drawn, this.#seen);
    for (const layer of this.#layer()) {
      // a layer of its own while it moves, so that moving it paints nothing
      layer.style.willChange = css === "" ? "" : "transform";
      layer.style.transform = css;
    }
  }

  /** By the buttons and the keys: about the middle, and drawn at once. */
  zoom(factor_1: number, about: Px = this.#asked.middle): void {
    this.#step(zoomedAbout(this.#seen, factor_1, about, this.#asked.bounds));
  }

  turn(by_deg: number): void {
    this.#step(turnedAbout(this.#seen, by_deg, this.#asked.middle));
  }

  pan(dx_px: number, dy_px: number): void {
    this.#step(panned(this.#seen, dx_px, dy_px));
  }

  #step(camera: Camera): void {
    this.#seen = keptOver(camera, this.#asked.box, this.#asked.middle);
    this.#asked.onRest(this.#seen);
  }
}
