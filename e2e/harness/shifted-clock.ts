// Loaded before the server, so that its clock shows the morning of the pictures.
import { shiftClock } from "./shift-clock.ts";

const shift_ms = Number(process.env["CLOCK_SHIFT_ms"]);
if (!Number.isFinite(shift_ms)) {
  throw new Error(
    `shifted-clock: expected milliseconds in CLOCK_SHIFT_ms, found ${process.env["CLOCK_SHIFT_ms"]}`,
  );
}
shiftClock(shift_ms);
