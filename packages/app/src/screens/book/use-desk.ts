import {
  type Book,
  type BookDraft,
  type BookEdit,
  type BookFault,
  type BookPath,
  editDraft,
  type Plain,
  pathText,
  plainOf,
  redoDraft,
  undoDraft,
} from "@witnessmark/book";
import { createContext, useCallback, useContext, useEffect, useMemo, useRef, useState } from "react";
import { makeBookReader } from "../../keep/books/read-in-worker.ts";
import type { AircraftEntry } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";

/** A book on the desk: as it is in force, or a draft of it that can be changed. */
export interface Desk {
  readonly registration: string;
  readonly text: string;
  /** Its keys and values; `null` when the text cannot be read at all. */
  readonly plain: { readonly [key: string]: Plain } | null;
  readonly faults: readonly BookFault[];
  /** As it reads now, or as it read last. */
  readonly book: Book | null;
  /** The shape, as it reads now or read last, also of a book that has faults; `null` until one has been read. */
  readonly geometry: Book["geometry"] | null;
  /** Whether `book` and `faults` are of this very text. */
  readonly isRead: boolean;
  /** `null` while it is only read. */
  readonly draft: BookDraft | null;
  readonly entry: AircraftEntry | undefined;
  readonly isKept: boolean;
  readonly trouble: string | null;
  dismiss(): void;
  edit(edits: readonly BookEdit[]): void;
  change(step: (draft: BookDraft) => BookDraft): void;
  undo(): void;
  redo(): void;
  begin(draft: BookDraft): Promise<boolean>;
  /** Throws the draft away. */
  drop(): Promise<boolean>;
  /** @param deep also of what is inside: the figures of a place, the lines of a list */
  faultsAt(path: BookPath, deep?: boolean): readonly BookFault[];
}

const reader = makeBookReader();

const DeskContext = createContext<Desk | null>(null);
export const DeskProvider = DeskContext.Provider;

export function useDesk(): Desk {
  const desk = useContext(DeskContext);
  if (desk === null) throw new Error("expected a book on the desk");
  return desk;
}

/**
 * The book of an aircraft, and its draft where there is one.
 *
 * @returns `undefined` until the storage has said whether there is a draft, `null` where there is neither
 */
export function useOpenDesk(registration: string, entry: AircraftEntry | undefined): Desk | null | undefined {
  const keeping = useKeptDraft(registration);
  const inForce = entry?.state.books.at(-1)?.text;
  const draft = keeping.draft ?? null;
  const text = draft?.text ?? inForce;
  const read = useRead(text, entry?.book ?? null);
  const plain = useMemo(() => {
    const found = text === undefined ? undefined : plainOf(text, FILE);
    return found?.ok === true ? found.plain : null;
  }, [text]);
  const faultsAt = useCallback(
    (path: BookPath, deep = false) => {
      const place = pathText(path);
      return read.faults.filter(
        (fault) => fault.path === place || (deep && fault.path.startsWith(`${place}[`)),
      );
    },
    [read.faults],
  );
  const { change } = keeping;
  const { isReady, isKept, trouble, dismiss, begin, drop } = keeping;
  return useMemo(() => {
    if (!isReady) return undefined;
    if (text === undefined) return null;
    return {
      registration,
      text,
      plain,
      ...read,
      draft,
      entry,
      isKept,
      trouble,
      dismiss,
      begin,
      drop,
      change,
      edit: (edits) => change((before) => editDraft(before, edits)),
      undo: () => change(undoDraft),
      redo: () => change(redoDraft),
      faultsAt,
    };
  }, [
    isReady,
    text,
    registration,
    plain,
    read,
    draft,
    entry,
    isKept,
    trouble,
    dismiss,
    begin,
    drop,
    change,
    faultsAt,
  ]);
}

/** As it is named in a fault. */
const FILE = "the draft";

interface Read {
  readonly book: Book | null;
  readonly geometry: Book["geometry"] | null;
  readonly faults: readonly BookFault[];
  readonly isRead: boolean;
}

