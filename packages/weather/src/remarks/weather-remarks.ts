import { impossible } from "../aspect.ts";
import { weatherCodeOf } from "../groups/weather-code.ts";
import { weatherText } from "../groups/weather-text.ts";
import { remarkClock } from "./clock.ts";
import { placeText } from "./place-text.ts";
import {
  type Remark,
  type RemarkEvent,
  type RemarkPlace,
  type RemarkRead,
  type RemarkReader,
  remarkToken,
} from "./remark.ts";

const EVENTS = /([-+]?(?:TS|SH|FZ)?(?:DZ|RA|SN|SG|IC|PL|GR|GS|UP|FC|FG|BR)*)((?:[BE](?:\d{4}|\d{2}))+)/uy;

function eventsOf(text: string, place: RemarkPlace): readonly RemarkEvent[] | undefined {
  const events: RemarkEvent[] = [];
  for (const [, letter, digits = ""] of text.matchAll(/([BE])(\d{4}|\d{2})/gu)) {
    const at_UTC = remarkClock(digits, place);
    if (at_UTC === undefined) return undefined;
    events.push({ event: letter === "B" ? "began" : "ended", minute: Number(digits.slice(-2)), at_UTC });
  }
  return events;
}

/** RAE17SNB17 is two remarks in one token; each has its own. */
export function readBegunAndEnded(place: RemarkPlace): readonly RemarkRead[] | undefined {
  const token = remarkToken(place);
  if (!/^[-+]?(?:TS|SH|FZ|DZ|RA|SN|SG|IC|PL|GR|GS|UP|FC|FG|BR)+[BE]\d{2}/u.test(token)) return undefined;
  const remarks: RemarkRead[] = [];
  EVENTS.lastIndex = 0;
  while (EVENTS.lastIndex < token.length) {
    const found = EVENTS.exec(token);
    const code = found?.[1] ?? "";
    const weather =
      weatherCodeOf(code) ?? (code === "SH" ? undefined : weatherCodeOf(code.replace(/^[-+]/u, "")));
    const events = found === null ? undefined : eventsOf(found[2] ?? "", place);
    if (found === null || weather === undefined || events === undefined)
      return [{ count: 1, fault: impossible("times of weather not understood", "weather") }];
    const says = `${weatherText(weather)} ${events.map(({ event, at_UTC }) => `${event} at ${at_UTC} UTC`).join(", ")}`;
    remarks.push({ count: 1, remark: { is: "begun and ended", code, events, says } });
  }
  return remarks;
}

const OFTEN: Readonly<Record<string, string>> = {
  OCNL: "occasional",
  FRQ: "frequent",
  FREQ: "frequent",
  CONS: "continuous",
};
const STROKES: Readonly<Record<string, string>> = {
  IC: "in cloud",
  CC: "cloud to cloud",
  CG: "cloud to ground",
  CA: "cloud to air",
  CW: "cloud to water",
};
const joined = (items: readonly string[]): string =>
  items.length < 2 ? (items[0] ?? "") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;

const readLightning: RemarkReader = (place) => {
  const often = OFTEN[remarkToken(place)];
  const at = often === undefined ? 0 : 1;
  const found = /^LTG((?:IC|CC|CG|CA|CW)*)$/u.exec(remarkToken(place, at));
  if (found === null) return undefined;
  const strokes = (found[1]?.match(/../gu) ?? []).map((code) => STROKES[code] ?? code);
  const { text, count } = placeText(place, at + 1);
  const says = [often ?? "", joined(strokes), text].filter((part) => part !== "").join(", ");
  return { count: at + 1 + count, remark: { is: "lightning", says: says === "" ? "lightning" : says } };
};

const readThunderstormPlace: RemarkReader = (place) => {
  if (remarkToken(place) !== "TS") return undefined;
  const { text, count } = placeText(place, 1);
  const remark: Remark = { is: "thunderstorm place", says: text === "" ? "at the station" : text };
  return { count: 1 + count, remark };
};

const readHail: RemarkReader = (place) => {
  if (remarkToken(place) !== "GR") return undefined;
  const found = /^(\d{1,2} \d\/\d|\d\/\d|\d{1,2})/u.exec(`${remarkToken(place, 1)} ${remarkToken(place, 2)}`);
  if (found === null) return undefined;
  const size = found[1] ?? "";
  return { count: 1 + size.split(" ").length, remark: { is: "other", says: `hailstones of ${size} in` } };
};

export const readWeatherRemark: RemarkReader = (place) =>
  readLightning(place) ?? readThunderstormPlace(place) ?? readHail(place);
