const LONGEST = 60;

/** A found value as a person wrote it, short enough for one line. */
export function shown(value: unknown): string {
  if (value === undefined || value === null) return "nothing";
  if (typeof value === "string") {
    if (value.trim() === "") return value === "" ? "empty text" : "blanks only";
    const oneLine = value.replace(/\s+/g, " ");
    return `"${oneLine.length > LONGEST ? `${oneLine.slice(0, LONGEST)}…` : oneLine}"`;
  }
  if (Array.isArray(value)) {
    if (value.length === 0) return "an empty list";
    return value.length === 1 ? "a list of one" : `a list of ${value.length}`;
  }
  if (typeof value === "object") return "keys and values";
  return String(value);
}

/** Names in a sentence: `a`, `b` or `c`. */
export function oneOf(names: readonly string[]): string {
  const quoted = names.map((name) => `\`${name}\``);
  const last = quoted.pop();
  if (last === undefined) return "";
  return quoted.length === 0 ? last : `${quoted.join(", ")} or ${last}`;
}
