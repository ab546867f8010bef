import { toSI } from "@witnessmark/engine";
import { doubtful, impossible, notObserved, notUnderstood } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";

export type CloudAmount = "FEW" | "SCT" | "BKN" | "OVC";
export type SkyStatement = "SKC" | "CLR" | "NSC" | "NCD";

export interface CloudLayer {
  /** `null`: the station could not tell. */
  readonly amount: CloudAmount | null;
  /** Above the aerodrome, as coded in hundreds of feet; `null`: the height is not known. 0 is at the surface. */
  readonly base_ft: number | null;
  readonly base_m: number | null;
  /** `null`: the station could not tell. Absent: no cumulonimbus and no towering cumulus. */
  readonly type?: "CB" | "TCU" | null;
}

const NAMES = { FEW: "FEW", SCT: "SCATTERED", BKN: "BROKEN", OVC: "OVERCAST" } as const;
const LAYER = /^(FEW|SCT|BKN|OVC|\/\/\/)(\d{3}|\/\/\/)(CB|TCU|\/\/\/)?$/u;
const BROKEN_LAYER = /^(FEW|SCT|BKN|OVC)([\dO/]*)(CB|TCU)?$/u;

const amountOf = (text: string): CloudAmount | null =>
  text === "FEW" || text === "SCT" || text === "BKN" || text === "OVC" ? text : null;
const typeOf = (text: string | undefined): Pick<CloudLayer, "type"> =>
  text === undefined ? {} : { type: text === "CB" || text === "TCU" ? text : null };

export const layerOf = (
  amount: CloudAmount | null,
  base_ft: number | null,
  type?: CloudLayer["type"],
): CloudLayer => ({
  amount,
  base_ft,
  base_m: base_ft === null ? null : toSI(base_ft, "ft"),
  ...(type === undefined ? {} : { type }),
});

export const readClouds: Reader = (place) => {
  const token = tokenAt(place);
  if (token === "SKC" || token === "CLR" || token === "NSC" || token === "NCD")
    return used({ is: "sky", statement: token });
  if (token === "//////" || token === "/////////")
    return faulty(notObserved("cloud not observed", "ceiling"), { is: "cloud not observed" });
  const upward = /^VV(\d{3}|\/\/\/)$/u.exec(token);
  if (upward !== null) {
    const height_ft = upward[1] === "///" ? null : Number(upward[1]) * 100;
    const part = { is: "vertical visibility", height_ft } as const;
    return height_ft === null
      ? faulty(notObserved("sky hidden, and how far up one sees is not known", "ceiling"), part)
      : used(part);
  }
  const found = LAYER.exec(token);
  if (found !== null) {
    const [, amountText = "", heightText = "", typeText] = found;
    const amount = amountOf(amountText);
    const base_ft = heightText === "///" ? null : Number(heightText) * 100;
    const layer = layerOf(amount, base_ft, typeOf(typeText).type);
    const part = { is: "cloud", layer } as const;
    if (amount === null)
      return faulty(
        notObserved("a layer whose amount the station cannot tell: it may be a ceiling", "ceiling"),
        part,
      );
    if (base_ft === null && (amount === "BKN" || amount === "OVC"))
      return faulty(notObserved(`a ${NAMES[amount]} layer whose height is not known`, "ceiling"), part);
    return used(part);
  }
  const broken = BROKEN_LAYER.exec(token);
  if (broken !== null) {
    const amount = amountOf(broken[1] ?? "");
    return faulty(
      impossible(
        `cloud height needs three digits; a ${amount === null ? "" : NAMES[amount]} layer of unknown height is present`,
        "ceiling",
      ),
      { is: "cloud", layer: layerOf(amount, null, typeOf(broken[3]).type) },
    );
  }
  if (/^VV/u.test(token))
    return faulty(
      notUnderstood(
        "vertical visibility needs three digits; the sky is hidden, and how far up one sees is not known",
        "ceiling",
      ),
      {
        is: "vertical visibility",
        height_ft: null,
      },
    );
  if (/^(?:FEW|SCT|BKN|OVC)/u.test(token))
    return faulty(doubtful("cloud not understood; a layer of unknown height is present", "ceiling"), {
      is: "cloud",
      layer: layerOf(amountOf(token.slice(0, 3)), null),
    });
  return undefined;
};
