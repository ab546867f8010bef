import { useState } from "react";
import { newFlight, setFlight } from "../../flight/flight-in-hand.ts";
import { withSaid } from "../../flight/flight-said.ts";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { clockTime, fieldTime, isoWithOffset, momentOfField, shortDay, utcTime } from "../../words/dates.ts";

/** The flight that the decision is for, as far as the pilot says it: from, to, off blocks. */
export function FlightLine({ open }: { readonly open: OpenAircraft }) {
  const { flight, flightTrouble } = open;
  const [asking, setAsking] = useState(false);
  if (!asking) {
    return (
      <section className="flight-line">
        <div>
          <h2>{flight === null ? "No flight planned" : `${flight.from} to ${flight.to}`}</h2>
          <p>{flight === null ? "A decision may say which flight it is for." : whenText(flight.offBlocks)}</p>
          {flightTrouble === null ? null : (
            <p className="trouble" role="alert">
              {flightTrouble}
            </p>
          )}
        </div>
        <button type="button" className="button" onClick={() => setAsking(true)}>
          {flight === null ? "Say which" : "Change"}
        </button>
      </section>
    );
  }
  return <FlightForm open={open} onDone={() => setAsking(false)} />;
}

function whenText(offBlocks: string): string {
  const at_ms = Date.parse(offBlocks);
  return `Off blocks ${shortDay(at_ms)}, ${clockTime(at_ms)} (${utcTime(at_ms)})`;
}

function FlightForm({ open, onDone }: { readonly open: OpenAircraft; readonly onDone: () => void }) {
  const { registration, state, flight } = open;
  const [from, setFrom] = useState(flight?.from ?? "");
  const [to, setTo] = useState(flight?.to ?? "");
  const [when, setWhen] = useState(() =>
    fieldTime(flight === null ? nextHour() : Date.parse(flight.offBlocks)),
  );
  const [asked, setAsked] = useState(false);
  const at_ms = momentOfField(when);
  const whole = from.trim() !== "" && to.trim() !== "" && at_ms !== null;
  const save = () => {
    setAsked(true);
    if (!whole || at_ms === null) return;
    const said = {
      from: from.trim().toUpperCase(),
      to: to.trim().toUpperCase(),
      offBlocks: isoWithOffset(at_ms),
    };
    const named = newFlight(said);
    setFlight(registration, state, flight === null ? named : withSaid({ ...named, ...flight }, said));
    onDone();
  };
  const code = {
    maxLength: 40,
    autoComplete: "off",
    autoCapitalize: "characters",
    spellCheck: false,
  } as const;
  return (
    <form
      className="flight-form"
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
      noValidate
    >
      <h2>Which flight?</h2>
      <div className="flight-fields">
        <label className="field">
          <span>From</span>
          <input value={from} onChange={(event) => setFrom(event.target.value)} {...code} />
        </label>
        <label className="field">
          <span>To</span>
          <input value={to} onChange={(event) => setTo(event.target.value)} {...code} />
        </label>
        <label className="field flight-when">
          <span>Off blocks, local time</span>
          <input type="datetime-local" value={when} onChange={(event) => setWhen(event.target.value)} />
        </label>
      </div>
      {asked && !whole ? (
        <p className="trouble" role="alert">
          From, to and off blocks: all three, or none.
        </p>
      ) : null}
      <div className="row-of-buttons">
        <button type="submit" className="button filled">
          Set
        </button>
        <button
          type="button"
          className="button"
          onClick={() => {
            setFlight(registration, state, null);
            onDone();
          }}
        >
          No flight
        </button>
      </div>
    </form>
  );
}

const nextHour = () => Math.ceil((Date.now() + 20 * 60_000) / 3_600_000) * 3_600_000;
