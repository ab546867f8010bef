import { dueForecast, localDayOf, type TimedFigure } from "@witnessmark/assess";
import type { Counter } from "@witnessmark/book";
import { type FormEvent, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { dayMonth, longDay } from "../../words/dates.ts";
import { figure, tally } from "../../words/figures.ts";
import { Working } from "../decide/working.tsx";
import { ExperienceForm } from "./experience-form.tsx";
import { RunsOutRule } from "./runs-out-rule.tsx";
import { useTimed } from "./what-runs-out.tsx";
import "../decide/decide.css";
import "./record.css";

interface TimedScreenProps {
  readonly open: OpenAircraft;
  readonly id: string;
}

/** One thing that runs out: until when, why, what was done about it, and a form to write down that it was done. */
export function TimedScreen({ open, id }: TimedScreenProps) {
  const { registration } = open;
  const found = useTimed(open).find(({ item }) => item.id === id);
  const verdict = open.assessment.verdicts.find((each) => each.id === `timed:${id}`);
  return (
    <AircraftFrame open={open} sheet="record" title="Record" under="What runs out" className="record">
      <main className="record-one">
        <a className="back-row" href={href({ at: "record", registration, part: "timed" })}>
          Back to what runs out
        </a>
        {found === undefined ? (
          <p className="record-none">Nothing of this name is followed for {registration}.</p>
        ) : (
          <>
            <div className={`one-head timed-head row-${verdict?.status ?? "open"}`}>
              <div>
                <span className="discrepancy-head">
                  <Mark status={verdict?.status ?? "open"} size_px={28} />
                  <h2>{found.item.name}</h2>
                  <b className={verdict?.status ?? "open"}>{verdict?.margin?.text ?? ""}</b>
                </span>
                <p>{verdict?.says}</p>
                <p className="record-small">{found.item.why}</p>
              </div>
            </div>
            <div className="timed-rule">
              <RunsOutRule figure={found} />
            </div>
            <Forecast open={open} figure={found} />
            {verdict === undefined ? null : <Working verdict={verdict} />}
            <Done open={open} id={id} />
            {found.item.counts === undefined ? (
              <DoneForm open={open} id={id} counters={countersOf(open, id)} />
            ) : (
              <ExperienceForm open={open} />
            )}
          </>
        )}
      </main>
    </AircraftFrame>
  );
}

/** When what is left will be used up, by how the aircraft was used: for planning, and never the limit itself. */
function Forecast({
  open,
  figure: { nearest },
}: {
  readonly open: OpenAircraft;
  readonly figure: TimedFigure;
}) {
  if (nearest?.by !== "counter") return null;
  const now_ms = Date.now();
  const today = localDayOf(now_ms, -new Date(now_ms).getTimezoneOffset());
  const readings = open.state.counters.get(nearest.counter.id) ?? [];
  const forecast = dueForecast(nearest, readings, today, now_ms);
  if (forecast === undefined) return null;
  const { expected, earliest, latest, spans } = forecast;
  const range =
    earliest === latest
      ? ""
      : `, ${dateOf(earliest)} if as busy as at its busiest, ${latest === undefined ? "not for years" : dateOf(latest)} if as quiet as at its quietest`;
  return (
    <p className="record-small timed-forecast">
      Used as in the last {tally(spans, "month")}, about {dateOf(expected)}
      {range}. The figure above is what counts.
    </p>
  );
}

const dateOf = (date: string): string => longDay(new Date(`${date}T12:00`).getTime()).replace(/^\w+ /, "");

/** The counters that an item runs by. */
function countersOf({ book, state }: OpenAircraft, id: string): readonly Counter[] {
  const item = book.timedItems.find((each) => each.id === id) ?? state.timedAdded.get(id)?.item;
  const ids = new Set(item?.limits.flatMap((limit) => (limit.by === "counter" ? [limit.counter] : [])));
  return book.counters.filter((counter) => ids.has(counter.id));
}

/** So many times at once. */
const TIMES_SHOWN = 6;

function Done({ open, id }: TimedScreenProps) {
  const done = (open.state.timedDone.get(id) ?? []).toReversed();
  return (
    <section className="one-section">
      <h3>Done before</h3>
      {done.length === 0 ? (
        <p className="record-none">
          Nobody has written down when it was last done. Until then its answer stays open.
        </p>
      ) : (
        <ol className="life">
          {done.slice(0, TIMES_SHOWN).map((each) => (
            <li key={each.event}>
              <b>{each.on}</b>
              <span>by {each.by}</span>
              <p>
                {[
                  ...Object.entries(each.counters).map(([counter, value]) => {
                    const known = open.book.counters.find((one) => one.id === counter);
                    return `${known?.name ?? counter} ${figure(value, 1)}${known?.unit === "h" ? " h" : ""}`;
                  }),
                  ...(each.reference === undefined ? [] : [each.reference]),
                  `written down ${dayMonth(Date.parse(each.recordedAt))} by ${each.author.name}`,
                ].join(", ")}
              </p>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}

interface DoneFormProps extends TimedScreenProps {
  readonly counters: readonly Counter[];
}

function DoneForm({ open, id, counters }: DoneFormProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [on, setOn] = useState(() => localDayOf(Date.now(), -new Date().getTimezoneOffset()));
  const [shown, setShown] = useState<Readonly<Record<string, string>>>(() =>
    Object.fromEntries(
      counters.map((counter) => [
        counter.id,
        String(open.state.counters.get(counter.id)?.at(-1)?.shown ?? ""),
      ]),
    ),
  );
  const [by, setBy] = useState("");
  const [reference, setReference] = useState("");
  const [said, setSaid] = useState<string | null>(null);
  const item = open.book.timedItems.find((each) => each.id === id);
  const today = localDayOf(Date.now(), -new Date().getTimezoneOffset());
  const faultOf = (): string | null => {
    if (on === "") return "Say on which day it was done.";
    if (on > today) return `${on} is still to come: write down what was done, not what will be.`;
    if (by.trim() === "") return "Say who did it, or who released it.";
    for (const counter of counters) {
      const value = Number(shown[counter.id]?.replace(",", "."));
      if (shown[counter.id]?.trim() === "" || !Number.isFinite(value) || value < 0) {
        return `${counter.name}: expected what it showed, as a number.`;
      }
    }
    return null;
  };
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const fault = faultOf();
    setSaid(fault);
    if (fault !== null) return;
    const kept = await keeping.keep(() =>
      keep.append(open.registration, [
        {
          type: "timedItem.done",
          body: {
            item: id,
            on,
            counters: Object.fromEntries(
              counters.map(({ id: counter }) => [counter, Number(shown[counter]?.replace(",", "."))]),
            ),
            by: by.trim(),
            ...(reference.trim() === "" ? {} : { reference: reference.trim() }),
            ...(item?.about === "pilot" ? { holder: open.person.id } : {}),
          },
        },
      ]),
    );
    if (kept) {
      setBy("");
      setReference("");
      setSaid("Kept.");
    }
  };
  return (
    <section className="one-section">
      <h3>Write down that it was done</h3>
      <form className="done-form" onSubmit={(event) => void send(event)} noValidate>
        <label className="field">
          <span>On</span>
          <input type="date" value={on} max={today} onChange={(event) => setOn(event.target.value)} />
        </label>
        {counters.map((counter) => (
          <label className="field" key={counter.id}>
            <span>
              {counter.name} then{counter.unit === "h" ? ", h" : ""}
            </span>
            <input
              inputMode="decimal"
              value={shown[counter.id] ?? ""}
              onChange={(event) => setShown({ ...shown, [counter.id]: event.target.value })}
            />
          </label>
        ))}
        <label className="field">
          <span>By, as on the work order</span>
          <input
            value={by}
            onChange={(event) => setBy(event.target.value)}
            maxLength={200}
            autoComplete="off"
          />
        </label>
        <label className="field">
          <span>Reference, if there is one</span>
          <input value={reference} onChange={(event) => setReference(event.target.value)} maxLength={400} />
        </label>
        {said === null ? null : (
          <p
            className={said === "Kept." ? "record-small" : "trouble"}
            role={said === "Kept." ? "status" : "alert"}
          >
            {said}
          </p>
        )}
        <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
        <button type="submit" className="button filled tall full" aria-busy={keeping.busy}>
          Keep it
        </button>
      </form>
    </section>
  );
}
