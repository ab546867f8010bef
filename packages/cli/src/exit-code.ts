/**
 * What the program's end says to other programs. Documented in docs/command-line.md; a change here is a change for them.
 */
export const EXIT = {
  /** Done; for `assess`: everything is clear. */
  done: 0,
  /** Faults were found in what was looked at: a book, a ledger, a decision that does not come out the same. */
  faults: 1,
  /** The command was not understood. */
  usage: 2,
  /** A file, a database or an aircraft could not be read or written. */
  unreadable: 3,
  /** It was stopped before it was through; what it had done by then stays. What a shell says of Ctrl-C: 128 and the signal. */
  stopped: 130,
  /** `assess`: the worst verdict is a caution. */
  caution: 10,
  /** `assess`: the worst verdict is open. */
  open: 11,
  /** `assess`: something stops the flight. */
  stop: 12,
} as const;
