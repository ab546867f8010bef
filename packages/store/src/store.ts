/**
 * One event as it came in, after it was read: `sound` when its shape and its hash hold, `unsound` otherwise. The
 * store does not judge events; it keeps them.
 */
export type Arrival =
  | {
      readonly kind: "sound";
      readonly id: string;
      readonly device: string;
      readonly deviceSeq: number;
      /** Canonical JSON of the whole event: kept to the letter, so that its hash stays valid. */
      readonly text: string;
    }
  | {
      readonly kind: "unsound";
      /** The id as far as one could be read; "" otherwise. */
      readonly id: string;
      readonly text: string;
      readonly reason: string;
    };

/** What became of one arrival. The order of the answers is the order of the arrivals. */
export type Outcome =
  | { readonly id: string; readonly outcome: "accepted" | "duplicate"; readonly ledgerSeq: number }
  | { readonly id: string; readonly outcome: "conflict" | "quarantined"; readonly reason: string };

export interface Appended {
  readonly epoch: string;
  /** Highest ledgerSeq of the aircraft; 0 when it has no events. */
  readonly head: number;
  readonly results: readonly Outcome[];
}

export interface KeptEvent {
  readonly ledgerSeq: number;
  /** Milliseconds since 1970 UTC, by the clock of the server that took it. */
  readonly receivedAt_ms: number;
  /** The text that was appended, to the letter. */
  readonly text: string;
}

export interface Page {
  readonly epoch: string;
  readonly head: number;
  /** In ledgerSeq order, without a hole. */
  readonly events: readonly KeptEvent[];
}

export interface PageAsked {
  /** Events with a higher ledgerSeq than this; 0 for the first page. */
  readonly after: number;
  /** Most events, 1 or more. */
  readonly limit: number;
  /** The page ends before this many bytes of text, but holds at least one event when there is one. */
  readonly most_B: number;
}

export interface AircraftHead {
  readonly aircraft: string;
  readonly head: number;
}

export interface QuarantinedEvent {
  readonly receivedAt_ms: number;
  readonly reason: string;
  readonly text: string;
}

export interface Photo {
  readonly mediaType: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
}

/** Everything of one operator. No call of it sees or changes anything of another. */
export interface OperatorStore {
  /**
   * Keeps a batch for one aircraft in one transaction that holds the aircraft's counter row, so that ledgerSeq has no
   * holes and a reader never skips an event that commits late. Committed when it resolves; nothing of it is kept when
   * it rejects.
   *
   * @throws {StoreError} `full`, `busy`, `unreachable`
   */
  append(aircraft: string, arrivals: readonly Arrival[], receivedAt_ms: number): Promise<Appended>;
  page(aircraft: string, asked: PageAsked): Promise<Page>;
  /** The id of the event at a ledgerSeq, or `null`: what a reader's place can be checked against. */
  idAt(aircraft: string, ledgerSeq: number): Promise<string | null>;
  /** Every aircraft with at least one event, by name. */
  heads(): Promise<readonly AircraftHead[]>;
  /** Per device, the highest deviceSeq without a hole before it. A device whose first event is missing is not in it. */
  devices(aircraft: string): Promise<ReadonlyMap<string, number>>;
  /** What was set aside, newest first, at most `limit` of them and about `most_B` bytes. */
  quarantine(aircraft: string, limit: number, most_B: number): Promise<readonly QuarantinedEvent[]>;
  /** Keeps a picture under its SHA-256 (hexadecimal). The caller has checked that the hash is right. */
  putPhoto(sha256: string, photo: Photo, receivedAt_ms: number): Promise<"stored" | "present">;
  getPhoto(sha256: string): Promise<Photo | null>;
  hasPhoto(sha256: string): Promise<boolean>;
  /**
   * Tells of new events, whichever process took them. It is a hint, at least once and soon; `page` is the truth.
   *
   * @returns call it to stop
   */
  watch(listener: (change: AircraftHead) => void): () => void;
}

export interface Store {
  readonly kind: "sqlite" | "postgresql";
  forOperator(operator: string): OperatorStore;
  /** Made with the database; made anew when an older copy was put in its place, as far as that can be seen. */
  epoch(): Promise<string>;
  /** Looks for damage: faults in plain words, none when it is sound. Reads everything; slow on a large database. */
  check(): Promise<readonly string[]>;
  close(): Promise<void>;
}
