import { impossible, notUnderstood } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";
import { isRunway } from "./runway-visual-range.ts";

/** WS R03, WS RWY04L, WS ALL RWY, WS TKOF RWY20, WS LDG RWY20. */
export const readWindShear: Reader = (place) => {
  if (place.section === "forecast" || tokenAt(place) !== "WS") return undefined;
  const [next, after] = [tokenAt(place, 1), tokenAt(place, 2)];
  if (next === "ALL" && after === "RWY") return used({ is: "wind shear", runway: "all" }, 3);
  const phase = next === "TKOF" || next === "LDG" ? 1 : 0;
  const named = /^(?:R|RWY)(\d{2}[LCR]?)$/u.exec(phase === 1 ? after : next);
  if (named === null)
    return faulty(notUnderstood("wind shear on a runway that is not understood", "wind", "gust", "runway"));
  const runway = named[1] ?? "";
  return isRunway(runway)
    ? used({ is: "wind shear", runway }, 2 + phase)
    : faulty(
        impossible("no runway has that number; expected 01 to 36", "wind", "gust", "runway"),
        undefined,
        2 + phase,
      );
};
