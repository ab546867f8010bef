/** What a mechanic sends back of one discrepancy, as a file of their own device wrote it. */
export interface MechanicAnswer {
  readonly aircraft: string;
  readonly discrepancy: string;
  readonly how: "put-right" | "no-fault-found";
  /** What was done, with the day and the reference that it carries. */
  readonly words: string;
  readonly releasedBy: string;
}

/** The form of the file; another form is another number. */
export const ANSWER_FORM = 1;

/** A longer text is no answer to one discrepancy. */
const LONGEST = 20_000;
const LONGEST_WORDS = 1000;
const LONGEST_NAME = 200;

export type ReadAnswer =
  | { readonly ok: true; readonly answer: MechanicAnswer }
  | { readonly ok: false; readonly says: string };

const refuse = (says: string): ReadAnswer => ({ ok: false, says });

/**
 * Reads what a mechanic sent back, for one discrepancy of one aircraft. Nothing of it is kept by this: a person looks
 * at it first, and the entry is theirs.
 */
export function readAnswer(text: string, aircraft: string, discrepancy: string): ReadAnswer {
  if (text.length > LONGEST)
    return refuse("This file is too long to be an answer. Choose the file that was sent back.");
  let value: unknown;
  try {
    value = JSON.parse(text);
  } catch {
    return refuse("This file is no answer: it does not read as JSON. Choose the file that was sent back.");
  }
  if (typeof value !== "object" || value === null || !("witnessmarkAnswer" in value))
    return refuse("This file is no answer to a discrepancy. Choose the file that was sent back.");
  const said = value as Readonly<Record<string, unknown>>; // each part is judged below
  if (said["witnessmarkAnswer"] !== ANSWER_FORM)
    return refuse(
      "This answer has another form than this version knows. Take a newer version, or type what was done.",
    );
  if (said["aircraft"] !== aircraft)
    return refuse(
      `This answer is of ${textOr(said["aircraft"], "another aircraft")}, and this is ${aircraft}.`,
    );
  if (said["discrepancy"] !== discrepancy)
    return refuse(
      `This answer is of another discrepancy of ${aircraft}. Open that one, and take it in there.`,
    );
  const { how } = said;
  if (how !== "put-right" && how !== "no-fault-found")
    return refuse("The answer does not say whether it was put right or no fault was found.");
  const words = textOr(said["words"], "").trim();
  const releasedBy = textOr(said["releasedBy"], "").trim();
  if (words === "" || words.length > LONGEST_WORDS)
    return refuse(`The answer does not say what was done, in 1 to ${LONGEST_WORDS} letters.`);
  if (releasedBy === "" || releasedBy.length > LONGEST_NAME)
    return refuse(`The answer does not say who released it, in 1 to ${LONGEST_NAME} letters.`);
  return { ok: true, answer: { aircraft, discrepancy, how, words, releasedBy } };
}

const textOr = (value: unknown, other: string): string => (typeof value === "string" ? value : other);
