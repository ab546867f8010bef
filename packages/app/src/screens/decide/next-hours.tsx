import type { Turn } from "@witnessmark/assess";
import type { AheadState } from "../../ahead/use-ahead.ts";
import { Mark } from "../../marks/mark.tsx";
import { clockTime } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import "./ahead.css";

const SHOWN_AT_ONE_TIME = 3;

/** How the answer turns in the next 12 hours if nothing but time happens, with the reason at each turn. */
export function NextHours({ ahead }: { readonly ahead: AheadState }) {
  if (ahead.kind !== "known") return null;
  const { turns } = ahead.ahead.timeline;
  const moments = new Map<string, Turn[]>();
  for (const turn of turns) {
    const time = clockTime(turn.at_ms);
    moments.set(time, [...(moments.get(time) ?? []), turn]);
  }
  return (
    <section className="next-hours">
      <h2>The next 12 hours</h2>
      {turns.length === 0 ? (
        <p>Nothing turns by time alone.</p>
      ) : (
        <>
          <p>
            What you would be told at each time: leaving as planned until then, and leaving at that time once
            the planned one is past.
          </p>
          <ol>
            {[...moments].map(([time, here]) => (
              <li key={`${time} ${here[0]?.verdict}`}>
                <b>{time}</b>
                <ul>
                  {here.slice(0, SHOWN_AT_ONE_TIME).map((turn) => (
                    <li key={turn.verdict}>
                      <Mark status={turn.becomes} size_px={22} />
                      <span>
                        <b>{turn.title}</b>
                        {turn.becomes === "clear" ? ", clear from then:" : ""} {turn.says}
                      </span>
                    </li>
                  ))}
                  {here.length > SHOWN_AT_ONE_TIME ? (
                    <li>{tally(here.length - SHOWN_AT_ONE_TIME, "more look")} then too</li>
                  ) : null}
                </ul>
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}
