/** "a corner", "an axis" */
export const article = (one: string): string => `${/^[aeiou]/.test(one) ? "an" : "a"} ${one}`;
