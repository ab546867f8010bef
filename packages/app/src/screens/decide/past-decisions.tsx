import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";
import { clockTime, dayMonth, isSameDay } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";

/** Earlier decisions, latest first; each opens its sheet. */
export function PastDecisions({ open }: { readonly open: OpenAircraft }) {
  const past = open.state.decisions.slice(0, -1).toReversed();
  if (past.length === 0) return null;
  return (
    <section className="past">
      <h2>Past decisions</h2>
      <ul>
        {past.map((decision) => {
          const at_ms = Date.parse(decision.recordedAt);
          const flight = decision.flight === null ? "" : `${decision.flight.from} to ${decision.flight.to}, `;
          const cautions = decision.counts.caution + decision.counts.stop + decision.counts.open;
          return (
            <li key={decision.id}>
              <a href={href({ at: "decision", registration: open.registration, decision: decision.id })}>
                <b>{isSameDay(at_ms, Date.now()) ? clockTime(at_ms) : dayMonth(at_ms)}</b>
                <span>
                  {flight}
                  {decision.answer === "go" ? "go" : "not going yet"}
                  {cautions === 0 ? "" : `, ${tally(cautions, "thing")} not clear`}
                </span>
                <b>{decision.author.name}</b>
              </a>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
