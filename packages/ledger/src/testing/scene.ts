import type { KnownEvent } from "../event.ts";
import type { EventDraft, UnsealedEvent } from "../make-event.ts";
import { Phone, placeholderSeal } from "./phone.ts";
import { Random } from "./random.ts";

export const SCENE_START_MS = Date.UTC(2031, 4, 4, 7);

/** Phones at one aircraft and a true time that passes, for tests that tell a short story. */
export class Scene {
  readonly random: Random;
  readonly #told: UnsealedEvent[] = [];
  #now_ms = SCENE_START_MS;

  constructor(seed = 1) {
    this.random = new Random(seed);
  }

  get now_ms(): number {
    return this.#now_ms;
  }

  phone(name: string, wrong_ms = 0): Phone {
    return new Phone(this.random, this.#now_ms, {
      operator: "island-eye-clinic",
      aircraft: "ZZ-SKR",
      author: { id: this.random.uuidv7(this.#now_ms), name, role: "pilot" },
      wrong_ms,
      zone_min: 60,
    });
  }

  id(): string {
    return this.random.uuidv7(this.#now_ms);
  }

  wait(time_ms: number): void {
    this.#now_ms += time_ms;
  }

  /** One event, a second after the last. */
  say(phone: Phone, draft: EventDraft): UnsealedEvent {
    this.wait(1000);
    const event = phone.make(this.#now_ms, draft);
    this.#told.push(event);
    return event;
  }

  /** Everything told so far, in the order in which it was told, with placeholders for seals. */
  get events(): readonly KnownEvent[] {
    return this.#told.map(placeholderSeal);
  }
}
