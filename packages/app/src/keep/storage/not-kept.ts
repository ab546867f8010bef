import { NotKept } from "../contract.ts";
import { CannotOpen, isDeadConnection } from "./open-database.ts";

/** What of `navigator.storage` is asked for. */
export type StorageEstimate = () => Promise<{ readonly usage?: number; readonly quota?: number }>;

export const isFull = (error: unknown): boolean =>
  error instanceof Error && error.name === "QuotaExceededError";

/** Says why something was not kept, so that a person knows what to do. */
export async function asNotKept(error: unknown, estimate: StorageEstimate): Promise<NotKept> {
  if (error instanceof NotKept) return error;
  if (isFull(error)) return new NotKept("full", await fullSentence(estimate));
  if (isDeadConnection(error) || error instanceof CannotOpen) {
    return new NotKept(
      "gone",
      "Not kept. The browser has taken the storage away. Reload the page, then answer again; what was kept before is still there.",
    );
  }
  const detail = error instanceof Error ? error.message : String(error);
  return new NotKept("other", `Not kept: ${detail}`);
}

async function fullSentence(estimate: StorageEstimate): Promise<string> {
  const sentence = "Not kept. Free some room, then answer again.";
  let known: { readonly usage?: number; readonly quota?: number };
  try {
    known = await estimate();
  } catch {
    return sentence; // the amount is an extra; without it the sentence still says what to do
  }
  if (known.usage === undefined || known.quota === undefined || known.quota <= 0) return sentence;
  return `${sentence} Witnessmark has used ${megabytes(known.usage)} of the ${megabytes(known.quota)} it may use on this phone.`;
}

const megabytes = (size_B: number): string => `${(size_B / 1_000_000).toFixed(1)} MB`;
