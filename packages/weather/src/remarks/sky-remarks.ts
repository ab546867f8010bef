import { toSI } from "@witnessmark/engine";
import { impossible } from "../aspect.ts";
import { type CloudAmount, layerOf } from "../groups/clouds.ts";
import { PHENOMENA, weatherCodeOf } from "../groups/weather-code.ts";
import { placeText } from "./place-text.ts";
import { type RemarkReader, remarkToken } from "./remark.ts";

const OKTAS = { FEW: "1/8 to 2/8", SCT: "3/8 to 4/8", BKN: "5/8 to 7/8", OVC: "8/8" } as const;
const WORDS = { FEW: "few", SCT: "scattered", BKN: "broken", OVC: "overcast" } as const;
const amountOf = (text: string | undefined): CloudAmount | undefined =>
  text === "FEW" || text === "SCT" || text === "BKN" || text === "OVC" ? text : undefined;
const feet = (value_ft: number): string => `${value_ft.toLocaleString("en-US")} ft`;

const readCeiling: RemarkReader = (place) => {
  const first = remarkToken(place);
  const glued = /^CIG(\d{3}(?:V\d{3})?)$/u.exec(first)?.[1];
  if (first !== "CIG" && glued === undefined) return undefined;
  const count = glued === undefined ? 2 : 1;
  const found = /^(\d{3})(?:V(\d{3}))?$/u.exec(glued ?? remarkToken(place, 1));
  const [low, high] = [Number(found?.[1]), Number(found?.[2])];
  if (found === null || high <= low)
    return { count: 1, fault: impossible("ceiling in a remark not understood", "ceiling") };
  const where = remarkToken(place, count);
  const named = found[2] === undefined && /^RWY\d{2}[LCR]?$/u.test(where);
  return {
    count: named ? count + 1 : count,
    remark: {
      is: "ceiling",
      lowest_ft: low * 100,
      lowest_m: toSI(low * 100, "ft"),
      ...(found[2] === undefined ? {} : { highest_ft: high * 100 }),
      ...(named ? { where } : {}),
      says:
        found[2] === undefined
          ? `ceiling ${feet(low * 100)}${named ? ` at ${where}` : ""}`
          : `ceiling varying between ${feet(low * 100)} and ${feet(high * 100)}`,
    },
  };
};

const readVariable: RemarkReader = (place) => {
  const found = /^(FEW|SCT|BKN|OVC)(\d{3})?$/u.exec(remarkToken(place));
  const [first, second] = [amountOf(found?.[1]), amountOf(remarkToken(place, 2))];
  if (first === undefined || second === undefined || remarkToken(place, 1) !== "V") return undefined;
  const base_ft = found?.[2] === undefined ? null : Number(found[2]) * 100;
  const layer = base_ft === null ? "a layer" : `${feet(base_ft)} layer`;
  return {
    count: 3,
    remark: {
      is: "variable sky",
      base_ft,
      amounts: [first, second],
      says: `${layer} varying ${WORDS[first]} to ${WORDS[second]}`,
    },
  };
};

const readObscuration: RemarkReader = (place) => {
  const weather = weatherCodeOf(remarkToken(place));
  const found = /^(FEW|SCT|BKN|OVC)(\d{3})$/u.exec(remarkToken(place, 1));
  const amount = amountOf(found?.[1]);
  if (weather === undefined || amount === undefined || remarkToken(place, 2) === "V") return undefined;
  const base_ft = Number(found?.[2]) * 100;
  const what = weather.phenomena.map((one) => PHENOMENA[one]).join(" and ");
  const from = base_ft === 0 ? "from the surface" : `from ${feet(base_ft)}`;
  return {
    count: 2,
    remark: {
      is: "obscuration",
      code: weather.code,
      layer: layerOf(amount, base_ft),
      says: `${what} hides ${OKTAS[amount]} of the sky ${from} (${found?.[0] ?? ""})`,
    },
  };
};

const CLOUDS: Readonly<Record<string, string>> = {
  CB: "cumulonimbus",
  TCU: "towering cumulus",
  CBMAM: "cumulonimbus mammatus",
  ACC: "altocumulus castellanus",
  VIRGA: "virga",
};

const readCloudPlace: RemarkReader = (place) => {
  const name = CLOUDS[remarkToken(place)];
  if (name === undefined) return undefined;
  const { text, count } = placeText(place, 1);
  const is = remarkToken(place) === "VIRGA" ? "other" : "convective cloud";
  return { count: 1 + count, remark: { is, says: text === "" ? name : `${name} ${text}` } };
};

const KINDS = "CI|CS|CC|AS|AC|NS|SC|ST|SF|CU|CF|TCU|CB";
const CLOUD_KINDS = new RegExp(`^(?:(?:(?:${KINDS})\\d)+|\\d(?:${KINDS})\\d{3})$`, "u");

/** SC6SC2 as Canada sends it, 1CU030 as Japan does: the kinds of cloud with their eighths. */
const readKinds: RemarkReader = (place) => {
  const token = remarkToken(place);
  if (!CLOUD_KINDS.test(token)) return undefined;
  const storm = token.includes("CB")
    ? "cumulonimbus"
    : token.includes("TCU")
      ? "towering cumulus"
      : undefined;
  return storm === undefined
    ? { count: 1, remark: { is: "other", says: `kinds of cloud ${token}` } }
    : { count: 1, remark: { is: "convective cloud", says: `${storm} (${token})` } };
};

const readTops: RemarkReader = (place) => {
  const amount = amountOf(remarkToken(place));
  const tops = /^\d{3}$/u.exec(remarkToken(place, 2))?.[0];
  if (amount === undefined || remarkToken(place, 1) !== "TOPS" || tops === undefined) return undefined;
  return {
    count: 3,
    remark: { is: "other", says: `tops of the ${WORDS[amount]} layer at ${feet(Number(tops) * 100)}` },
  };
};

const readMountains: RemarkReader = (place) => {
  const first = remarkToken(place);
  const top = remarkToken(place, 1) === "TOP" || remarkToken(place, 1) === "TOPS" ? 2 : 1;
  if ((first !== "MTN" && first !== "MTNS") || remarkToken(place, top) !== "OBSCD") return undefined;
  const { text, count } = placeText(place, top + 1);
  const what = top === 2 ? "mountain tops" : "mountains";
  return {
    count: top + 1 + count,
    remark: { is: "other", says: `${what} obscured${text === "" ? "" : ` ${text}`}` },
  };
};

export const readSkyRemark: RemarkReader = (place) =>
  readCeiling(place) ??
  readVariable(place) ??
  readObscuration(place) ??
  readTops(place) ??
  readKinds(place) ??
  readCloudPlace(place) ??
  readMountains(place);
