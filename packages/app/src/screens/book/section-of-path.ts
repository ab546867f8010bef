import { SECTIONS } from "@witnessmark/book";

/** The page on which the place of a fault is: `checks[3].how` is on that of the checks. */
export function sectionOfPath(path: string): string | undefined {
  const found = SECTIONS.filter(({ path: under }) => under.length > 0)
    .toSorted((a, b) => b.path.length - a.path.length)
    .filter(({ path: under }) => isUnder(path, under.join(".")));
  // the shape has several pages: the one with the field
  const withField = found.find(({ path: under, fields }) =>
    fields.some(({ key }) => key !== "" && isUnder(path, [...under, key].join("."))),
  );
  return (withField ?? found[0])?.id;
}

const isUnder = (path: string, start: string): boolean =>
  path === start || path.startsWith(`${start}.`) || path.startsWith(`${start}[`);

/** Its place in the list of the page, where it is of one item. */
export function indexOfPath(path: string): number | undefined {
  const found = /\[(\d+)\]/.exec(path)?.[1];
  return found === undefined ? undefined : Number(found);
}
