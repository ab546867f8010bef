import { type Measure, measure, type UnitId } from "@witnessmark/engine";
import { doubtful, type Fault, impossible, notObserved, notUnderstood } from "../aspect.ts";
import { faulty, type GroupRead, type Place, type Reader, tokenAt, used } from "./read.ts";

/** The wind as a report gives it: true direction, from where it blows. */
export interface Wind {
  readonly kind: "from" | "variable" | "calm";
  /** 10 to 360, tens; only with kind "from". */
  readonly from_degTrue?: number;
  readonly speed_mPerS: number;
  readonly gust_mPerS?: number;
  /** The speed is a floor: P49MPS, P99KT. */
  readonly speedAtLeast?: true;
  readonly gustAtLeast?: true;
  /** The directions between which it varies, clockwise from the first to the second. */
  readonly sector_degTrue?: readonly [from: number, to: number];
  /** As it stands in the report. */
  readonly coded: { readonly speed: Measure; readonly gust?: Measure };
}

const UNIT: Readonly<Record<string, UnitId>> = { KT: "kt", MPS: "mPerS", KMH: "kmPerH" };
const UNIT_NAMES = "KT, MPS or KMH";

/** Above this no surface wind has been measured outside a tornado: 253 mph, 113 m/s, 220 kt. */
const HIGHEST_MPERS = 115;

/** Two digits, or three from 100 on; a leading nought before two digits is a slip. */
const speedDigits = (digits: string): boolean => digits.length === 2 || !digits.startsWith("0");

const WIND = /^(\d{3}|VRB)(P?)(\d{2,3})(?:G(P?)(\d{2,3}))?(KT|MPS|KMH)$/u;
const MISSING = /^(?:\/{5}|(?:\/{3}|\d{3}|VRB)(?:\/{2,3}|\d{2,3})(?:G(?:\d{2,3}|\/{2}))?(?:KT|MPS|KMH))$/u;
const WITHOUT_UNIT = /^(?:\d{3}|VRB)P?\d{2,3}(?:G\d{1,3})?$/u;
const NEARLY = /^(?:\d[\dO]*|VRB\w*|[\dO]{3}G?\S*)(?:KT|KTS|KNT|MPS|KMH)$/u;

function faultOfDirection(direction: string, speed: number): Fault | undefined {
  if (direction === "VRB") return undefined;
  const from_deg = Number(direction);
  if (from_deg > 360) return impossible("direction above 360", "wind", "gust");
  if (from_deg % 10 !== 0) return impossible("direction not in tens of degrees; not used", "wind", "gust");
  if (from_deg === 0 && speed > 0)
    return impossible("direction 000 is for calm only, and there is a speed", "wind", "gust");
  if (from_deg !== 0 && speed === 0)
    return impossible("a direction without any speed; calm is 00000", "wind", "gust");
  return undefined;
}

/** A group that is no wind: missing, without a unit, or with a slip. `undefined` when it is about something else. */
function readNoWind(place: Place): GroupRead | undefined {
  const token = tokenAt(place);
  if (MISSING.test(token) && token.includes("//") && !(token === "/////" && place.seen.has("wind")))
    return faulty(notObserved("wind missing", "wind", "gust"));
  const icingOrTurbulence = place.section !== "body" && /^\d{5,6}$/u.test(token);
  if (WITHOUT_UNIT.test(token) && !icingOrTurbulence)
    return faulty(
      impossible(`wind without a unit; not used; expected ${UNIT_NAMES} at its end`, "wind", "gust"),
    );
  return NEARLY.test(token)
    ? faulty(notUnderstood("wind not understood; expected a form like 24008KT or 24015G25KT", "wind", "gust"))
    : undefined;
}

interface Read {
  readonly direction: string;
  readonly speed: Measure;
  readonly speedAtLeast: boolean;
  readonly gust?: Measure;
  readonly gustAtLeast: boolean;
}

function windFrom({ direction, speed, speedAtLeast, gust, gustAtLeast }: Read): Wind {
  const calm = speed.value === 0 && direction === "000";
  const kind = calm ? "calm" : direction === "VRB" ? "variable" : "from";
  return {
    kind,
    ...(kind === "from" ? { from_degTrue: Number(direction) } : {}),
    speed_mPerS: speed.valueSI,
    ...(speedAtLeast ? { speedAtLeast } : {}),
    ...(gust === undefined ? {} : { gust_mPerS: gust.valueSI, ...(gustAtLeast ? { gustAtLeast } : {}) }),
    coded: { speed, ...(gust === undefined ? {} : { gust }) },
  };
}

const gustFault = (speed: Measure, gust: Measure): Fault =>
  impossible(
    gust.value === speed.value ? "gust not above the mean wind" : "gust below the mean wind",
    "gust",
  );

export const readWind: Reader = (place) => {
  const found = WIND.exec(tokenAt(place));
  if (found === null) return readNoWind(place);
  const [, direction = "", speedFloor, speedText = "", gustFloor, gustText, unitText = ""] = found;
  const unit = UNIT[unitText] ?? "kt";
  if (!speedDigits(speedText) || (gustText !== undefined && !speedDigits(gustText)))
    return faulty(impossible("a speed of three digits that begins with nought; not used", "wind", "gust"));
  const speed = measure(Number(speedText), unit);
  const wrongDirection = faultOfDirection(direction, speed.value);
  if (wrongDirection !== undefined) return faulty(wrongDirection);
  const gust = gustText === undefined ? undefined : measure(Number(gustText), unit);
  if (Math.max(speed.valueSI, gust?.valueSI ?? 0) > HIGHEST_MPERS)
    return faulty(impossible("a wind stronger than any that was measured; not used", "wind", "gust"));
  const read: Read = { direction, speed, speedAtLeast: speedFloor === "P", gustAtLeast: gustFloor === "P" };
  if (gust === undefined) {
    const wind = windFrom(read);
    const none = wind.kind === "variable" && speed.value === 0;
    return none
      ? faulty(doubtful("variable with no speed; read as no wind"), { is: "wind", wind })
      : used({ is: "wind", wind });
  }
  if (speed.value === 0) return faulty(impossible("no wind, and gusts; not used", "wind", "gust"));
  if (gust.value <= speed.value) return faulty(gustFault(speed, gust), { is: "wind", wind: windFrom(read) });
  return used({ is: "wind", wind: windFrom({ ...read, gust }) });
};

const SECTOR = /^(\d{3})V(\d{3})$/u;

/** 180V250: the directions between which the wind varies. */
export const readSector: Reader = (place) => {
  const found = SECTOR.exec(tokenAt(place));
  if (found === null) return undefined;
  const [from_degTrue, to_degTrue] = [Number(found[1]), Number(found[2])];
  const tens = [from_degTrue, to_degTrue].every((angle) => angle >= 10 && angle <= 360 && angle % 10 === 0);
  if (!tens || from_degTrue === to_degTrue)
    return faulty(impossible("sector of the wind not in tens of degrees from 010 to 360; not used", "wind"));
  if (!place.seen.has("wind"))
    return faulty(doubtful("a sector of the wind without a wind before it", "wind", "gust"));
  return used({ is: "sector", from_degTrue, to_degTrue });
};

/** Whether a direction lies in a sector, going clockwise from its first to its second; the ends count. */
export const inSector = (direction_deg: number, [from_deg, to_deg]: readonly [number, number]): boolean => {
  const turn = (angle: number): number => (((angle - from_deg) % 360) + 360) % 360;
  return turn(direction_deg) <= turn(to_deg);
};
