/** The same words with a capital letter first. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** As it stands inside a sentence: with a small first letter, but "ELT off" and "V-belt worn" as they are. */
export const lower = (text: string): string =>
  /^[A-Z][a-z ]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;
