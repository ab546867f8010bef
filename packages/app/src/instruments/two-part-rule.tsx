import { type KeyboardEvent, type PointerEvent, useRef } from "react";
import { cornerDashes, cutFor, hexagon } from "../marks/mark-geometry.ts";
import { figure } from "../words/figures.ts";
import { Hatch } from "./hatch.tsx";
import { layoutRule, type RuleLayout, type RuleTexts, type RuleValues } from "./rule-layout.ts";
import { roundTo } from "./scale.ts";
import { useWidth } from "./use-width.ts";
import "./instruments.css";

const BASE_TOP = 20;
const BASE_HIGH = 24;
const JOINT = BASE_TOP + BASE_HIGH;

export interface TwoPartRuleProps {
  readonly values: RuleValues;
  readonly texts: RuleTexts;
  readonly step: number;
  /** Filled once the value is outside. */
  readonly outside: boolean;
  readonly label: string;
  /** What a screen reader says of the value. */
  readonly valueText: string;
  readonly nut_px?: number;
  /** Makes it a slider; without it the rule is a picture. */
  readonly onChange?: (value: number) => void;
}

/**
 * Upper half: the base, with last time's stripe and today's band. Lower half: the nut that slides, with today's
 * stripe. In line: nothing has moved.
 */
export function TwoPartRule(props: TwoPartRuleProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>("two-part-rule");
  const nut_px = props.nut_px ?? 20;
  const centre = JOINT + nut_px * 0.9 + 1;
  const height_px = Math.ceil(centre + nut_px + 3);
  return (
    <div className="two-part" ref={ref}>
      {width_px === 0 ? (
        <svg height={height_px} aria-hidden="true" />
      ) : (
        <RuleDrawing {...props} width_px={width_px} height_px={height_px} nut_px={nut_px} centre={centre} />
      )}
    </div>
  );
}

interface DrawingProps extends TwoPartRuleProps {
  readonly width_px: number;
  readonly height_px: number;
  readonly nut_px: number;
  readonly centre: number;
}

function RuleDrawing(props: DrawingProps) {
  const { values, texts, width_px, height_px, nut_px, centre } = props;
  const layout = layoutRule(values, texts, width_px, nut_px);
  const slider = useSlider(props, layout);
  return (
    <div className={props.onChange === undefined ? undefined : "rule-slides"} {...slider}>
      <svg width={width_px} height={height_px} viewBox={`0 0 ${width_px} ${height_px}`} aria-hidden="true">
        <Limits layout={layout} width_px={width_px} />
        <path className="ink-2-line" d={`M0,${JOINT}H${width_px}`} />
        <path
          className="ink-1-line"
          d={layout.minorX_px.map((x) => `M${x.toFixed(1)},${JOINT}v5`).join("")}
        />
        <path
          className="ink-1-line"
          d={layout.majors.map(({ x_px }) => `M${x_px.toFixed(1)},${JOINT}v10`).join("")}
        />
        <g className="rule-number">
          {layout.majors.map(({ value, x_px, numbered }) =>
            numbered ? (
              <text key={value} x={x_px} y={JOINT + 23} textAnchor="middle">
                {figure(value, layout.majorDecimals)}
              </text>
            ) : null,
          )}
        </g>
        {layout.lastX_px === null ? null : (
          <rect className="paint" x={layout.lastX_px - 3.5} y={BASE_TOP} width={7} height={BASE_HIGH} />
        )}
        {layout.lastLabel === null ? null : (
          <text
            className="rule-last halo"
            x={layout.lastLabel.x_px}
            y={BASE_TOP + 17}
            textAnchor={layout.lastLabel.anchor}
          >
            {layout.lastLabel.text}
          </text>
        )}
        <Nut layout={layout} props={props} centre={centre} nut_px={nut_px} height_px={height_px} />
      </svg>
    </div>
  );
}

