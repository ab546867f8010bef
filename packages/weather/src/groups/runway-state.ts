import { impossible, notObserved } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";
import { isRunway } from "./runway-visual-range.ts";

/**
 * What lies on a runway. Withdrawn from the international code since the runway condition report came in; some States
 * still send it.
 *
 * @source WMO-No. 306, Manual on Codes, code tables 0919, 0519, 1079 and 0366 (from memory)
 */
export interface RunwayState {
  /** 06L, or "all". */
  readonly runway: string;
  readonly state?: "contamination has ceased" | "aerodrome closed by snow";
  readonly deposit?: string;
  readonly extent?: string;
  readonly depth?: string;
  readonly friction_1?: number;
  readonly braking?: string;
}

const DEPOSITS = [
  "clear and dry",
  "damp",
  "wet or water patches",
  "rime or frost",
  "dry snow",
  "wet snow",
  "slush",
  "ice",
  "compacted or rolled snow",
  "frozen ruts or ridges",
];
const EXTENTS: Readonly<Record<string, string>> = {
  "1": "10 % or less",
  "2": "11 to 25 %",
  "5": "26 to 50 %",
  "9": "51 to 100 %",
};
const DEPTHS: Readonly<Record<string, string>> = {
  "00": "less than 1 mm",
  "92": "10 cm",
  "93": "15 cm",
  "94": "20 cm",
  "95": "25 cm",
  "96": "30 cm",
  "97": "35 cm",
  "98": "40 cm or more",
  "99": "runway not in use because of snow, slush, ice or clearance",
};
const BRAKING: Readonly<Record<string, string>> = {
  "91": "poor",
  "92": "medium to poor",
  "93": "medium",
  "94": "medium to good",
  "95": "good",
  "99": "figure unreliable",
};

const STATE = /^R(\d{2}(?:LL|RR|[LCR])?)\/(?:(CLRD)|([\d/])([\d/])(\d{2}|\/\/))(\d{2}|\/\/)$/u;
const reserved = (what: string) => impossible(`${what} code is reserved; not used`, "runway");

const frictionOf = (code: string): Pick<RunwayState, "friction_1" | "braking"> | undefined => {
  if (code === "//") return {};
  if (Number(code) <= 90) return { friction_1: Number(code) / 100 };
  const braking = BRAKING[code];
  return braking === undefined ? undefined : { braking };
};
const depthOf = (code: string): string | undefined =>
  DEPTHS[code] ?? (Number(code) >= 1 && Number(code) <= 90 ? `${Number(code)} mm` : undefined);

export const readRunwayState: Reader = (place) => {
  const token = tokenAt(place);
  if (token === "SNOCLO" || token === "R/SNOCLO")
    return used({ is: "runway state", state: { runway: "all", state: "aerodrome closed by snow" } });
  const found = STATE.exec(token);
  if (found === null) return undefined;
  const [, name = "", cleared, deposit = "/", extent = "/", depth = "//", friction = "//"] = found;
  if (name !== "88" && !isRunway(name))
    return faulty(impossible("no runway has that number; expected 01 to 36, or 88 for all", "runway"));
  const runway = name === "88" ? "all" : name;
  const grip = frictionOf(friction);
  if (grip === undefined) return faulty(reserved("friction"));
  if (cleared !== undefined)
    return used({ is: "runway state", state: { runway, state: "contamination has ceased", ...grip } });
  if (`${deposit}${extent}${depth}${friction}` === "//////")
    return faulty(notObserved("runway state missing", "runway"));
  if (extent !== "/" && EXTENTS[extent] === undefined) return faulty(reserved("extent"));
  if (depth !== "//" && depthOf(depth) === undefined) return faulty(reserved("depth"));
  const depositText = deposit === "/" ? undefined : DEPOSITS[Number(deposit)];
  const extentText = EXTENTS[extent];
  const depthText = depth === "//" ? undefined : depthOf(depth);
  const state: RunwayState = {
    runway,
    ...(depositText === undefined ? {} : { deposit: depositText }),
    ...(extentText === undefined ? {} : { extent: extentText }),
    ...(depthText === undefined ? {} : { depth: depthText }),
    ...grip,
  };
  return used({ is: "runway state", state });
};
