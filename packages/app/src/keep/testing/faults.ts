import "fake-indexeddb/auto";

/** What a full phone answers. */
export const full = () => new DOMException("no room", "QuotaExceededError");
/** What a phone answers that has taken the storage away. */
export const lost = () => new DOMException("Connection to Indexed Database server lost", "UnknownError");

export interface Fault {
  /** How many calls were seen. */
  readonly calls: () => number;
  mend(): void;
}

/** Makes puts fail: those that `isBad` says, counted from 1. */
export function failPuts(isBad: (call: number, store: string) => boolean, error = full): Fault {
  return failMethod(IDBObjectStore.prototype, "put", (call, store) => isBad(call, store.name), error);
}

/** Makes opening a transaction fail. */
export function failTransactions(isBad: (call: number) => boolean, error = lost): Fault {
  return failMethod(IDBDatabase.prototype, "transaction", isBad, error);
}

function failMethod<T, K extends keyof T>(
  prototype: T,
  name: K,
  isBad: (call: number, self: T) => boolean,
  error: () => Error,
): Fault {
  const real = prototype[name];
  if (typeof real !== "function") throw new Error(`${String(name)} is no method`);
  let calls = 0;
  const faulty = function (this: T, ...args: unknown[]): unknown {
    if (isBad(++calls, this)) throw error();
    return real.apply(this, args);
  };
  prototype[name] = faulty as T[K]; // the same method, which now and then fails
  return {
    calls: () => calls,
    mend: () => {
      prototype[name] = real;
    },
  };
}

/** The next write commits, and its page hears that the storage was lost. */
export function loseAfterCommit(): Fault {
  const real = IDBDatabase.prototype.transaction;
  let calls = 0;
  IDBDatabase.prototype.transaction = function (...args) {
    const transaction = real.apply(this, args);
    if (transaction.mode !== "readwrite" || ++calls > 1) return transaction;
    const listen = transaction.addEventListener.bind(transaction);
    const dispatch = transaction.dispatchEvent.bind(transaction);
    let onAbort: EventListenerOrEventListenerObject | null = null;
    transaction.addEventListener = (type: string, listener: EventListenerOrEventListenerObject) => {
      if (type === "abort") onAbort = listener;
      listen(type, listener);
    };
    transaction.dispatchEvent = (event) => {
      if (event.type === "complete" && typeof onAbort === "function") {
        Object.defineProperty(transaction, "error", { value: lost() });
        onAbort(event);
      }
      return dispatch(event);
    };
    return transaction;
  };
  return {
    calls: () => calls,
    mend: () => {
      IDBDatabase.prototype.transaction = real;
    },
  };
}
