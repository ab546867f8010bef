import type { Dimension, UnitId } from "@witnessmark/engine";
import type { PanelWork } from "./chart-work.ts";
import { Choose, ChooseUnit, TextIn } from "./fields.tsx";
import { type Lack, wrongAxis, wrongNumber } from "./read-work.ts";
import { Said } from "./said.tsx";
import { AXES, AXIS_NAMES, type AxisName } from "./wanted.ts";

interface AxesPanelProps {
  readonly panel: PanelWork;
  readonly isGuide: boolean;
  readonly isEnvelope: boolean;
  /** What the y axis is. */
  readonly yName: string;
  readonly lack: Lack | undefined;
  /** Whether a tap on the picture sets the marks. */
  readonly taps: boolean;
  readonly onTaps: () => void;
  /** The unit of y, where it can be chosen here. */
  readonly unit: { readonly of: Dimension; readonly is: UnitId } | undefined;
  readonly onUnit: (unit: UnitId) => void;
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
export function AxesPanel({
  panel,
  isGuide,
  isEnvelope,
  yName,
  lack,
  taps,
  onTaps,
  unit,
  onUnit,
  onChange,
}: AxesPanelProps) {
  const { values } = panel;
  const say = (part: Partial<PanelWork["values"]>) => onChange({ values: { ...values, ...part } });
  return (
    <section className="chart-section">
      <h2>The axes</h2>
      <fieldset>
        <legend className="legend">Marked by</legend>
        <div className="choices">
          <button
            type="button"
            aria-pressed={panel.view === "slanted"}
            onClick={() => onChange({ view: "slanted" })}
          >
            Four corners
          </button>
          <button
            type="button"
            aria-pressed={panel.view === "straight"}
            onClick={() => onChange({ view: "straight" })}
          >
            Two on each axis
          </button>
        </div>
      </fieldset>
      <p className="chart-note">
        {panel.view === "straight"
          ? "For a page that was scanned, or a picture taken straight on: two marks of the x axis, low then high and far apart, then two of the y axis."
          : "For any picture, also one taken at a slant: four crossings of the grid that make a large rectangle."}
      </p>
      <button type="button" className="button full" aria-pressed={taps} onClick={onTaps}>
        {panel.marks.every((mark) => mark !== null) ? "Move the marks" : "Set the marks"}
      </button>
      <Said lack={lack} on="marks" />
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
        <TextIn
          label="x at its low mark"
          value={values.xLow}
          isNumber
          wrong={wrongNumber(values.xLow)}
          onChange={(xLow) => say({ xLow })}
        />
        <TextIn
          label="x at its high mark"
          value={values.xHigh}
          isNumber
          wrong={wrongNumber(values.xHigh) ?? wrongAxis(panel, "x")}
          onChange={(xHigh) => say({ xHigh })}
        />
        <Said lack={lack} on="x" />
        <TextIn
          label="y at its low mark"
          value={values.yLow}
          isNumber
          wrong={wrongNumber(values.yLow)}
          onChange={(yLow) => say({ yLow })}
        />
        <TextIn
          label="y at its high mark"
          value={values.yHigh}
          isNumber
          wrong={wrongNumber(values.yHigh) ?? wrongAxis(panel, "y")}
          onChange={(yHigh) => say({ yHigh })}
        />
        {unit === undefined ? (
          <p className="chart-note chart-whole">Along y: {yName.toLowerCase()}.</p>
        ) : (
          <div className="chart-whole">
            <ChooseUnit
              label={`Along y: ${yName.toLowerCase()}, in`}
              dimension={unit.of}
              value={unit.is}
              onChange={onUnit}
            />
          </div>
        )}
        <Said lack={lack} on="y" />
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
            wrong={wrongNumber(panel.reference)}
            onChange={(reference) => onChange({ reference })}
          />
        ) : null}
        <Said lack={lack} on="reference" />
      </div>
    </section>
  );
}
