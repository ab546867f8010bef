import type { Assessment } from "@witnessmark/assess";
import { capital } from "../../words/capital.ts";
import { momentShort } from "../../words/dates.ts";

/** Until when it holds by age, and what ends it sooner. */
export function Holds({ assessment }: { readonly assessment: Assessment }) {
  const { holdsUntil, verdicts } = assessment;
  const counts = new Map<string, number>();
  for (const verdict of verdicts) {
    if (verdict.topic !== "check" || (verdict.status !== "clear" && verdict.status !== "caution")) continue;
    for (const end of verdict.endsWith ?? []) counts.set(end, (counts.get(end) ?? 0) + 1);
  }
  const ends = [...counts].sort(([, a], [, b]) => b - a).map(([words]) => words);
  if (holdsUntil === undefined && ends.length === 0) return null;
  return (
    <section className="holds">
      <h2>
        {holdsUntil === undefined
          ? "Holds until something happens"
          : `Holds until ${momentShort(holdsUntil.at_ms, Date.now())}`}
      </h2>
      {holdsUntil === undefined ? null : <p>{capital(holdsUntil.because)}.</p>}
      {ends.length === 0 ? null : (
        <p>
          It lapses sooner if the aircraft is{" "}
          {ends.map((words, index) => (
            <span key={words}>
              {index === 0 ? "" : index === ends.length - 1 ? " or " : ", "}
              <b>{words}</b>
            </span>
          ))}
          .
        </p>
      )}
    </section>
  );
}
