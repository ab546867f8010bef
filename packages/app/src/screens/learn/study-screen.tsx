import { STANDING_CAUTION } from "@witnessmark/sheet";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { PhotoStrip } from "../../frame/photo-strip.tsx";
import { href } from "../../routes/route.ts";
import { useWalkPlan } from "../../walk/order/use-walk-plan.ts";
import { PrintTools } from "../sheet/print-tools.tsx";
import { faultWords } from "./explained.tsx";
import "../sheet/sheet-page.css";
import "../walk/left.css";
import "./learn.css";

/** Study sheets: the whole first walk of the day with what right looks like, why, and what goes wrong; for paper. */
export function StudyScreen({ open }: { readonly open: OpenAircraft }) {
  const { registration, book } = open;
  const plan = useWalkPlan(open, "first-of-day");
  return (
    <AircraftFrame open={open} sheet="aircraft" title="Learn" under="Study sheets" className="sheet-page">
      <main>
        <PrintTools back={href({ at: "learn", registration })} backTo="Back to learning" />
        <article className="paper study" aria-label="Study sheets">
          <h1>{book.aircraft.type}: what right looks like</h1>
          <p>
            {registration}, book revision {book.revision}. {STANDING_CAUTION} {book.notice}
          </p>
          {plan.stops.map((stop) => (
            <section key={stop.stance.id}>
              <h2>
                {stop.number}. {stop.stance.name}
              </h2>
              {stop.steps.map((step) =>
                step.kind === "check" ? (
                  <div className="study-check" key={step.id}>
                    <h3>
                      {book.points.get(step.check.point)?.name}: {step.check.title}
                    </h3>
                    <p>
                      {step.check.how} <b>{step.check.shouldBe}</b>
                    </p>
                    {step.check.photo === undefined ? null : (
                      <PhotoStrip
                        photos={[{ sha256: step.check.photo, recordedAt: "" }]}
                        about={`what right looks like: ${step.check.title}`}
                      />
                    )}
                    <p>
                      {step.check.why} If missed: {step.check.hazard.ifMissed}
                    </p>
                    {step.check.faults.length === 0 ? null : <p>Look for: {faultWords(step.check)}.</p>}
                  </div>
                ) : (
                  <div className="study-check" key={step.id}>
                    <h3>Ground gear: {step.item.name}</h3>
                    <p>
                      {step.item.why} Stowed in: {step.item.stowedIn.join(", ")}.
                    </p>
                  </div>
                ),
              )}
            </section>
          ))}
        </article>
      </main>
    </AircraftFrame>
  );
}
