import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";

export function LoadScreen({ open }: { readonly open: OpenAircraft }) {
  const { flight, registration } = open;
  const under = flight === null ? "No flight planned" : `${flight.from} to ${flight.to}`;
  return (
    <AircraftFrame open={open} sheet="load" title="Load" under={under}>
      <main className="page">
        <section>
          <p>Say first which flight it is; then its people, bags and fuel are worked out here.</p>
          <a className="button filled tall full" href={href({ at: "decide", registration })}>
            Say which flight
          </a>
        </section>
      </main>
    </AircraftFrame>
  );
}
