import { CHECK_POINTS, checkPoints, type EyeReading } from "@witnessmark/chart";
import { type ReactNode, useState } from "react";
import { figure } from "../../words/figures.ts";
import { TextIn } from "./fields.tsx";
import { numberOf, wrongNumber } from "./read-work.ts";

interface Ask {
  readonly as: "parameter" | "entered";
  readonly label: string;
}

interface CheckByEyeProps {
  /** What a point of the chart is entered by. */
  readonly asks: readonly Ask[];
  /** What is read there. */
  readonly reads: string;
  readonly checking: Omit<Parameters<typeof checkPoints>[1], "why">;
  /** What it is called at first. */
  readonly title: string;
  /** It stands in the book already, under its title. */
  readonly isThere: boolean;
  readonly onTake: (said: { readonly title: string; readonly flaps?: string }) => void;
  /** An envelope has none. */
  readonly hasFlaps?: boolean;
  /** What was made: shown once the two points are compared, so that they are read from the paper alone. */
  readonly children: ReactNode;
}

const blank = (count: number): readonly string[] => Array.from({ length: count }, () => "");

/**
 * Two points read from the paper by eye, before what the curves say there is shown; off by more than is expected, the
 * table is not taken until it is mended or there is a reason.
 */
export function CheckByEye(props: CheckByEyeProps) {
  const { asks, reads, checking, isThere, onTake, hasFlaps = true, children } = props;
  const fields = asks.length + 1;
  const [typed, setTyped] = useState<readonly (readonly string[])[]>(() =>
    Array.from({ length: CHECK_POINTS }, () => blank(fields)),
  );
  const [compared, setCompared] = useState(false);
  const [why, setWhy] = useState("");
  const [said, setSaid] = useState({ title: props.title, flaps: "" });
  const readings = typed.map((row) => readingOf(asks, row)).filter((reading) => reading !== undefined);
  const verdict = checkPoints(readings, { ...checking, why });
  const isDiffering =
    compared && verdict.points.some(({ agrees, curves }) => !agrees && curves !== undefined);
  const isNear = compared && !verdict.taken && !isDiffering;
  const take = () => {
    const title = withReason(said.title, why);
    onTake({ ...said, title });
  };
  return (
    <>
      <h2>Two points by eye</h2>
      <p className="chart-note">
        Read two points from the paper itself, well apart, as if no curve were traced. What the curves say
        there is shown when both are in.
      </p>
      {typed.map((row, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the two points are told apart by their place alone
        <fieldset key={i} className="chart-check">
          <legend className="legend">Point {i + 1}</legend>
          <div className="chart-grid">
            {[...asks.map(({ label }) => label), `Read: ${reads}`].map((label, j) => (
              <TextIn
                key={label}
                label={label}
                value={row[j] ?? ""}
                isNumber
                wrong={wrongNumber(row[j] ?? "")}
                onChange={(text) => {
                  setTyped(typed.with(i, row.with(j, text)));
                  setCompared(false);
                }}
              />
            ))}
          </div>
          {compared && verdict.points[i] !== undefined ? (
            <p className={verdict.points[i].agrees ? "verdict clear" : "verdict caution"} role="status">
              <span>{comparison(verdict.points[i])}</span>
            </p>
          ) : null}
        </fieldset>
      ))}
      <button
        type="button"
        className="button full"
        disabled={readings.length < CHECK_POINTS}
        onClick={() => setCompared(true)}
      >
        Compare
      </button>
      {isNear || isDiffering ? (
        <p className="trouble" role="alert">
          {verdict.taken ? `It stands because: ${why.trim()}` : verdict.says}
        </p>
      ) : null}
      {isDiffering ? <TextIn label="Why it stands all the same" value={why} onChange={setWhy} /> : null}
      {compared ? children : null}
      {compared && verdict.taken ? (
        <>
          {isThere ? null : (
            <div className="chart-grid">
              <TextIn
                label={hasFlaps ? "Title" : "Name"}
                value={said.title}
                wrong={said.title.trim() === "" ? "Say what it is called." : undefined}
                onChange={(title) => setSaid({ ...said, title })}
              />
              {hasFlaps ? (
                <TextIn label="Flaps" value={said.flaps} onChange={(flaps) => setSaid({ ...said, flaps })} />
              ) : null}
            </div>
          )}
          <button
            type="button"
            className="button filled tall full"
            disabled={said.title.trim() === ""}
            onClick={take}
          >
            Take it
          </button>
        </>
      ) : null}
    </>
  );
}

/** A difference that stands is told wherever the table is named. */
const withReason = (title: string, why: string): string =>
  why.trim() === "" || title.trim().endsWith(`(${why.trim()})`)
    ? title.trim()
    : `${title.trim()} (${why.trim()})`;

function readingOf(asks: readonly Ask[], row: readonly string[]): EyeReading | undefined {
  const numbers = row.map(numberOf);
  if (numbers.some(Number.isNaN)) return undefined;
  const of = (as: Ask["as"]) => asks.flatMap((ask, i) => (ask.as === as ? [numbers[i] ?? 0] : []));
  return { parameter: of("parameter")[0] ?? 0, entered: of("entered"), read: numbers[asks.length] ?? 0 };
}

function comparison({ read, curves, off, off_1 }: ReturnType<typeof checkPoints>["points"][number]): string {
  if (curves === undefined || off === undefined || off_1 === undefined)
    return "The curves do not reach there.";
  const decimals = Math.abs(curves) < 10 ? 3 : Math.abs(curves) < 100 ? 2 : 0;
  return `You read ${figure(read, decimals)}, the curves say ${figure(curves, decimals)}: off by ${figure(Math.abs(off), decimals)}, ${figure(off_1 * 100, 1)} % of full scale.`;
}
