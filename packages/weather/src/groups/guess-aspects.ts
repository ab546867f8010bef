import type { Aspect } from "../aspect.ts";

/**
 * What a group that nobody understands may have been about, by its look. The net is wide on purpose: a slip of one
 * letter must leave open what the group would have said.
 */
const LOOKS: readonly (readonly [RegExp, readonly Aspect[]])[] = [
  [/KT|MPS|KMH|^VRB|^\d{3}V|G\d{2}|^WS/u, ["wind", "gust"]],
  [/SM|KM$|^\d{4}[A-Z]{0,3}$|^[PM]?\d+\/\d+$|CAVO|^\d{1,2}$/u, ["visibility"]],
  [/^R\d|^RWY|RVR|CLRD/u, ["runway", "visibility"]],
  [
    /^(?:F|S|B|O|V)[A-Z]{1,2}[\dO/]{1,4}|\d{3}(?:CB|TCU)|^[A-Z]{2,3}\d{3}|^(?:SKC|CLR|NSC|NCD)|\/\/\//u,
    ["ceiling"],
  ],
  [/^M?\d{1,3}\/M?\d{1,3}$|^T\d|^T[XN]/u, ["temperature", "dew point"]],
  [/^[AQ]\w{3,4}$|^QNH|^QFE|INS$/u, ["pressure"]],
  [/^(?:[-+]|VC)?[A-Z]{2,8}[-+]?$|^RE/u, ["weather"]],
  [/\d{4,}Z$|^\d{4}\/\d{4}$/u, ["validity"]],
];

/** A letter taken for a digit, or the other way round, does not hide what a group was about. */
const plain = (token: string): string =>
  token.replace(/(?<=\d)[OQ]|[OQ](?=\d)/gu, "0").replace(/(?<=\d)[IL](?=\d)/gu, "1");

const WIDEST: readonly Aspect[] = ["visibility", "ceiling", "weather"];

export function guessAspects(token: string): readonly Aspect[] {
  const found = new Set<Aspect>();
  for (const form of [token, plain(token)])
    for (const [look, aspects] of LOOKS) if (look.test(form)) for (const one of aspects) found.add(one);
  // groups that may come several times: one more of them would change the answer, so they are open in any case
  for (const one of WIDEST) found.add(one);
  return [...found];
}
