import { type RemarkPlace, remarkToken } from "./remark.ts";

const DIRECTIONS: Readonly<Record<string, string>> = {
  N: "north",
  NE: "north-east",
  E: "east",
  SE: "south-east",
  S: "south",
  SW: "south-west",
  W: "west",
  NW: "north-west",
};

export const directionText = (code: string): string =>
  code
    .split("-")
    .map((one) => DIRECTIONS[one] ?? one)
    .join(" to ");
const isDirection = (token: string): boolean =>
  token !== "" && token.split("-").every((one) => DIRECTIONS[one] !== undefined);

const PLACES: Readonly<Record<string, string>> = {
  OHD: "overhead",
  VC: "in the vicinity",
  DSNT: "distant (beyond 10 NM, under 30 NM)",
  ALQDS: "in all quadrants",
};

/** OHD MOV E, DSNT W, VC NE AND SW, in words; how many tokens it took, none when no place follows. */
export function placeText(
  place: RemarkPlace,
  from: number,
): { readonly text: string; readonly count: number } {
  const words: string[] = [];
  let directions: string[] = [];
  let count = from;
  const flush = (): void => {
    if (directions.length === 0) return;
    const text = `to the ${directions.join(" and ")}`;
    const last = words.at(-1);
    if (last === PLACES["DSNT"] || last === PLACES["VC"]) words[words.length - 1] = `${last} ${text}`;
    else words.push(text);
    directions = [];
  };
  for (;;) {
    const token = remarkToken(place, count);
    const next = remarkToken(place, count + 1);
    const known = PLACES[token];
    if (known !== undefined) {
      flush();
      words.push(known);
    } else if (isDirection(token)) directions.push(directionText(token));
    else if (token === "AND" && (isDirection(next) || PLACES[next] !== undefined)) {
      count += 1;
      continue;
    } else if (token === "MOV" && (isDirection(next) || next === "LTL")) {
      flush();
      words.push(next === "LTL" ? "moving little" : `moving ${directionText(next)}`);
      count += 1;
    } else break;
    count += 1;
  }
  flush();
  return { text: words.join(", "), count: count - from };
}
