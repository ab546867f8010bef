import { measure } from "@witnessmark/engine";
import { impossible } from "../aspect.ts";
import { remarkClock } from "./clock.ts";
import { type RemarkReader, remarkToken } from "./remark.ts";

const readPeak: RemarkReader = (place) => {
  if (remarkToken(place) !== "PK" || remarkToken(place, 1) !== "WND") return undefined;
  const found = /^(\d{3})(\d{2,3})\/(\d{2}|\d{4})$/u.exec(remarkToken(place, 2));
  if (found === null) return { count: 2, fault: impossible("peak wind not understood", "wind", "gust") };
  const from_degTrue = Number(found[1]);
  const speed = measure(Number(found[2]), "kt");
  const at_UTC = remarkClock(found[3] ?? "", place);
  if (from_degTrue < 10 || from_degTrue > 360 || from_degTrue % 10 !== 0 || at_UTC === undefined)
    return {
      count: 3,
      fault: impossible("peak wind with a direction or a time that cannot be", "wind", "gust"),
    };
  return {
    count: 3,
    remark: {
      is: "peak wind",
      from_degTrue,
      speed_mPerS: speed.valueSI,
      coded: speed,
      at_UTC,
      says: `peak wind ${found[1] ?? ""}° at ${speed.value} kt, at ${at_UTC} UTC`,
    },
  };
};

const readShift: RemarkReader = (place) => {
  if (remarkToken(place) !== "WSHFT") return undefined;
  const at_UTC = remarkClock(remarkToken(place, 1), place);
  if (at_UTC === undefined)
    return { count: 1, fault: impossible("wind shift without a time that can be", "wind") };
  const frontal = remarkToken(place, 2) === "FROPA";
  return {
    count: frontal ? 3 : 2,
    remark: {
      is: "wind shift",
      at_UTC,
      ...(frontal ? { frontal: true } : {}),
      says: `wind shift at ${at_UTC} UTC${frontal ? " with a front" : ""}`,
    },
  };
};

export const readWindRemark: RemarkReader = (place) => readPeak(place) ?? readShift(place);
