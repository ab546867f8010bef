/** Which side a name speaks of; `undefined` when it names neither or both. */
export function sideNamed(name: string): "left" | "right" | undefined {
  const words: readonly string[] = name.toLowerCase().match(/[a-z]+/g) ?? [];
  const [left, right] = [words.includes("left"), words.includes("right")];
  if (left === right) return undefined;
  return left ? "left" : "right";
}

/** The same name for both sides, to see that two checks are one check on either side. */
export const withoutSide = (name: string): string =>
  (name.toLowerCase().match(/[\p{L}\p{N}]+/gu) ?? [])
    .filter((word) => word !== "left" && word !== "right")
    .join(" ");
