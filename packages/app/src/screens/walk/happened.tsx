import { reopenedBy } from "@witnessmark/assess";
import type { HappeningKind } from "@witnessmark/book";
import { useMemo, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { clockTime, fieldTime, isoWithOffset, momentOfField, whenShort } from "../../words/dates.ts";
import { countOf, tally } from "../../words/figures.ts";
import { HAPPENING_NAMES, HAPPENINGS } from "../../words/happenings.ts";
import "./happened.css";

const AGO_min = [0, 10, 30, 60] as const;

interface Kept {
  readonly kind: HappeningKind;
  readonly at_ms: number;
  /** The event that said so. */
  readonly event: string;
}

/** What happened to the aircraft, when; and what it makes untrue. */
export function Happened({ open }: { readonly open: OpenAircraft }) {
  const [kept, setKept] = useState<Kept | null>(null);
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="Something happened">
      <main className="happened">
        {kept === null ? (
          <Ask open={open} onKept={setKept} />
        ) : (
          <Reopened open={open} {...kept} onAnother={() => setKept(null)} />
        )}
      </main>
    </AircraftFrame>
  );
}

interface AskProps {
  readonly open: OpenAircraft;
  readonly onKept: (kept: Kept) => void;
}

function Ask({ open, onKept }: AskProps) {
  const { book, state, registration } = open;
  const keep = useKeep();
  const keeping = useKeeping();
  const [kind, setKind] = useState<HappeningKind | null>(null);
  const [ago_min, setAgo] = useState<number | null>(0);
  const [typed, setTyped] = useState(() => fieldTime(Date.now()));
  const [words, setWords] = useState("");
  const [asked, setAsked] = useState(false);
  // to the second, so that what is shown is what is kept
  const opened_ms = useMemo(() => Math.floor(Date.now() / 1000) * 1000, []);
  const at_ms = ago_min === null ? momentOfField(typed) : opened_ms - ago_min * 60_000;
  const would = useMemo(
    () => (kind === null || at_ms === null ? null : reopenedBy(book, state, kind, at_ms)),
    [book, state, kind, at_ms],
  );
  const count = would === null ? 0 : would.checks.length + would.groundGear.length;
  const save = async () => {
    setAsked(true);
    if (kind === null || at_ms === null) return;
    await keeping.keep(async () => {
      const [said] = await keep.append(registration, [
        {
          type: "happening.recorded",
          body: {
            happening: kind,
            at: isoWithOffset(at_ms),
            ...(words.trim() === "" ? {} : { words: words.trim() }),
          },
        },
      ]);
      if (said !== undefined) onKept({ kind, at_ms, event: said.id });
    });
  };
  return (
    <>
      <div className="happened-in">
        <a className="back-row" href={href({ at: "walk", registration })}>
          Back to the walk
        </a>
        <h2 className="heading">What happened to {registration}?</h2>
        <fieldset className="choices">
          <legend className="out-of-sight">What happened</legend>
          {HAPPENINGS.map((each) => (
            <button key={each} type="button" aria-pressed={each === kind} onClick={() => setKind(each)}>
              {HAPPENING_NAMES[each]}
            </button>
          ))}
        </fieldset>
        <fieldset className="choices when-choices">
          <legend className="legend">When</legend>
          {AGO_min.map((ago) => (
            <button key={ago} type="button" aria-pressed={ago === ago_min} onClick={() => setAgo(ago)}>
              {ago === 0 ? "Just now" : ago < 60 ? `${ago} min ago` : "1 h ago"}
            </button>
          ))}
          <button type="button" aria-pressed={ago_min === null} onClick={() => setAgo(null)}>
            Another time
          </button>
        </fieldset>
        {ago_min === null ? (
          <label className="field">
            <span>Day and time, local</span>
            <input type="datetime-local" value={typed} onChange={(event) => setTyped(event.target.value)} />
          </label>
        ) : null}
        <label className="field">
          <span>In your words, if need be</span>
          <input value={words} onChange={(event) => setWords(event.target.value)} maxLength={300} />
        </label>
      </div>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <p className={`verdict ${would !== null && count === 0 ? "clear" : "open"}`} role="status">
        <Mark status={would !== null && count === 0 ? "clear" : "open"} size_px={28} />
        <span>
          {would === null
            ? asked
              ? "Choose what happened first, and when."
              : "Some looks no longer count after it"
            : count === 0
              ? "Everything that was seen still counts"
              : `${countOf(count, "look")} would no longer count`}
        </span>
      </p>
      <div className="answers one">
        <button type="button" className="yes filled" aria-busy={keeping.busy} onClick={() => void save()}>
          Keep it
        </button>
      </div>
    </>
  );
}

interface ReopenedProps extends Kept {
  readonly open: OpenAircraft;
  readonly onAnother: () => void;
}

function Reopened({ open, kind, at_ms, event, onAnother }: ReopenedProps) {
  const { book, state, registration } = open;
  const keep = useKeep();
  const keeping = useKeeping();
  const undo = async () => {
    const body = { event, why: "Undone by the one who said it" };
    if (await keeping.keep(() => keep.append(registration, [{ type: "event.withdrawn", body }]))) onAnother();
  };
  const found = useMemo(() => reopenedBy(book, state, kind, at_ms), [book, state, kind, at_ms]);
  const count = found.checks.length + found.groundGear.length;
  return (
    <>
      <div className="happened-in">
        <header className="happened-head">
          <h2 className="heading" tabIndex={-1}>
            {HAPPENING_NAMES[kind]}, {whenShort(at_ms, Date.now())}
          </h2>
          <button type="button" aria-busy={keeping.busy} onClick={() => void undo()}>
            Undo
          </button>
        </header>
        <p className="happened-text">
          {count === 0
            ? "Kept. Everything that was seen still counts."
            : `Kept. ${countOf(count, "look")} from before ${clockTime(at_ms)} no longer ${count === 1 ? "counts" : "count"}:`}
        </p>
        <ul className="step-list">
          {found.checks.map((check) => (
            <li key={check.id}>
              <a href={href({ at: "walk", registration, step: { kind: "check", id: check.id } })}>
                <Mark status="open" size_px={24} />
                <b>{book.points.get(check.point)?.name ?? check.title}</b>
                <span>{check.title}</span>
              </a>
            </li>
          ))}
          {found.groundGear.map((item) => (
            <li key={item.id}>
              <a href={href({ at: "walk", registration, step: { kind: "ground-gear", id: item.id } })}>
                <Mark status="open" size_px={24} />
                <b>{item.name}</b>
                <span>Count it again</span>
              </a>
            </li>
          ))}
        </ul>
      </div>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <div className="answers two">
        <button type="button" onClick={onAnother}>
          Something else
        </button>
        <a className="filled" href={href({ at: "walk", registration })}>
          {count === 0 ? "Back to the walk" : `Look again, ${tally(count, "look")}`}
        </a>
      </div>
    </>
  );
}
