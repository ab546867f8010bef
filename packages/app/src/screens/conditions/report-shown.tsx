import type { ReportFigures } from "@witnessmark/assess";
import {
  decodeReports,
  type PlacedForecast,
  type PlacedObservation,
  type Problem,
} from "@witnessmark/weather";
import { lasting, momentShort } from "../../words/dates.ts";
import { listed } from "../../words/listed.ts";

type Shown = ReportFigures<PlacedObservation> | ReportFigures<PlacedForecast>;

interface ReportShownProps {
  readonly name: "METAR" | "TAF";
  readonly figures: Shown;
  readonly now_ms: number;
  readonly onTakeAway: () => void;
}

/** A report as it came: its age, until when it counts, and what of it was not understood. */
export function ReportShown({ name, figures, now_ms, onTakeAway }: ReportShownProps) {
  return (
    <article className="cond-report">
      <div className="cond-report-head">
        <h3>{name}</h3>
        <button type="button" className="button" onClick={onTakeAway}>
          Take away<span className="out-of-sight"> the {name}</span>
        </button>
      </div>
      <p className={figures.tooOld ? "cond-age cond-too-old" : "cond-age"}>
        {ageWords(name, figures, now_ms)}
      </p>
      <Raw text={figures.text} placed={figures.placed} />
      {figures.problems.length === 0 ? null : (
        <ul className="cond-problems">
          {figures.problems.map((problem) => (
            <li key={`${problem.group}${problem.says}${problem.period ?? ""}`}>
              <ProblemWords problem={problem} />
            </li>
          ))}
        </ul>
      )}
    </article>
  );
}

function ageWords(name: "METAR" | "TAF", figures: Shown, now_ms: number): string {
  const { at_ms, age_ms, countsUntil_ms, tooOld } = figures;
  if (at_ms === undefined || age_ms === undefined) return "Nothing of it can be used.";
  const made = `${name === "METAR" ? "Observed" : "Issued"} ${momentShort(at_ms, now_ms)}`;
  const age = age_ms < 60_000 ? "just now" : `${lasting(age_ms)} ago`;
  if (countsUntil_ms === undefined) return `${made}, ${age}.`;
  return tooOld
    ? `${made}, ${age}: too old. It counted until ${momentShort(countsUntil_ms, now_ms)}.`
    : `${made}, ${age}. Counts until ${momentShort(countsUntil_ms, now_ms)}.`;
}

/** The text group by group; what was not understood, or cannot be, is marked in it. */
function Raw({ text, placed }: { readonly text: string; readonly placed: Shown["placed"] }) {
  const report = placed?.report ?? decodeReports(text).reports[0];
  if (report === undefined) return <p className="cond-raw">{text}</p>;
  return (
    <p className="cond-raw">
      {report.groups.map((group) => {
        const isGood = group.outcome === "used";
        return (
          <span key={group.first}>
            {isGood ? (
              group.text
            ) : (
              <mark>
                {group.text}
                <span className="out-of-sight"> ({group.says ?? "not understood"})</span>
              </mark>
            )}{" "}
          </span>
        );
      })}
    </p>
  );
}

const OUTCOME: Readonly<Record<Problem["outcome"], string>> = {
  "not-observed": "not observed",
  doubtful: "doubtful",
  "not-understood": "not understood",
  impossible: "cannot be",
  missing: "missing",
};

function ProblemWords({ problem }: { readonly problem: Problem }) {
  const { group, says, outcome, affects } = problem;
  const opened = affects.length > 6 ? ["everything"] : affects;
  return (
    <>
      {group === "" ? null : <b className="cond-token">{group}</b>}{" "}
      {says.startsWith(OUTCOME[outcome]) ? "" : `${OUTCOME[outcome]}: `}
      {says}. {affects.length === 0 ? "No answer rests on it." : <b>Leaves {listed(opened)} open.</b>}
    </>
  );
}
