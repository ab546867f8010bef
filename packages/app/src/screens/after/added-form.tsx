import type { UnitId } from "@witnessmark/engine";
import { UNITS, withSymbol } from "@witnessmark/engine";
import type { ServicedThing, ServicingKind } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import type { Draft } from "../../keep/contract.ts";
import { isoWithOffset } from "../../words/dates.ts";
import { understandFigure } from "../walk/understand-figure.ts";
import { KeepRow, useKeptHere } from "./keep-and-undo.tsx";

const THINGS: readonly {
  readonly of: ServicedThing;
  readonly name: string;
  readonly units: readonly UnitId[];
}[] = [
  { of: "fuel", name: "Fuel", units: ["L", "USgal", "kg", "lb"] },
  { of: "oil", name: "Oil", units: ["USqt", "L"] },
  { of: "hydraulic", name: "Hydraulic fluid", units: ["mL", "L", "USpt"] },
  { of: "oxygen", name: "Oxygen", units: ["psi", "bar"] },
  { of: "tyre", name: "A tyre", units: ["psi", "bar"] },
  { of: "strut", name: "A strut", units: ["psi", "bar", "mm"] },
  { of: "battery", name: "Battery", units: ["V"] },
  { of: "other", name: "Something else", units: ["L"] },
];
const KINDS: readonly { readonly what: ServicingKind; readonly name: string }[] = [
  { what: "refilled", name: "Filled up" },
  { what: "changed", name: "Changed" },
  { what: "adjusted", name: "Adjusted" },
  { what: "drained", name: "Drained" },
];

/** What was filled up, changed or drained: readings before it and after it are not one line. */
export function AddedForm({ open }: { readonly open: OpenAircraft }) {
  const { book, registration } = open;
  const kept = useKeptHere(registration);
  const [thing, setThing] = useState<ServicedThing | null>(null);
  const [what, setWhat] = useState<ServicingKind>("refilled");
  const [amount, setAmount] = useState("");
  const [unit, setUnit] = useState<UnitId>("L");
  const [check, setCheck] = useState("");
  const [words, setWords] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const found = THINGS.find(({ of }) => of === thing);
  const read = book.checks.filter((each) => each.reading !== undefined);
  const choose = (of: ServicedThing) => {
    setThing(of);
    setUnit(THINGS.find((each) => each.of === of)?.units[0] ?? "L");
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    if (found === undefined) return setFault("Choose what it was first.");
    const figure = amount.trim() === "" ? undefined : understandFigure(amount, unit, "1.5", { least: 0 });
    if (figure !== undefined && !figure.ok) return setFault(`${figure.message}.`);
    setFault(null);
    const at = isoWithOffset(Date.now());
    const drafts: Draft[] = [
      {
        type: "servicing.recorded",
        body: {
          at,
          what,
          of: found.of,
          ...(check === "" ? {} : { check }),
          ...(figure === undefined ? {} : { amount: figure.read }),
          ...(words.trim() === "" ? {} : { words: words.trim() }),
        },
      },
    ];
    // fuel that was put in may hold water: the drains are asked again
    if (found.of === "fuel" && what === "refilled")
      drafts.push({ type: "happening.recorded", body: { happening: "fuelled", at } });
    const how = KINDS.find((each) => each.what === what)?.name.toLowerCase() ?? what;
    const much = figure === undefined ? "" : `, ${withSymbol(String(figure.read.value), figure.read.unit)}`;
    if (await kept.keepAll(drafts, `Kept: ${found.name.toLowerCase()} ${how}${much}.`)) {
      setThing(null);
      setAmount("");
      setCheck("");
      setWords("");
    }
  };
  return (
    <section>
      <h2>Filled up or changed</h2>
      <form className="after-form" onSubmit={(event) => void send(event)} noValidate>
        <fieldset className="choices after-things">
          <legend className="out-of-sight">What</legend>
          {THINGS.map(({ of, name }) => (
            <button key={of} type="button" aria-pressed={of === thing} onClick={() => choose(of)}>
              {name}
            </button>
          ))}
        </fieldset>
        {found === undefined ? null : (
          <>
            <fieldset className="choices">
              <legend className="out-of-sight">What was done</legend>
              {KINDS.map((each) => (
                <button
                  key={each.what}
                  type="button"
                  aria-pressed={each.what === what}
                  onClick={() => setWhat(each.what)}
                >
                  {each.name}
                </button>
              ))}
            </fieldset>
            <div className="after-pair">
              <label className="field">
                <span>How much, if it is known</span>
                <input
                  inputMode="decimal"
                  autoComplete="off"
                  value={amount}
                  onChange={(event) => setAmount(event.target.value)}
                />
              </label>
              <label className="field">
                <span>In</span>
                <select
                  value={unit}
                  onChange={(event) => setUnit(found.units.find((id) => id === event.target.value) ?? unit)}
                >
                  {found.units.map((id) => (
                    <option key={id} value={id}>
                      {UNITS[id].symbol}
                    </option>
                  ))}
                </select>
              </label>
            </div>
            {found.of === "fuel" || read.length === 0 ? null : (
              <label className="field">
                <span>Whose readings begin anew with it</span>
                <select value={check} onChange={(event) => setCheck(event.target.value)}>
                  <option value="">None of the list</option>
                  {read.map((each) => (
                    <option key={each.id} value={each.id}>
                      {book.points.get(each.point)?.name ?? each.point}: {each.title}
                    </option>
                  ))}
                </select>
              </label>
            )}
            <label className="field">
              <span>In your words, if need be</span>
              <input value={words} onChange={(event) => setWords(event.target.value)} maxLength={400} />
            </label>
          </>
        )}
        <KeepRow kept={kept} act="Keep it" fault={fault} />
      </form>
    </section>
  );
}
