import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { isoWithOffset } from "../../words/dates.ts";
import { KeepRow, useKeptHere } from "./keep-and-undo.tsx";

/** Where it stands, and how it is secured: the next walk opens with it. */
export function ParkedForm({ open }: { readonly open: OpenAircraft }) {
  const { registration, state } = open;
  const kept = useKeptHere(registration);
  const last = state.parkings.at(-1);
  const [where, setWhere] = useState("");
  const [secured, setSecured] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const wrong =
      where.trim() === "" ? "Say where it stands." : secured.trim() === "" ? "Say how it is secured." : null;
    setFault(wrong);
    if (wrong !== null) return;
    const body = { at: isoWithOffset(Date.now()), where: where.trim(), secured: secured.trim() };
    if (await kept.keepAll([{ type: "aircraft.parked", body }], `Kept: ${body.where}.`)) {
      setWhere("");
      setSecured("");
    }
  };
  return (
    <section>
      <h2>Where it stands</h2>
      {last === undefined ? null : (
        <button
          type="button"
          className="quiet"
          onClick={() => {
            setWhere(last.where);
            setSecured(last.secured);
          }}
        >
          As the last time: {last.where}
        </button>
      )}
      <form className="after-form" onSubmit={(event) => void send(event)} noValidate>
        <label className="field">
          <span>Where</span>
          <input
            value={where}
            onChange={(event) => setWhere(event.target.value)}
            maxLength={200}
            autoComplete="off"
          />
        </label>
        <label className="field">
          <span>How it is secured</span>
          <input
            value={secured}
            onChange={(event) => setSecured(event.target.value)}
            maxLength={200}
            autoComplete="off"
          />
        </label>
        <KeepRow kept={kept} act="Keep where it stands" fault={fault} />
      </form>
    </section>
  );
}
