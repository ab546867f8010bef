import type { Verdict } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";
import { ended } from "@witnessmark/sheet";
import { useMemo, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { PhotoStrip } from "../../frame/photo-strip.tsx";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { figure } from "../../words/figures.ts";
import { BookChange } from "./book-change.tsx";
import { PutRight } from "./put-right.tsx";
import { Working } from "./working.tsx";

interface VerdictListProps {
  readonly open: OpenAircraft;
  readonly only: Status | null;
}

/** How many clear verdicts stand open at the end of the list; those with a margin come first. */
const CLEAR_SHOWN = 3;
/** More open ones than this are folded: the drawing of the walk tells them better. */
const OPEN_SHOWN = 8;

/** Stop, caution, open, clear; the margin at the right, the working folded under each. */
export function VerdictList({ open, only }: VerdictListProps) {
  const { verdicts } = open.assessment;
  const groups = useMemo(() => {
    const of = (status: Status) => verdicts.filter((verdict) => verdict.status === status);
    const clear = of("clear");
    const withFigure = (verdict: Verdict) =>
      verdict.margin !== undefined && verdict.margin.unit !== "" ? 0 : 1;
    return {
      stop: of("stop"),
      caution: of("caution"),
      open: of("open"),
      clear: clear.toSorted((a, b) => withFigure(a) - withFigure(b)),
    };
  }, [verdicts]);
  const shows = (status: Status) => only === null || only === status;
  return (
    <ol className="verdicts">
      {shows("stop")
        ? groups.stop.map((verdict) => <Row key={verdict.id} open={open} verdict={verdict} />)
        : null}
      {shows("caution")
        ? groups.caution.map((verdict) => <Row key={verdict.id} open={open} verdict={verdict} />)
        : null}
      {shows("open") ? (
        <Folded
          open={open}
          verdicts={groups.open}
          shown={only === "open" ? groups.open.length : groups.open.length > OPEN_SHOWN ? 2 : OPEN_SHOWN}
          word="open"
        />
      ) : null}
      {shows("clear") ? (
        <Folded
          open={open}
          verdicts={groups.clear}
          shown={only === "clear" ? groups.clear.length : CLEAR_SHOWN}
          word="clear"
        />
      ) : null}
    </ol>
  );
}

interface FoldedProps {
  readonly open: OpenAircraft;
  readonly verdicts: readonly Verdict[];
  readonly shown: number;
  readonly word: string;
}

function Folded({ open, verdicts, shown, word }: FoldedProps) {
  const [all, setAll] = useState(false);
  const rest = verdicts.length - shown;
  const listed = all || rest <= 0 ? verdicts : verdicts.slice(0, shown);
  return (
    <>
      {listed.map((verdict) => (
        <Row key={verdict.id} open={open} verdict={verdict} />
      ))}
      {rest > 0 ? (
        <li className="more-row">
          <button type="button" className="group chevron" aria-expanded={all} onClick={() => setAll(!all)}>
            <span>{all ? `Fewer ${word}` : `${figure(rest)} more ${rest === 1 ? "is" : "are"} ${word}`}</span>
          </button>
        </li>
      ) : null}
    </>
  );
}

function Row({ open, verdict }: { readonly open: OpenAircraft; readonly verdict: Verdict }) {
  const [unfolded, setUnfolded] = useState(false);
  const { status, subject } = verdict;
  const isOfOpen =
    subject?.kind === "discrepancy" && open.state.discrepancies.get(subject.id)?.isOpen !== false;
  const goesThere = status === "open" && subject !== undefined && !isOfOpen;
  const head = (
    <>
      <Mark status={status} size_px={28} />
      <h3>{verdict.title}</h3>
      <span className={`margin ${status}`}>{verdict.margin?.text ?? ""}</span>
    </>
  );
  if (goesThere) {
    return (
      <li className={`row-${status}`}>
        <a className="row" href={placeOf(open.registration, subject)}>
          {head}
          <p>{verdict.says}</p>
          <span className="row-does row-goes">Go there</span>
        </a>
        {isWorked(verdict) ? (
          <button
            type="button"
            className="row-work chevron"
            aria-expanded={unfolded}
            onClick={() => setUnfolded(!unfolded)}
          >
            Working<span className="out-of-sight"> of {verdict.title}</span>
          </button>
        ) : null}
        {unfolded ? <Working verdict={verdict} /> : null}
      </li>
    );
  }
  return (
    <li className={`row-${status}`}>
      <button
        type="button"
        className={status === "stop" ? "row row-wide" : "row"}
        aria-expanded={unfolded}
        onClick={() => setUnfolded(!unfolded)}
      >
        {head}
        <p>{verdict.says}</p>
        <span className="row-does chevron">Working</span>
      </button>
      {unfolded ? <Working verdict={verdict} /> : null}
      {unfolded && verdict.id === "record:book-changed" ? <BookChange open={open} /> : null}
      {unfolded && verdict.status !== "stop" && (subject?.kind === "trend" || subject?.kind === "timed") ? (
        <a className="row-record" href={placeOf(open.registration, subject)}>
          {subject.kind === "trend" ? "Every reading of it" : "When it was done, and until when"}
        </a>
      ) : null}
      {subject?.kind === "discrepancy" ? <Photos open={open} id={subject.id} about={verdict.title} /> : null}
      {verdict.status === "stop" ? <WaysOut open={open} verdict={verdict} /> : null}
    </li>
  );
}

/** More than what the check's own card says first: a figure, a happening, what was read. */
const isWorked = ({ working }: Verdict): boolean => working.lines.length > 1 || working.formula !== undefined;

function Photos({
  open,
  id,
  about,
}: {
  readonly open: OpenAircraft;
  readonly id: string;
  readonly about: string;
}) {
  const photos = open.state.photos.filter(
    ({ subject }) => subject.kind === "discrepancy" && subject.id === id,
  );
  return photos.length === 0 ? null : (
    <div className="row-photos">
      <PhotoStrip photos={photos} about={about} />
    </div>
  );
}

type Subject = NonNullable<Verdict["subject"]>;

function placeOf(registration: string, subject: Subject): string {
  if (subject.kind === "timed") return href({ at: "timed", registration, item: subject.id });
  if (subject.kind === "discrepancy")
    return href({ at: "discrepancy", registration, discrepancy: subject.id });
  if (subject.kind === "trend") return href({ at: "trend", registration, trend: subject.id });
  return subject.kind === "check" || subject.kind === "ground-gear"
    ? href({ at: "walk", registration, step: { kind: subject.kind, id: subject.id } })
    : href({ at: "walk", registration });
}

/** A sentence each. */
const waysText = (ways: readonly string[]): string => ways.map(ended).join(" ");

/** Under a stop: what would end it. A discrepancy can be put right here; anything else is looked at again. */
function WaysOut({
  open,
  verdict,
}: {
  readonly open: OpenAircraft;
  readonly verdict: Extract<Verdict, { status: "stop" }>;
}) {
  const { subject } = verdict;
  const found = subject?.kind === "discrepancy" ? open.state.discrepancies.get(subject.id) : undefined;
  const check = found?.check ?? (subject?.kind === "check" ? subject.id : undefined);
  const step =
    subject?.kind === "ground-gear"
      ? ({ kind: "ground-gear", id: subject.id } as const)
      : check === undefined
        ? undefined
        : ({ kind: "check", id: check } as const);
  return (
    <div className="ways">
      {found?.isOpen === true ? (
        <PutRight open={open} discrepancy={found} wayOut={verdict.wayOut[0]} />
      ) : null}
      {step === undefined ? null : (
        <a href={href({ at: "walk", registration: open.registration, step })}>
          <b>Look again</b>
          <span>{found === undefined ? waysText(verdict.wayOut) : "Goes to the check that found it"}</span>
        </a>
      )}
      {found === undefined ? null : (
        <a href={href({ at: "discrepancy", registration: open.registration, discrepancy: found.id })}>
          <b>Its record</b>
          <span>Relief, and what became of it</span>
        </a>
      )}
      {subject?.kind === "timed" || subject?.kind === "trend" ? (
        <a href={placeOf(open.registration, subject)}>
          <b>In the record</b>
          <span>{waysText(verdict.wayOut)}</span>
        </a>
      ) : null}
      {found === undefined && step === undefined && subject?.kind !== "timed" && subject?.kind !== "trend" ? (
        <p>
          <b>Way out</b>
          <span>{waysText(verdict.wayOut)}</span>
        </p>
      ) : null}
    </div>
  );
}
