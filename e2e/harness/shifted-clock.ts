// Loaded before a program: its clock starts at a given moment and runs on, so that pictures show one morning.
const startsAt = process.env["CLOCK_STARTS_AT"];
if (startsAt === undefined || Number.isNaN(Date.parse(startsAt))) {
  throw new Error(`shifted-clock: expected an ISO 8601 moment in CLOCK_STARTS_AT, found ${startsAt}`);
}
const shift_ms = Date.parse(startsAt) - Date.now();
const trueNow = Date.now;
const TrueDate = Date;

globalThis.Date = class extends TrueDate {
  constructor(...given: ConstructorParameters<typeof Date> | []) {
    if (given.length === 0) super(trueNow() + shift_ms);
    else super(...given);
  }
  static override now(): number {
    return trueNow() + shift_ms;
  }
} as DateConstructor; // calling it without `new` is what nobody here does
