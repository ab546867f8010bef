import { notObserved } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";
import { degrees } from "./temperature.ts";

/** W12/S4: the sea off the aerodrome. BLU, WHT, GRN: the colour that some air forces sum a report up in. */
export const readSeaAndColour: Reader = (place) => {
  if (place.section === "forecast") return undefined;
  const token = tokenAt(place);
  const sea = /^W(M?\d{2}|\/\/)\/(S[\d/]|H\d{1,3}|H\/{3})$/u.exec(token);
  if (sea !== null) {
    const temperature = degrees(sea[1] ?? "");
    const state = sea[2] ?? "";
    if (temperature === null && state.includes("/")) return faulty(notObserved("sea not observed"));
    return used({ is: "sea", temperature_degC: temperature?.coded_degC ?? null, state });
  }
  if (/^(?:BLACK)?(?:BLU\+?|WHT|GRN|YLO[12]?|AMB|RED)$|^BLACK$/u.test(token))
    return used({ is: "colour state", code: token });
  return undefined;
};
