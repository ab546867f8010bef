/** Where in a book what is made of a paper belongs, as an address says it. */
export interface PaperPlace {
  readonly section: "tables" | "envelopes";
  /** The one that is there already; absent for a new one. */
  readonly item?: string;
}

/** Reads `tables` or `tables.landing`; `undefined` for what is neither. */
export function paperPlace(of: string | undefined): PaperPlace | undefined {
  const [, section, item] = /^(tables|envelopes)(?:\.(.+))?$/.exec(of ?? "") ?? [];
  if (section !== "tables" && section !== "envelopes") return undefined;
  return { section, ...(item === undefined ? {} : { item }) };
}

export const paperAddress = (section: PaperPlace["section"], item: string | undefined): string =>
  item === undefined ? section : `${section}.${item}`;
