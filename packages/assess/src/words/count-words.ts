const WORDS = [
  "no",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
] as const;

/** `one` to `twelve` in words, figures above. */
export const inWords = (count: number): string => WORDS[count] ?? String(count);

/** `1 check`, `2 checks` */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

/** The first letter as a capital. */
export const sentence = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The first letter small, unless the word is an abbreviation: `Oil level` → `oil level`, `GPS` stays. */
export const inside = (text: string): string =>
  /^[A-Z][A-Z0-9]/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1);

/** `two drains, two caps and the quantity` */
export function listed(words: readonly string[]): string {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}
