import type { Standing } from "@witnessmark/assess";
import type { Decision } from "@witnessmark/ledger";
import { decisionTitle, ended } from "@witnessmark/sheet";
import { useEffect, useRef } from "react";
import { deviceWord } from "../../frame/device-word.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";
import { clockTime, whenShort } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { ROLE_NAMES } from "../../words/people.ts";

interface DecisionJointProps {
  readonly open: OpenAircraft;
  readonly decision: Decision;
  readonly standing: Standing;
  /** It was signed on this screen just now. */
  readonly signedHere: boolean;
}

/** The stripe painted across evidence and signature; out of line once what it rests on has moved. */
export function DecisionJoint({ open, decision, standing, signedHere }: DecisionJointProps) {
  const { registration, entry } = open;
  const ref = useRef<HTMLElement>(null);
  useEffect(() => {
    // what was just signed is what one wants to see
    if (signedHere) ref.current?.focus();
  }, [signedHere]);
  const signed_ms = Date.parse(decision.recordedAt);
  const now_ms = Date.now();
  const signed = `Signed ${whenShort(signed_ms, now_ms)}`;
  const checks = decision.restsOn.filter(
    ({ verdict, status }) => verdict.startsWith("check:") && status !== "open",
  ).length;
  const flight =
    decision.flight === null
      ? ""
      : `${decision.flight.from} to ${decision.flight.to}, ${clockTime(Date.parse(decision.flight.offBlocks))}. `;
  const kept = entry.toSend > 0 ? "Kept, not yet all sent." : "On the server.";
  const worse = standing.stands ? [] : standing.worse;
  return (
    <section className="decided" aria-label="The last decision" ref={ref} tabIndex={-1}>
      <div className={standing.stands ? "joint" : "joint joint-lapsed"}>
        <svg className="joint-stripe" aria-hidden="true" preserveAspectRatio="none" viewBox="0 0 37 100">
          {standing.stands ? (
            <rect className="wm-stripe" x="0" y="0" width="15" height="100" />
          ) : (
            <>
              <rect className="wm-stripe" x="22" y="0" width="15" height="56" />
              <rect className="wm-stripe" x="0" y="57" width="15" height="43" />
            </>
          )}
        </svg>
        <div className="joint-half">
          {standing.stands ? (
            <>
              <h2>{decisionTitle(decision)}</h2>
              <p>
                {flight}
                {tally(checks, "check")} looked at.
                {decision.answer === "not-going" || standing.until === undefined
                  ? ""
                  : ` Holds until ${whenShort(standing.until.at_ms, now_ms)}.`}
              </p>
              {decision.words === undefined ? null : <p>Why: {ended(decision.words)}</p>}
              {decision.answer === "not-going" ? (
                <p>It is on the record. To decide anew, sign again: the last one counts.</p>
              ) : null}
            </>
          ) : (
            <>
              <h2 className="caution">{firstSentence(standing.because)}</h2>
              <p>{restOf(standing.because)}</p>
            </>
          )}
        </div>
        <div className="joint-half">
          <h2>{ROLE_NAMES[decision.author.role]}</h2>
          <p>
            {decision.author.name}. {signed}
            {standing.stands
              ? ` on this ${deviceWord()}. ${kept}`
              : `, lapsed ${whenShort(standing.since_ms, now_ms)}.`}
          </p>
        </div>
      </div>
      <div className="decided-acts">
        {standing.stands || worse.length === 0 ? null : (
          <a className="button filled tall full" href={href({ at: "walk", registration })}>
            Look again{worse.length === 0 ? "" : `, ${tally(worse.length, "thing")}`}
          </a>
        )}
        <a className="button tall full" href={href({ at: "decision", registration, decision: decision.id })}>
          The sheet
        </a>
      </div>
    </section>
  );
}

const firstSentence = (text: string) => text.split(/(?<=\.)\s/)[0]?.replace(/\.$/, "") ?? text;
const restOf = (text: string) =>
  text
    .split(/(?<=\.)\s/)
    .slice(1)
    .join(" ");
