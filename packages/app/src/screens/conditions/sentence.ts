/** A sentence closed: what ends with a question mark takes no full stop. */
export const closed = (words: string): string => (/[.?]$/u.test(words) ? words : `${words}.`);

/** With a capital, and closed. */
export const sentence = (words: string): string => closed(words.charAt(0).toUpperCase() + words.slice(1));
