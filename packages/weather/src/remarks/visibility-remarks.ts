import { measure } from "@witnessmark/engine";
import { impossible } from "../aspect.ts";
import { fraction, isCompass, type Visibility, visibilityOf } from "../groups/visibility.ts";
import { directionText } from "./place-text.ts";
import { type Remark, type RemarkPlace, type RemarkReader, remarkToken } from "./remark.ts";

const VALUE = "(M?)(\\d{1,2} \\d{1,2}/\\d{1,2}|\\d{1,2}/\\d{1,2}|\\d{1,2})";
const VALUES = new RegExp(`^${VALUE}(?:V${VALUE})?$`, "u");
const RUNWAY = /^RWY\d{2}[LCR]?$/u;

function milesOf(sign: string, text: string): Visibility | undefined {
  const [first = "", second] = text.split(" ");
  const share = second ?? (first.includes("/") ? first : undefined);
  const part = share === undefined ? 0 : fraction(share);
  if (typeof part === "string") return undefined;
  const whole = second !== undefined || share === undefined ? Number(first) : 0;
  return visibilityOf(measure(whole + part, "mi"), sign === "M" ? "less than" : undefined);
}

interface Values {
  readonly lowest: Visibility;
  readonly highest?: Visibility;
  readonly text: string;
  readonly count: number;
}

/** One value or two with V between them, each with or without a space before its fraction. */
function valuesAt(place: RemarkPlace, from: number, lead = ""): Values | undefined {
  for (let count = 3; count >= (lead === "" ? 1 : 0); count -= 1) {
    const more = place.tokens.slice(place.at + from, place.at + from + count);
    if (more.length < count) continue;
    const text = [...(lead === "" ? [] : [lead]), ...more].join(" ");
    const found = VALUES.exec(text);
    if (found === null) continue;
    const lowest = milesOf(found[1] ?? "", found[2] ?? "");
    const highest = found[4] === undefined ? undefined : milesOf(found[3] ?? "", found[4]);
    if (lowest === undefined || (found[4] !== undefined && highest === undefined)) return undefined;
    return { lowest, ...(highest === undefined ? {} : { highest }), text, count };
  }
  return undefined;
}

type VisibilityRemark = Extract<Remark, { readonly is: "visibility" }>;
const NAMES: Readonly<Record<VisibilityRemark["kind"], (where: string) => string>> = {
  tower: () => "visibility from the tower",
  surface: () => "visibility from the surface",
  variable: () => "visibility varying, in",
  sector: (where) => `visibility to the ${directionText(where)}`,
  location: (where) => `visibility at ${where}`,
};

function remarkOf(kind: VisibilityRemark["kind"], values: Values, where?: string): Remark {
  return {
    is: "visibility",
    kind,
    ...(where === undefined ? {} : { where }),
    lowest: values.lowest,
    ...(values.highest === undefined ? {} : { highest: values.highest }),
    says: `${NAMES[kind](where ?? "")} ${values.text.replace("V", " to ")} SM`,
  };
}

/** TWR VIS 1 1/2, SFC VIS 2, VIS 1/2V2, VIS NE 2 1/2, VIS 2 1/2 RWY11, and VIS1/2V1 without its space. */
export const readVisibilityRemark: RemarkReader = (place) => {
  const first = remarkToken(place);
  const prefixed = (first === "TWR" || first === "SFC") && remarkToken(place, 1) === "VIS";
  if (!prefixed && !/^VIS(?:M?\d.*)?$/u.test(first)) return undefined;
  const unclear = {
    count: prefixed ? 2 : 1,
    fault: impossible("visibility in a remark not understood", "visibility"),
  };
  if (prefixed) {
    const values = valuesAt(place, 2);
    if (values === undefined) return unclear;
    return { count: 2 + values.count, remark: remarkOf(first === "TWR" ? "tower" : "surface", values) };
  }
  const glued = first.slice(3);
  const sector = glued === "" && isCompass(remarkToken(place, 1)) ? remarkToken(place, 1) : undefined;
  const from = sector === undefined ? 1 : 2;
  const values = valuesAt(place, from, glued);
  if (values === undefined) return unclear;
  const end = from + values.count;
  if (sector !== undefined) return { count: end, remark: remarkOf("sector", values, sector) };
  const where = remarkToken(place, end);
  if (RUNWAY.test(where)) return { count: end + 1, remark: remarkOf("location", values, where) };
  // a lone value without a place says which visibility it is no better than the body does: the lower counts
  return { count: end, remark: remarkOf(values.highest === undefined ? "surface" : "variable", values) };
};
