/** U+2212: as wide as a digit, and never taken for a hyphen. */
const MINUS = "−";

/** Puts the true minus sign before digits, and none before zero. */
const signed = (digits: string): string => {
  const unsigned = digits.replace(/^-/, "");
  return digits.startsWith("-") && Number(unsigned) !== 0 ? `${MINUS}${unsigned}` : unsigned;
};

/** A fixed number of decimals. Halves go away from zero in decimal digits, not in binary ones: 1.005 is 1.01. */
export function toDecimals(value: number, decimals: number): string {
  const scaled = Number(`${Math.abs(value).toPrecision(14)}e${decimals}`);
  if (!(scaled < Number.MAX_SAFE_INTEGER)) return signed(value.toFixed(decimals));
  const digits = Number(`${Math.round(scaled)}e-${decimals}`).toFixed(decimals);
  return signed(value < 0 ? `-${digits}` : digits);
}

/** At most so many significant digits, without trailing zeros; an exponent only below 1e-7 and from 1e15. */
export function toSignificant(value: number, digits: number): string {
  const rounded = Number(value.toPrecision(digits));
  const magnitude = Math.abs(rounded);
  if (magnitude !== 0 && (magnitude < 1e-7 || magnitude >= 1e15)) {
    const [mantissa = "", exponent = ""] = rounded.toExponential().split("e");
    return `${signed(mantissa)}e${signed(exponent.replace("+", ""))}`;
  }
  const decimals = magnitude === 0 ? 0 : Math.max(0, digits - 1 - Math.floor(Math.log10(magnitude)));
  const fixed = rounded.toFixed(decimals);
  return signed(fixed.includes(".") ? fixed.replace(/\.?0+$/, "") : fixed);
}
