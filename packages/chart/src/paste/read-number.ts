/** The sign before the decimals. */
export type DecimalSign = "point" | "comma";

/** What one cell holds. */
export type CellContent =
  | { readonly kind: "blank" }
  /** A figure that the paper does not give: `—`, `n/a`. */
  | { readonly kind: "none" }
  /** `unit` is what stands after the number, as it is written. */
  | { readonly kind: "number"; readonly value: number; readonly unit: string }
  | { readonly kind: "text"; readonly text: string };

const NONE = /^(?:[-–—.*x]+|n\/?a|none|null|nil)$/i;
const NUMBER = /^([-+−–]?\s?\d[\d.,'’\u00a0\u2009\u202f ]*)(.*)$/su;
const GROUPING = /['’\u00a0\u2009\u202f ]/gu;

/** What a cell holds, once the decimal sign is known. */
export function readCell(text: string, decimal: DecimalSign): CellContent {
  if (text === "") return { kind: "blank" };
  if (NONE.test(text)) return { kind: "none" };
  const found = NUMBER.exec(text);
  const value = found === null ? undefined : numberOf(found[1] ?? "", decimal);
  const unit = (found?.[2] ?? "").trim();
  // "15 to 20" and "12.5.3" are no numbers
  if (value === undefined || /\d.*\d/.test(unit)) return { kind: "text", text };
  return { kind: "number", value, unit };
}

function numberOf(written: string, decimal: DecimalSign): number | undefined {
  const plain = written.trim().replace(GROUPING, "").replace(/[−–]/g, "-");
  const [point, group] = decimal === "point" ? [".", ","] : [",", "."];
  const [whole = "", share, ...more] = plain.split(point);
  if (more.length > 0 || share?.includes(group)) return undefined;
  const groups = whole.split(group);
  if (groups.length > 1 && !groups.slice(1).every((part) => part.length === 3)) return undefined;
  const value = Number(`${groups.join("")}${share === undefined ? "" : `.${share}`}`);
  return Number.isFinite(value) ? value : undefined;
}

/** What the numbers of a text say about their decimal sign. */
export type DecimalEvidence =
  | { readonly sign: DecimalSign }
  /** A number that reads either way; none says which. */
  | { readonly unclear: string }
  | { readonly sign: undefined };

/** `12,5` and `1.234,5` have a decimal comma, `1,234.5` a point; `1,234` alone says nothing. */
export function decimalSignOf(texts: readonly string[]): DecimalEvidence {
  let unclear: string | undefined;
  let decided: DecimalSign | undefined;
  for (const text of texts) {
    const digits = NUMBER.exec(text)?.[1]?.replace(GROUPING, "").replace(/[.,]$/, "") ?? "";
    const says = saysOf(digits);
    if (says === "either") unclear ??= text;
    else decided ??= says;
  }
  if (decided !== undefined) return { sign: decided };
  return unclear === undefined ? { sign: undefined } : { unclear };
}

function saysOf(digits: string): DecimalSign | "either" | undefined {
  const points = digits.split(".").length - 1;
  const commas = digits.split(",").length - 1;
  if (points > 0 && commas > 0) return digits.lastIndexOf(".") > digits.lastIndexOf(",") ? "point" : "comma";
  if (points + commas === 0) return undefined;
  const [here, other]: readonly [DecimalSign, DecimalSign] =
    points > 0 ? ["point", "comma"] : ["comma", "point"];
  if (points + commas > 1) return other; // several group signs: the other is the decimal sign
  const [whole = "", share = ""] = digits.split(/[.,]/);
  if (share.length !== 3 || /^[-+−–]?0*$/.test(whole) || whole.replace(/\D/g, "").length > 3) return here;
  return "either";
}
