import type { UnitId } from "@witnessmark/engine";
import type { PanelWork } from "./chart-work.ts";
import { Choose, ChooseUnit, TextIn } from "./fields.tsx";
import { AXES, AXIS_NAMES, type AxisName } from "./wanted.ts";

interface AxesPanelProps {
  readonly panel: PanelWork;
  readonly isGuide: boolean;
  readonly isEnvelope: boolean;
  /** What the y axis is, with its unit. */
  readonly yName: string;
  readonly onChange: (change: Partial<PanelWork>) => void;
}

const SCALES = [
  ["linear", "Linear"],
  ["log", "Logarithmic"],
] as const;

const AXIS_OPTIONS = AXIS_NAMES.map((name) => [name, AXES[name].name] as const);
const PARAMETERS: readonly (readonly [AxisName | "none", string])[] = [
  ...AXIS_OPTIONS,
  ["none", "Nothing: one curve"],
];

/** What the axes are, and two known values of each. */
export function AxesPanel({ panel, isGuide, isEnvelope, yName, onChange }: AxesPanelProps) {
  const { values } = panel;
  const say = (part: Partial<PanelWork["values"]>) => onChange({ values: { ...values, ...part } });
  return (
    <section className="chart-section">
      <h2>The axes</h2>
      <fieldset>
        <legend className="legend">The picture was taken</legend>
        <div className="choices">
          <button
            type="button"
            aria-pressed={panel.view === "straight"}
            onClick={() => onChange({ view: "straight" })}
          >
            Straight on
          </button>
          <button
            type="button"
            aria-pressed={panel.view === "slanted"}
            onClick={() => onChange({ view: "slanted" })}
          >
            At a slant
          </button>
        </div>
      </fieldset>
      <p className="chart-note">
        {panel.view === "straight"
          ? "Tap two marks on the x axis, then two on the y axis: low first, far apart."
          : "Tap the four corners where these values meet: round from x low, y low by x high, y low."}
      </p>
      <div className="chart-grid">
        {isEnvelope ? null : (
          <>
            <Choose
              label="Along x"
              value={panel.xName}
              options={AXIS_OPTIONS}
              onChange={(xName) => onChange({ xName, xUnit: AXES[xName].unit })}
            />
            <ChooseUnit
              label="x in"
              dimension={AXES[panel.xName].dimension}
              value={panel.xUnit}
              onChange={(xUnit) => onChange({ xUnit })}
            />
          </>
        )}
        <TextIn label="x low" value={values.xLow} isNumber onChange={(xLow) => say({ xLow })} />
        <TextIn label="x high" value={values.xHigh} isNumber onChange={(xHigh) => say({ xHigh })} />
        <TextIn label={`y low (${yName})`} value={values.yLow} isNumber onChange={(yLow) => say({ yLow })} />
        <TextIn label="y high" value={values.yHigh} isNumber onChange={(yHigh) => say({ yHigh })} />
        {isEnvelope ? null : (
          <>
            <Choose
              label="x is spread"
              value={panel.xScale}
              options={SCALES}
              onChange={(xScale) => onChange({ xScale })}
            />
            <Choose
              label="y is spread"
              value={panel.yScale}
              options={SCALES}
              onChange={(yScale) => onChange({ yScale })}
            />
          </>
        )}
        {isEnvelope || isGuide ? null : (
          <>
            <Choose
              label="Each curve stands for"
              value={panel.parameterName}
              options={PARAMETERS}
              onChange={(parameterName) =>
                onChange({
                  parameterName,
                  ...(parameterName === "none" ? {} : { parameterUnit: AXES[parameterName].unit }),
                })
              }
            />
            {panel.parameterName === "none" ? null : (
              <ChooseUnit
                label="in"
                dimension={AXES[panel.parameterName].dimension}
                value={panel.parameterUnit}
                onChange={(parameterUnit: UnitId) => onChange({ parameterUnit })}
              />
            )}
          </>
        )}
        {isGuide ? (
          <TextIn
            label="Reference line at x"
            value={panel.reference}
            isNumber
            onChange={(reference) => onChange({ reference })}
          />
        ) : null}
      </div>
    </section>
  );
}
