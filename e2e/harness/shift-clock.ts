declare global {
  var witnessmarkClock: { shift_ms: number } | undefined;
}

/**
 * Makes the clock of the program or page that it runs in stand apart from the machine's, and run on with it. Refers to
 * nothing outside itself, so that it can be handed into a page. `witnessmarkClock` moves it on.
 *
 * @param shift_ms how far ahead of the machine's clock
 */
export function shiftClock(shift_ms: number): void {
  const TrueDate = Date;
  const trueNow = Date.now;
  const clock = { shift_ms };
  globalThis.witnessmarkClock = clock;
  globalThis.Date = class extends TrueDate {
    constructor(...given: ConstructorParameters<typeof Date> | []) {
      if (given.length === 0) super(trueNow() + clock.shift_ms);
      else super(...given);
    }
    static override now(): number {
      return trueNow() + clock.shift_ms;
    }
  } as DateConstructor; // calling it without `new` is what nobody here does
}
