import type { Book, BookFault } from "@witnessmark/book";
import type { AircraftState, Author, Bodies, EventType, LedgerEvent, Subject } from "@witnessmark/ledger";
import type { BookDrafts } from "./drafts.ts";

/** One fact to be kept: the keeper adds ids, clocks, sequence and hashes. */
export type Draft = { readonly [T in EventType]: { readonly type: T; readonly body: Bodies[T] } }[EventType];

/** One aircraft as this phone holds it. */
export interface AircraftEntry {
  readonly registration: string;
  readonly state: AircraftState;
  /** The book in force; `null` when none was adopted or its text does not read. */
  readonly book: Book | null;
  readonly bookFaults: readonly BookFault[];
  /** Events of this phone that the server has not acknowledged. */
  readonly toSend: number;
  /**
   * Entries kept apart, with the reason: those the server did not take into the ledger, and those that reached this
   * phone damaged. They stay on this phone and are never dropped. At most 200 of the first kind are listed.
   */
  readonly quarantined: readonly { readonly id: string; readonly reason: string }[];
  /**
   * What was answered on walks long past, when it is at the server and not on this phone. Nothing that a verdict rests
   * on is among it.
   */
  readonly older?: {
    /** Everything since this moment is here, ISO 8601 with offset. */
    readonly since: string;
    /** How many entries were made before it, needed ones among them. */
    readonly entries: number;
    /** Something came in late that may need more of it, and the server has not been asked yet. */
    readonly inDoubt: boolean;
  };
}

/** What the title block says of keeping and sending. */
export interface KeepStatus {
  /** Every entry shown is in a committed, strict IndexedDB transaction. */
  readonly toSend: number;
  /** Photos of this phone that the server does not have yet; they travel after their entries. */
  readonly photosToSend: number;
  /** Outcome of the last exchange with the server, never `navigator.onLine`. */
  readonly server: "never-reached" | "reached" | "out-of-reach";
  readonly lastReachedAt_ms: number | null;
  /** What the last exchange could not do, in one sentence for a person; `null` when it did everything. */
  readonly trouble: string | null;
  /** This device's clock minus the server's, when measured. */
  readonly clockOffset_ms: number | null;
  /** Whether the browser promised not to clear this storage. */
  readonly persisted: boolean | null;
  /** A newer version of the app waits to be taken up. */
  readonly updateWaiting: boolean;
  /** The app itself could not be kept on this device: without a net it does not open. */
  readonly needsNet: boolean;
}

export interface KeepSnapshot {
  readonly phase: "opening" | "ready" | "cannot-open";
  /** Why the storage cannot be opened, and what to do, when it cannot. */
  readonly openError: string | null;
  readonly people: readonly Author[];
  /** Who holds the phone. `null` before the first run is done. */
  readonly person: Author | null;
  readonly aircraft: ReadonlyMap<string, AircraftEntry>;
  readonly status: KeepStatus;
}

/** Thrown when something could not be kept. Nothing of it is kept then; everything kept before is untouched. */
export class NotKept extends Error {
  override readonly name = "NotKept";
  /** `full`: the phone has no room. `gone`: the storage was taken away and could not be reopened. */
  readonly reason: "full" | "gone" | "other";
  constructor(reason: "full" | "gone" | "other", message: string) {
    super(message);
    this.reason = reason;
  }
}

/** A picture as it was taken, and what it shows. */
export interface PhotoToKeep {
  readonly subject: Subject;
  readonly file: Blob;
}

/** A picture of what right looks like, that a check of a book names by its hash. */
export interface BookPicture {
  readonly sha256: string;
  readonly mediaType: "image/jpeg" | "image/png" | "image/webp";
  readonly bytes: ArrayBuffer;
}

/** What this phone keeps, and how it gets to the server. One per page, made by `openKeep`. */
export interface Keep {
  subscribe(onChange: () => void): () => void;
  snapshot(): KeepSnapshot;
  /**
   * Keeps the drafts as events in one strict transaction; resolves when it has committed and the snapshot has them.
   *
   * @param committed shows a person that it is kept; the snapshot changes once that has ended, so that what follows
   *   from the events is not worked out before they are seen to be kept
   * @param photo a picture to be made small and kept with them, all or nothing
   * @throws {NotKept} @throws {Error} when the picture is none
   */
  append(
    registration: string,
    drafts: readonly Draft[],
    committed?: () => Promise<void>,
    photo?: PhotoToKeep,
  ): Promise<readonly LedgerEvent[]>;
  /** Makes a picture small before it is to be kept, so that nobody waits for that then. What goes wrong is told then. */
  preparePhoto(file: Blob): void;
  /** Shrinks a picture on the phone and keeps it with its event. @throws {NotKept} @throws {Error} when it is no picture */
  attachPhoto(registration: string, subject: Subject, file: Blob): Promise<void>;
  photo(sha256: string): Promise<Blob | null>;
  /**
   * Makes a picture small and keeps it for a book that will name it. @returns its SHA-256, for the check's `photo`
   *
   * @throws {NotKept} @throws {Error} when it is no picture
   */
  keepBookPicture(registration: string, file: Blob): Promise<string>;
  /**
   * Reads a book; when it is right, adopts it (the aircraft is added when it is new).
   *
   * @param pictures what right looks like, as the book's checks name them; each is kept by its hash, which was checked
   * @throws {NotKept}
   */
  adoptBook(
    text: string,
    fileName: string,
    pictures?: readonly BookPicture[],
  ): Promise<{ readonly registration: string } | { readonly faults: readonly BookFault[] }>;
  /** Books in the making, on this phone alone. */
  readonly drafts: BookDrafts;
  introduce(person: { readonly name: string; readonly role: Author["role"] }): Promise<Author>;
  choosePerson(id: string): Promise<void>;
  /**
   * Brings what was answered on walks long past onto this phone, the latest of it first. What has come stays when the
   * rest does not.
   *
   * @throws {Error} with a sentence for a person, when the server is out of reach or `signal` ends it
   */
  fetchOlder(
    registration: string,
    about?: {
      /** How many entries to go back by; all of them when left out. */
      readonly most?: number;
      readonly signal?: AbortSignal;
      readonly onProgress?: (left: number) => void;
    },
  ): Promise<void>;
  /** Every entry of one aircraft that is on this phone, in ledger order; withdrawn ones are among them. */
  entries(registration: string): Promise<readonly LedgerEvent[]>;
  /** Everything of one aircraft as JSON Lines, for a file or the share sheet. @throws {Error} when not all of it is here */
  exportLedger(registration: string): Promise<Blob>;
  /** Asks the browser not to clear this storage; call from a tap. */
  askToPersist(): Promise<boolean>;
  /** Takes up the waiting version; reloads the page. */
  takeUpdate(): void;
  /** Pushes and pulls now. */
  exchange(): Promise<void>;
}