function Limits({ layout, width_px }: { readonly layout: RuleLayout; readonly width_px: number }) {
  const { lowX_px, highX_px, lowLabel, highLabel, bandLabel } = layout;
  const low = lowX_px ?? 0;
  const high = highX_px ?? width_px;
  const lines = [lowX_px, highX_px].filter((x) => x !== null);
  return (
    <>
      {bandLabel === null ? null : (
        <text className="rule-band" x={bandLabel.x_px} y={14.5} textAnchor="middle">
          {bandLabel.text}
        </text>
      )}
      {bandLabel === null || lowX_px === null || highX_px === null ? null : (
        <>
          <path className="ink-1-line" d={lines.map((x) => `M${x.toFixed(1)},3V${BASE_TOP}`).join("")} />
          <path
            className="ink-1-line"
            d={`M${low},10H${bandLabel.x_px - bandLabel.gap_px}M${bandLabel.x_px + bandLabel.gap_px},10H${high}`}
          />
          <path className="ink-fill" d={`M${low},10l7,-2.6v5.2zM${high},10l-7,-2.6v5.2z`} />
        </>
      )}
      {[lowLabel, highLabel].map((label) =>
        label === null ? null : (
          <text key={label.x_px} className="rule-limit" x={label.x_px} y={15} textAnchor={label.anchor}>
            {label.text}
          </text>
        ),
      )}
      <Hatch x={0} y={BASE_TOP} width={low} height={BASE_HIGH} />
      <Hatch x={high} y={BASE_TOP} width={width_px - high} height={BASE_HIGH} />
      <rect className="ink-1-line" x={0.5} y={BASE_TOP} width={width_px - 1} height={BASE_HIGH} />
      <path
        className="ink-2-line"
        d={lines.map((x) => `M${x.toFixed(1)},${BASE_TOP}v${BASE_HIGH}`).join("")}
      />
    </>
  );
}

interface NutProps {
  readonly layout: RuleLayout;
  readonly props: TwoPartRuleProps;
  readonly centre: number;
  readonly nut_px: number;
  readonly height_px: number;
}

function Nut({ layout, props, centre, nut_px, height_px }: NutProps) {
  const x = layout.nutX_px;
  if (props.values.now === null) {
    const corners = cornerDashes({ ...cutFor(48), nut: nut_px });
    return (
      <polygon
        className="rule-nut"
        points={hexagon(nut_px, 0)}
        transform={`translate(${x.toFixed(1)} ${centre})`}
        strokeDasharray={corners.dashes}
        strokeDashoffset={corners.offset}
      />
    );
  }
  return (
    <>
      <polygon
        className={props.outside ? "rule-nut rule-nut-filled" : "rule-nut"}
        points={hexagon(nut_px, 0)}
        transform={`translate(${x.toFixed(1)} ${centre})`}
      />
      <rect className="paint" x={x - 3.5} y={JOINT + 1} width={7} height={height_px - JOINT - 2} />
      {layout.doubt_px === null ? null : (
        <path
          className="rule-doubt"
          d={`M${layout.doubt_px[0].toFixed(1)},${JOINT + 8}v-16M${layout.doubt_px[1].toFixed(1)},${JOINT + 8}v-16M${layout.doubt_px[0].toFixed(1)},${JOINT}H${layout.doubt_px[1].toFixed(1)}`}
        />
      )}
    </>
  );
}

/** The pointer and keyboard half: a picture without `onChange`, a slider with it. */
function useSlider(props: TwoPartRuleProps, layout: RuleLayout) {
  const { values, step, label, valueText, onChange } = props;
  const dragging = useRef(false);
  if (onChange === undefined) return { role: "img", "aria-label": `${label}: ${valueText}` };
  const now = values.now ?? values.last ?? (values.min + values.max) / 2;
  const set = (value: number) => onChange(Math.min(values.max, Math.max(values.min, roundTo(value, step))));
  const follow = (event: PointerEvent<HTMLDivElement>) => {
    const box = event.currentTarget.getBoundingClientRect();
    const x_px = ((event.clientX - box.left) / box.width) * layout.scale.width_px;
    onChange(layout.scale.under(x_px, step));
  };
  const keys: Readonly<Record<string, number>> = {
    ArrowLeft: now - step,
    ArrowDown: now - step,
    ArrowRight: now + step,
    ArrowUp: now + step,
    PageDown: now - 10 * step,
    PageUp: now + 10 * step,
    Home: values.min,
    End: values.max,
  };
  return {
    role: "slider",
    tabIndex: 0,
    "aria-label": label,
    "aria-valuemin": values.min,
    "aria-valuemax": values.max,
    "aria-valuenow": now,
    "aria-valuetext": valueText,
    onPointerDown: (event: PointerEvent<HTMLDivElement>) => {
      if (event.button !== 0) return;
      dragging.current = true;
      event.currentTarget.setPointerCapture(event.pointerId);
      follow(event);
    },
    onPointerMove: (event: PointerEvent<HTMLDivElement>) => {
      if (dragging.current) follow(event);
    },
    onPointerUp: () => {
      dragging.current = false;
    },
    onPointerCancel: () => {
      dragging.current = false;
    },
    onKeyDown: (event: KeyboardEvent<HTMLDivElement>) => {
      const value = keys[event.key];
      if (value === undefined) return;
      event.preventDefault();
      set(value);
    },
  };
}
