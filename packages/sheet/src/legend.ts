import type { Status } from "@witnessmark/ledger";
import type { SheetMark } from "./sheet.ts";

export interface LegendRow {
  readonly status: Status;
  readonly words: string;
}

/** What the marks on a drawing mean, as far as they stand on it. */
export function legendOf(marks: readonly Pick<SheetMark, "status">[]): readonly LegendRow[] {
  const has = (status: Status): boolean => marks.some((mark) => mark.status === status);
  const rows: readonly LegendRow[] = [
    { status: "clear", words: "as it should be" },
    { status: has("stop") ? "stop" : "caution", words: "see the note" },
    { status: "open", words: "not known" },
  ];
  return rows.filter(({ status }) => has(status));
}
