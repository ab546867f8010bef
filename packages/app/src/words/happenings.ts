import type { HappeningKind } from "@witnessmark/book";

export const HAPPENINGS: readonly HappeningKind[] = [
  "fuelled",
  "unattended",
  "rain",
  "frost",
  "maintenance",
  "flown",
  "towed",
  "loaded",
];

/** On a button: what happened. */
export const HAPPENING_NAMES: Readonly<Record<HappeningKind, string>> = {
  fuelled: "Fuelled",
  unattended: "Left unattended",
  rain: "Rain",
  frost: "Frost or ice",
  maintenance: "Worked on",
  flown: "Flown",
  towed: "Towed",
  loaded: "Loaded otherwise",
};
