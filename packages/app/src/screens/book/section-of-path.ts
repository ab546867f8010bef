import { SECTIONS } from "@witnessmark/book";

/** The page on which the place of a fault is: `checks[3].how` is on that of the checks. */
export function sectionOfPath(path: string): string | undefined {
  return SECTIONS.filter(({ path: under }) => under.length > 0)
    .toSorted((a, b) => b.path.length - a.path.length)
    .find(({ path: under }) => {
      const start = under.join(".");
      return path === start || path.startsWith(`${start}.`) || path.startsWith(`${start}[`);
    })?.id;
}

/** Its place in the list of the page, where it is of one item. */
export function indexOfPath(path: string): number | undefined {
  const found = /\[(\d+)\]/.exec(path)?.[1];
  return found === undefined ? undefined : Number(found);
}
