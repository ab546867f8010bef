import { nextReliefEnd_ms, reliefsEnded } from "@witnessmark/assess";
import { useEffect, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { clockTime } from "../../words/dates.ts";
import "./relief-ended.css";

interface ReliefEndedProps {
  readonly open: OpenAircraft;
  /** When the walk began, ISO 8601. */
  readonly since: string;
}

/** A timer of a browser counts no further than this; it is set again then. */
const LONGEST_ms = 2_000_000_000;

/** The moment, looked at again when a relief ends by its last day. */
function useMoment({ state }: OpenAircraft, offset_min: number): number {
  const [now_ms, setNow_ms] = useState(() => Date.now());
  const next_ms = nextReliefEnd_ms(state, now_ms, offset_min);
  useEffect(() => {
    if (next_ms === undefined) return;
    const wait_ms = Math.min(LONGEST_ms, Math.max(0, next_ms - Date.now()));
    const timer = setTimeout(() => setNow_ms(Date.now()), wait_ms);
    return () => clearTimeout(timer);
  }, [next_ms]);
  return Math.max(now_ms, Date.now());
}

/** Says at once that a relief ended while somebody walks: what was allowed when the walk began is not any more. */
export function ReliefEnded({ open, since }: ReliefEndedProps) {
  const offset_min = -new Date().getTimezoneOffset();
  const now_ms = useMoment(open, offset_min);
  const ended = reliefsEnded(open.state, Date.parse(since), now_ms, offset_min);
  if (ended.length === 0) return null;
  return (
    <div role="alert">
      {ended.map(({ discrepancy, relief, at_ms, why }) => (
        <a
          key={relief.id}
          className="relief-ended"
          href={href({ at: "discrepancy", registration: open.registration, discrepancy: discrepancy.id })}
        >
          <Mark status="stop" size_px={28} silent />
          <span>
            <b>The relief has ended: {discrepancy.words.replace(/[.]$/, "")}</b>
            {why === undefined
              ? `${relief.basis}: its last day was over at ${clockTime(at_ms)}.`
              : `${relief.basis}, ended at ${clockTime(at_ms)}: ${why.replace(/[.]$/, "")}.`}{" "}
            It stops the flight until it is put right or relieved again.
          </span>
        </a>
      ))}
    </div>
  );
}
