import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { PhotoStrip } from "../../frame/photo-strip.tsx";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { Working } from "../decide/working.tsx";
import { DiscrepancyActs } from "./discrepancy-acts.tsx";
import { lifeOf } from "./discrepancy-life.ts";
import { Growth } from "./growth.tsx";
import { NewDiscrepancy } from "./new-discrepancy.tsx";
import { Placard } from "./placard.tsx";
import { WhereItIs } from "./where-it-is.tsx";
import { whyNoRelief } from "./why-it-stops.ts";
import "../decide/decide.css";
import "./record.css";

interface DiscrepancyScreenProps {
  readonly open: OpenAircraft;
  readonly id: string;
}

/** One discrepancy: what and where, what it means for flight, everything that became of it, and what can be done. */
export function DiscrepancyScreen({ open, id }: DiscrepancyScreenProps) {
  const { registration, state } = open;
  const found = state.discrepancies.get(id);
  const under = id === "new" ? "A new discrepancy" : "Discrepancy";
  return (
    <AircraftFrame open={open} sheet="record" title="Record" under={under} className="record">
      <main className="record-one">
        <a className="back-row" href={href({ at: "record", registration })}>
          Back to the record
        </a>
        {id === "new" ? (
          <NewDiscrepancy open={open} />
        ) : found === undefined ? (
          <p className="record-none">
            This discrepancy is not kept here. It may be on another phone and come with the next exchange.
          </p>
        ) : (
          <One open={open} id={id} />
        )}
      </main>
    </AircraftFrame>
  );
}

function One({ open, id }: DiscrepancyScreenProps) {
  const discrepancy = open.state.discrepancies.get(id);
  if (discrepancy === undefined) return null;
  // one that is open has a verdict of its own, one that two phones closed differently another
  const verdict = open.assessment.verdicts.find(
    (each) => each.id === `discrepancy:${id}` || each.id === `disagreement:${id}`,
  );
  const repeat = open.assessment.verdicts.find((each) => each.id === `repeat:${id}`);
  const status = verdict?.status ?? (discrepancy.isOpen ? "stop" : "clear");
  const why = whyNoRelief(discrepancy, verdict);
  const photos = open.state.photos.filter(
    ({ subject }) => subject.kind === "discrepancy" && subject.id === id,
  );
  return (
    <>
      <div className={`one-head row-${status}`}>
        <WhereItIs open={open} discrepancy={discrepancy} status={status} />
        <div>
          <span className="discrepancy-head">
            <Mark status={status} size_px={28} />
            <h2>{verdict?.title ?? discrepancy.words}</h2>
          </span>
          <p>
            {verdict?.says ?? (discrepancy.isOpen ? discrepancy.words : "Closed: it stands in the past.")}
          </p>
          {why === undefined ? null : (
            <p>
              <strong>{why}</strong>
            </p>
          )}
        </div>
      </div>
      <Growth book={open.book} discrepancy={discrepancy} />
      {photos.length === 0 ? null : <PhotoStrip photos={photos} about={discrepancy.words} />}
      {repeat === undefined ? null : (
        <section className="one-section">
          <h3>
            {repeat.title}, {repeat.margin?.text}
          </h3>
          <p>{repeat.says}.</p>
        </section>
      )}
      {verdict === undefined ? null : <Working verdict={verdict} />}
      <Placard open={open} discrepancy={discrepancy} />
      <section className="one-section">
        <h3>What became of it</h3>
        <ol className="life">
          {lifeOf(discrepancy, open.book).map((step) => (
            <li key={step.key}>
              <b>{step.title}</b>
              <span>{step.when}</span>
              <p>{step.words}</p>
            </li>
          ))}
        </ol>
      </section>
      <DiscrepancyActs open={open} discrepancy={discrepancy} />
    </>
  );
}
