/** What is wrong with one cell of a file, in words for a person. */
export interface ImportFault {
  /** As a spreadsheet counts: the row of the headings is 1. */
  readonly row: number;
  /** The heading of its column; empty where the row as a whole is meant. */
  readonly column: string;
  readonly found: string;
  readonly expected: string;
  readonly remedy: string;
}

/** Something that the file leaves open, and that is not guessed. */
export interface ImportQuestion {
  /** Under which the answer is given back. */
  readonly id: string;
  readonly words: string;
  /** Why it is asked, with what was found. */
  readonly because: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
}

export type ImportAnswers = Readonly<Record<string, string>>;

/** What a column of the file is; `""` when nothing of it is wanted. */
export type Matched<R extends string> = readonly (R | "")[];

export type ImportRow<T> =
  | {
      readonly ok: true;
      readonly row: number;
      readonly is: T /** It is on record, or stands above. */;
      readonly again: boolean;
    }
  | { readonly ok: false; readonly row: number; readonly faults: readonly ImportFault[] };

/** How a file reads: rows only when no column is missing and no question is open. */
export interface ImportAnswer<T, R extends string> {
  readonly columns: Matched<R>;
  /** Columns without which nothing can be read. */
  readonly missing: readonly R[];
  readonly questions: readonly ImportQuestion[];
  readonly rows: readonly ImportRow<T>[];
}

/** Faults of one row as they are found. */
export class RowFaults {
  readonly row: number;
  readonly all: ImportFault[] = [];

  constructor(row: number) {
    this.row = row;
  }

  add(column: string, found: string, expected: string, remedy: string): undefined {
    this.all.push({ row: this.row, column, found: found === "" ? "nothing" : found, expected, remedy });
    return undefined;
  }
}
