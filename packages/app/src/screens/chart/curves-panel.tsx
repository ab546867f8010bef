import type { FitError } from "@witnessmark/chart";
import { UNITS } from "@witnessmark/engine";
import { figure } from "../../words/figures.ts";
import type { CurveWork, PanelWork } from "./chart-work.ts";
import { TextIn } from "./fields.tsx";
import { type Lack, wrongNumber } from "./read-work.ts";
import { Said } from "./said.tsx";

interface CurvesPanelProps {
  readonly panel: PanelWork;
  readonly isGuide: boolean;
  readonly inHand: string;
  readonly errors: ReadonlyMap<string, FitError>;
  readonly lack: Lack | undefined;
  readonly onChoose: (id: string) => void;
  readonly onSay: (id: string, parameter: string) => void;
  readonly onAdd: () => void;
  readonly onClear: (id: string) => void;
}

/** Below this share of the curve the ink says nothing of it. */
const SEEN_1 = 0.5;

/** The curves: which one is traced, what it stands for, and how far it lies from the ink. */
export function CurvesPanel(props: CurvesPanelProps) {
  const { panel, isGuide, inHand, errors, lack } = props;
  const hasValue = !isGuide && panel.parameterName !== "none";
  return (
    <section className="chart-section">
      <h2>{isGuide ? "The guide lines" : "The curves"}</h2>
      <p className="chart-note">
        Choose a curve, then tap along it on the picture, from one end to the other.
      </p>
      <ul className="chart-curves">
        {panel.curves.map((curve, i) => (
          <li key={curve.id}>
            <button
              type="button"
              className="button"
              aria-pressed={curve.id === inHand}
              onClick={() => props.onChoose(curve.id)}
            >
              {isGuide ? "Guide" : "Curve"} {i + 1}
            </button>
            {hasValue ? (
              <TextIn
                label={`stands for, ${UNITS[panel.parameterUnit].symbol || "plain"}`}
                value={curve.parameter}
                isNumber
                wrong={wrongNumber(curve.parameter)}
                onChange={(parameter) => props.onSay(curve.id, parameter)}
              />
            ) : null}
            <p>{wordsOf(curve, errors.get(curve.id))}</p>
            <Said lack={lack} on={{ curve: curve.id }} />
            {curve.knots.length === 0 ? null : (
              <button
                type="button"
                className="button"
                aria-label={`Clear curve ${i + 1}`}
                onClick={() => props.onClear(curve.id)}
              >
                Clear
              </button>
            )}
          </li>
        ))}
      </ul>
      <Said lack={lack} on="curves" />
      {hasValue || isGuide ? (
        <button type="button" className="button full" onClick={props.onAdd}>
          Another {isGuide ? "guide line" : "curve"}
        </button>
      ) : null}
    </section>
  );
}

function wordsOf(curve: CurveWork, error: FitError | undefined): string {
  const count = curve.knots.length;
  if (count === 0) return "Not traced yet";
  const points = count === 1 ? "1 point" : `${count} points`;
  if (error === undefined) return points;
  if (error.seen_1 < SEEN_1) return `${points}; no dark line under it`;
  return `${points}; off the ink by ${figure(error.rms_px, 1)} px, at worst ${figure(error.worst_1 * 100, 2)} % of full scale`;
}
