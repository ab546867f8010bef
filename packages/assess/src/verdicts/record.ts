import type { Origin } from "@witnessmark/ledger";
import type { Verdict } from "../assessment.ts";
import { NOWHERE } from "../book-index.ts";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { HONEST_SKEW_MS, recorded_ms } from "../walk/moments.ts";
import { counted } from "../words/count-words.ts";
import { durationText } from "../words/duration-text.ts";
import { whenText } from "../words/local-time.ts";

const SOURCES = [{ title: "The ledger of this aircraft" }];

type Remark = Pick<Verdict, "id" | "title" | "says" | "evidence"> & {
  readonly lines?: Verdict["working"]["lines"];
};

const base = ({ lines, ...remark }: Remark) => ({
  ...remark,
  topic: "record" as const,
  working: { lines: lines ?? [] },
  sources: SOURCES,
});

function caution(remark: Remark, because: string, origin: Origin | undefined, words: string): Finding {
  return {
    verdict: { ...base(remark), status: "caution", because: [because] },
    severity: 2,
    place: NOWHERE,
    ...(origin === undefined
      ? {}
      : { cause: { key: remark.id, at_ms: recorded_ms(origin), words, reopens: false } }),
  };
}

/** Events of a type that this version does not know: they may matter, and nobody here can say. */
function unknownEvents({ state, clock }: Context): readonly Finding[] {
  const last = state.unknown.at(-1);
  if (last === undefined) return [];
  const types = [...new Set(state.unknown.map(({ type }) => type))].sort();
  return [
    caution(
      {
        id: "record:unknown-events",
        title: "Entries of a newer version",
        says: `${counted(state.unknown.length, "entry", "entries")} kept and not understood here: ${types.join(", ")}`,
        evidence: state.unknown.map(({ event }) => event),
      },
      "They may say something about the aircraft; look on the phone that made them, or bring this program up to date",
      last,
      `An entry of a newer version came ${whenText(recorded_ms(last), clock)}`,
    ),
  ];
}

/** Two different events under one id: one of them is not what its device made. */
function conflicts({ state }: Context): readonly Finding[] {
  if (state.conflicts.length === 0) return [];
  return [
    caution(
      {
        id: "record:conflicts",
        title: "Entries that contradict themselves",
        says: `${counted(state.conflicts.length, "entry", "entries")} came in two forms under one name`,
        evidence: [...new Set(state.conflicts.map(({ event }) => event))],
      },
      "One form of each was changed after it was made; verify the ledger",
      undefined,
      "",
    ),
  ];
}

/** The book that the walk began with is not the one that it is judged by. */
function bookChanged({ state, book, walk, clock }: Context): readonly Finding[] {
  if (walk === null || walk.bookSha256 === book.sha256) return [];
  const began = state.books.findLast(({ sha256 }) => sha256 === walk.bookSha256);
  const adopted = state.books.findLast(({ sha256 }) => sha256 === book.sha256);
  const from = began === undefined ? "another book" : `revision ${began.revision}`;
  return [
    caution(
      {
        id: "record:book-changed",
        title: "The book changed",
        says: `This walk began with ${from}; it is judged by revision ${book.revision}`,
        evidence: [walk.event, ...(adopted === undefined ? [] : [adopted.event])],
      },
      "What was looked at was looked at by the earlier text",
      adopted,
      adopted === undefined
        ? ""
        : `The book changed to revision ${book.revision} ${whenText(recorded_ms(adopted), clock)}`,
    ),
  ];
}

/** The book that it is judged by is not the one in force. */
function bookNotInForce({ state, book }: Context): readonly Finding[] {
  const inForce = state.books.at(-1);
  if (inForce === undefined || inForce.sha256 === book.sha256) return [];
  return [
    caution(
      {
        id: "record:book-not-in-force",
        title: "Not the book in force",
        says: `Judged by revision ${book.revision}; revision ${inForce.revision} is in force`,
        evidence: [inForce.event],
      },
      "A newer text of the book was adopted for this aircraft",
      inForce,
      `Revision ${inForce.revision} of the book was adopted`,
    ),
  ];
}

/** A phone whose looks are dated ahead of now: what it says of times cannot be relied on. */
function clockAhead({ inWalk, clock }: Context): readonly Finding[] {
  const ahead = new Map<string, Origin>();
  for (const answer of inWalk.latest.values()) {
    if (recorded_ms(answer) <= clock.now_ms + HONEST_SKEW_MS) continue;
    const before = ahead.get(answer.device);
    if (before === undefined || recorded_ms(answer) > recorded_ms(before)) ahead.set(answer.device, answer);
  }
  return [...ahead].map(([device, answer]) => {
    const by = durationText((recorded_ms(answer) - clock.now_ms) / 1000);
    return caution(
      {
        id: `record:clock:${device}`,
        title: "A clock is wrong",
        says: `The phone of ${answer.author.name} stood at least ${by} ahead of this one`,
        evidence: [answer.event],
      },
      "What came first, a look or what happened to the aircraft, may be told wrongly",
      answer,
      "A phone's clock stands ahead",
    );
  });
}

/** The last decision carries a name and no signature: its phone can keep no key. A remark, and no doubt about the aircraft. */
function withoutKey({ state, clock }: Context): readonly Finding[] {
  const decision = state.decisions.at(-1);
  if (decision === undefined || decision.signed) return [];
  const key = state.devices.get(decision.device)?.key;
  const why = key?.kind === "none" ? key.why : "the phone kept no key";
  return [
    {
      verdict: {
        ...base({
          id: "record:unsigned-decision",
          title: "The last decision has no signature",
          says: `${decision.author.name} decided ${whenText(recorded_ms(decision), clock)}; it carries a name only: ${why}`,
          evidence: [decision.event],
        }),
        status: "clear",
      },
      severity: 2,
      place: NOWHERE,
    },
  ];
}

/** What there is to remark about the record itself. */
export const recordVerdicts = (context: Context): readonly Finding[] => [
  ...unknownEvents(context),
  ...conflicts(context),
  ...bookChanged(context),
  ...bookNotInForce(context),
  ...clockAhead(context),
  ...withoutKey(context),
];
