/** `seats, tanks and an envelope`; nothing of none. */
export const listed = (words: readonly string[]): string => {
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
};
