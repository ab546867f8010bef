import { standing } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";
import { useMemo, useState } from "react";
import { useAhead } from "../../ahead/use-ahead.ts";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { useMinute } from "../../preferences/clock.ts";
import { useWide } from "../../preferences/wide.ts";
import { href } from "../../routes/route.ts";
import { latestWalk } from "../../walk/open-walk.ts";
import { clockTime } from "../../words/dates.ts";
import { DecisionJoint } from "./decision-joint.tsx";
import { FlightLine } from "./flight-line.tsx";
import { Holds } from "./holds.tsx";
import { NextHours } from "./next-hours.tsx";
import { PastDecisions } from "./past-decisions.tsx";
import { Sign } from "./sign.tsx";
import { adviceText } from "./summary-words.ts";
import { VerdictList } from "./verdict-list.tsx";
import { WhereItTips } from "./where-it-tips.tsx";
import "./decide.css";

const ORDER = ["stop", "caution", "open", "clear"] as const;

/** What stands between the aircraft and flight, why, and the decision. */
export function DecideScreen({ open }: { readonly open: OpenAircraft }) {
  const { assessment, registration, book, state, flight } = open;
  const [only, setOnly] = useState<Status | null>(null);
  const [signed, setSigned] = useState<string | null>(null);
  const minute = useMinute();
  const ahead = useAhead(open, minute);
  const decision = state.decisions.at(-1);
  const stands = useMemo(
    () =>
      decision === undefined
        ? undefined
        : standing(book, state, decision, Math.max(minute * 60_000, Date.now())),
    [book, state, decision, minute],
  );
  const under =
    flight === null
      ? "No flight planned"
      : `${flight.from} to ${flight.to}, ${clockTime(Date.parse(flight.offBlocks))}`;
  const wide = useWide();
  const joint =
    decision === undefined || stands === undefined ? null : (
      <DecisionJoint
        key={decision.id}
        open={open}
        decision={decision}
        standing={stands}
        signedHere={signed === decision.id}
      />
    );
  const summary = (
    <>
      <Summary open={open} />
      <div className="counts">
        {ORDER.map((status) => (
          <button
            key={status}
            type="button"
            aria-pressed={only === status}
            onClick={() => setOnly(only === status ? null : status)}
          >
            <Mark status={status} size_px={26} silent />
            <b>{assessment.counts[status]}</b>
            <span>{status}</span>
            <span className="out-of-sight">show only these</span>
          </button>
        ))}
      </div>
    </>
  );
  return (
    <AircraftFrame open={open} sheet="decide" title="Decide" under={under} className="decide">
      <main className="decide-main">
        <div className="decide-list">
          {wide ? null : joint}
          {summary}
          <VerdictList open={open} only={only} />
        </div>
        <div className="decide-side">
          {wide ? joint : null}
          {flight?.plan === undefined ? null : (
            <WhereItTips ahead={ahead} offBlocks_ms={Date.parse(flight.offBlocks)} />
          )}
          {/* a stop holds until somebody ends it */}
          {assessment.status === "stop" ? null : <Holds assessment={assessment} />}
          <NextHours ahead={ahead} />
          <FlightLine open={open} />
          {latestWalk(state) === undefined ? (
            <NoWalk registration={registration} />
          ) : (
            <Sign open={open} onSigned={setSigned} />
          )}
          <PastDecisions open={open} />
        </div>
      </main>
    </AircraftFrame>
  );
}

function Summary({ open }: { readonly open: OpenAircraft }) {
  const { assessment } = open;
  const { status } = assessment;
  return (
    <div className={`summary ${status}`}>
      <Mark status={status} size_px={56} />
      <div>
        <h2>{assessment.headline}</h2>
        <p>{adviceText(assessment)}</p>
      </div>
    </div>
  );
}

function NoWalk({ registration }: { readonly registration: string }) {
  return (
    <section className="sign">
      <p>Nothing was walked yet, so there is nothing to decide on.</p>
      <a className="button filled tall full" href={href({ at: "walk", registration })}>
        Start the walk
      </a>
    </section>
  );
}
