import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";
import { AddedForm } from "./added-form.tsx";
import { CountersForm } from "./counters-form.tsx";
import { FlightForm } from "./flight-form.tsx";
import { ParkedForm } from "./parked-form.tsx";
import "./after.css";

/** After the flight: what was flown, what the counters show, what was filled up, where it stands; all kept at once. */
export function AfterScreen({ open }: { readonly open: OpenAircraft }) {
  const { registration, book } = open;
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="After the flight">
      <main className="page after">
        <a className="back-row" href={href({ at: "walk", registration })}>
          Back to the walk
        </a>
        <FlightForm open={open} />
        {book.counters.length === 0 ? null : <CountersForm open={open} />}
        <AddedForm open={open} />
        <ParkedForm open={open} />
        <section>
          <h2>Then</h2>
          <p>
            The walk after the flight looks at what the flight may have changed, and counts the ground gear
            on.
          </p>
          <div className="after-then">
            <a className="button" href={href({ at: "discrepancy", registration, discrepancy: "new" })}>
              Something was not right in flight
            </a>
            <a className="button filled" href={href({ at: "start", registration })}>
              To the walk after the flight
            </a>
          </div>
        </section>
      </main>
    </AircraftFrame>
  );
}
