/**
 * The changed text in which every line that did not change is as the person wrote it. The writer of YAML has one look
 * for everything; only what lies between the lines that are the same before and after is taken from it.
 *
 * @param written the text as it was written by hand
 * @param before the same text in the writer's look
 * @param after the changed text in the writer's look
 */
export function keepLines(written: string, before: string, after: string): string {
  const [hand, was, now] = [written, before, after].map((text) => text.split("\n")) as [
    string[],
    string[],
    string[],
  ]; // three in, three out
  const least = Math.min(hand.length, was.length, now.length);
  let head = 0;
  while (head < least && was[head] === now[head] && isSame(hand[head], was[head])) head++;
  let tail = 0;
  const fromEnd = (lines: readonly string[]) => lines[lines.length - 1 - tail];
  while (tail < least - head && fromEnd(was) === fromEnd(now) && isSame(fromEnd(hand), fromEnd(was))) tail++;
  return [
    ...hand.slice(0, head),
    ...now.slice(head, now.length - tail),
    ...hand.slice(hand.length - tail),
  ].join("\n");
}

/** The same line but for blanks after its indent: it may stand among lines of the writer's look. */
const isSame = (one: string | undefined, other: string | undefined): boolean =>
  one === other ||
  (one !== undefined &&
    other !== undefined &&
    one.search(/\S|$/) === other.search(/\S|$/) &&
    one.replaceAll(/\s/g, "") === other.replaceAll(/\s/g, ""));