/** Reads the text away from the screen, once it rests: the book as it read last stays until then. */
function useRead(text: string | undefined, first: Book | null): Read {
  const [read, setRead] = useState<Read & { readonly of: string | undefined }>({
    book: first,
    geometry: first?.geometry ?? null,
    faults: [],
    isRead: false,
    of: undefined,
  });
  useEffect(() => {
    if (text === undefined) return;
    let left = false;
    reader(text, FILE).then(
      (result) => {
        if (left) return;
        setRead((before) => ({
          book: result.ok ? result.book : before.book,
          geometry: (result.ok ? result.book.geometry : result.geometry) ?? before.geometry,
          faults: result.ok ? [] : result.faults,
          isRead: true,
          of: text,
        }));
      },
      (error: unknown) => {
        if (!left) setRead((before) => ({ ...before, faults: [notRead(error)], isRead: true, of: text }));
      },
    );
    return () => {
      left = true;
    };
  }, [text]);
  return useMemo(
    () => ({
      book: read.book ?? first,
      geometry: read.geometry ?? first?.geometry ?? null,
      faults: read.faults,
      isRead: read.isRead && read.of === text,
    }),
    [read, text, first],
  );
}

const notRead = (error: unknown): BookFault => ({
  file: FILE,
  line: 0,
  column: 0,
  path: "",
  expected: "a reader of books at work",
  found: error instanceof Error ? error.message : String(error),
});

/** The draft in the phone's storage: put there at every change, before anything else is done with it. */
function useKeptDraft(registration: string) {
  const keep = useKeep();
  const [draft, setDraft] = useState<BookDraft | null | undefined>(undefined);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [isKept, setIsKept] = useState(true);
  const latest = useRef<BookDraft | null>(null);
  const timesKept = useRef(0);
  const putting = useRef<Promise<boolean> | null>(null);
  const say = useCallback((error: unknown) => {
    setTrouble(error instanceof Error ? error.message : `Not kept: ${String(error)}`);
    return false;
  }, []);

  useEffect(() => {
    let left = false;
    keep.drafts.find(registration).then(
      (row) => {
        if (left) return;
        timesKept.current = row?.timesKept ?? 0;
        latest.current = row?.draft ?? null;
        setDraft(row?.draft ?? null);
      },
      (error: unknown) => {
        if (left) return;
        setDraft(null);
        say(error);
      },
    );
    return () => {
      left = true;
    };
  }, [keep, registration, say]);

  /** One after another, and of what came meanwhile only the last. */
  const put = useCallback((): Promise<boolean> => {
    const go = async (): Promise<boolean> => {
      for (;;) {
        const now = latest.current;
        if (now === null) return true;
        try {
          const row = await keep.drafts.put(registration, now, timesKept.current);
          timesKept.current = row.timesKept;
        } catch (error) {
          return say(error);
        }
        if (latest.current === now) break;
      }
      setTrouble(null);
      setIsKept(true);
      return true;
    };
    putting.current ??= go().finally(() => {
      putting.current = null;
    });
    return putting.current;
  }, [keep, registration, say]);

  const change = useCallback(
    (step: (draft: BookDraft) => BookDraft) => {
      const before = latest.current;
      if (before === null) return;
      let next: BookDraft;
      try {
        next = step(before);
      } catch (error) {
        say(error);
        return;
      }
      if (next === before) return;
      latest.current = next;
      setDraft(next);
      setIsKept(false);
      void put();
    },
    [put, say],
  );

  const begin = useCallback(
    (first: BookDraft) => {
      latest.current = first;
      setDraft(first);
      return put();
    },
    [put],
  );

  const drop = useCallback(async () => {
    try {
      latest.current = null;
      await putting.current;
      await keep.drafts.drop(registration);
      timesKept.current = 0;
      setDraft(null);
      setIsKept(true);
      return true;
    } catch (error) {
      return say(error);
    }
  }, [keep, registration, say]);

  const dismiss = useCallback(() => setTrouble(null), []);
  return { draft, isReady: draft !== undefined, isKept, trouble, dismiss, change, begin, drop };
}
