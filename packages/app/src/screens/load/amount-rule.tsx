import { type KeyboardEvent, memo, type RefCallback, useCallback, useRef } from "react";
import { Hatch } from "../../instruments/hatch.tsx";
import { multiples, straightScale, tickIntervals } from "../../instruments/scale.ts";
import { useWidth } from "../../instruments/use-width.ts";
import { figure } from "../../words/figures.ts";
import type { Amount } from "./amount.ts";
import { type LiveLoad, useFollowing } from "./follow/live-load.ts";
import { useParts } from "./follow/parts.ts";

interface AmountRuleProps {
  readonly label: string;
  readonly valueText: string;
  readonly value: number;
  readonly max: number;
  /** What is beyond it is hatched: not here. */
  readonly limit: number;
  readonly step: number;
  readonly live: LiveLoad;
  /** The value in words, as it stands at a step of a drag. */
  readonly textOf: (amount: Amount) => string;
  readonly onHold: () => void;
  /** A finger moves it; what it changes is to be seen in the same frame. */
  readonly onDrag: (value: number) => void;
  readonly onChange: (value: number) => void;
  readonly onRelease: () => void;
}

const HIGH = 48;
const BASE = 26;
/** Room at both ends, so that the pointer is whole at zero and at the most. */
const END = 9;

/** A plain rule that slides: how much, from nothing to more than is allowed. */
export function AmountRule(props: AmountRuleProps) {
  const [ref, width_px] = useWidth<HTMLDivElement>("amount-rule");
  return (
    <div className="amount-rule" ref={ref}>
      {width_px === 0 ? null : <Slider {...props} width_px={width_px} />}
    </div>
  );
}

function Slider({
  label,
  valueText,
  value,
  max,
  limit,
  step,
  live,
  textOf,
  onHold,
  onDrag,
  onChange,
  onRelease,
  width_px,
}: AmountRuleProps & { readonly width_px: number }) {
  // where the rule lies, from when the finger came down on it: measuring it again would lay out the page each time
  const held = useRef<{ readonly left: number; value: number } | null>(null);
  const scale = straightScale(0, max, width_px - 2 * END);
  const follow = (clientX: number) => {
    const now = held.current;
    if (now === null) return;
    const next = scale.under(clientX - now.left - END, step);
    if (next === now.value) return;
    now.value = next;
    onDrag(next);
  };
  const parts = useParts();
  const slider = useMoves(follow, parts.ref("slider"));
  const end = () => {
    if (held.current === null) return;
    held.current = null;
    onRelease();
  };
  const keys: Readonly<Record<string, number>> = {
    ArrowLeft: value - step,
    ArrowDown: value - step,
    ArrowRight: value + step,
    ArrowUp: value + step,
    PageDown: value - 10 * step,
    PageUp: value + 10 * step,
    Home: 0,
    End: limit,
  };
  const onKeyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    const next = keys[event.key];
    if (next === undefined) return;
    event.preventDefault();
    onChange(Math.min(max, Math.max(0, next)));
  };
  const now = END + scale.at(value);
  const edge = END + scale.at(limit);
  useFollowing(
    live,
    ({ amount }) => {
      // the rule itself grows, or its limit moves
      if (amount.max !== max || amount.limit !== limit) return null;
      const x = END + scale.at(amount.value ?? 0);
      return { fill: fillOf(x), pointer: pointerAt(x), mark: limitMark(x, edge) };
    },
    (now) => {
      if (now === null) return false;
      parts.put("fill", "d", now.fill);
      parts.put("pointer", "d", now.pointer);
      parts.put("limit", "d", now.mark);
      return true;
    },
  );
  useFollowing(
    live,
    ({ amount }) => ({ value: String(amount.value ?? 0), text: textOf(amount) }),
    (now) => {
      parts.put("slider", "aria-valuenow", now.value);
      parts.put("slider", "aria-valuetext", now.text);
      return true;
    },
    "words",
  );
  return (
    <div
      ref={slider}
      className="amount-slides"
      role="slider"
      tabIndex={0}
      aria-label={label}
      aria-valuemin={0}
      aria-valuemax={max}
      aria-valuenow={value}
      aria-valuetext={valueText}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        held.current = { left: event.currentTarget.getBoundingClientRect().left, value };
        event.currentTarget.setPointerCapture(event.pointerId);
        onHold();
        follow(event.clientX);
      }}
      onPointerUp={end}
      onPointerCancel={end}
      onKeyDown={onKeyDown}
    >
      <svg width={width_px} height={HIGH} viewBox={`0 0 ${width_px} ${HIGH}`} aria-hidden="true">
        <Base max={max} limit={limit} width_px={width_px} />
        <path ref={parts.ref("fill")} className="amount-fill" d={fillOf(now)} />
        <path ref={parts.ref("limit")} className="amount-limit" d={limitMark(now, edge)} />
        <path ref={parts.ref("pointer")} className="amount-pointer" d={pointerAt(now)} />
      </svg>
    </div>
  );
}

/**
 * Hears a finger move, at most once a frame: a browser hands all movements of a frame over as one, before the frame is
 * drawn. It goes past React, which would look through the whole screen for who else may want to know.
 *
 * @returns the ref of what the finger is on
 */
function useMoves(follow: (clientX: number) => void, part: RefCallback<Element>): RefCallback<HTMLElement> {
  const latest = useRef(follow);
  latest.current = follow;
  return useCallback(
    (element: HTMLElement | null) => {
      part(element);
      if (element === null) return;
      const move = (event: PointerEvent) => {
        event.stopPropagation();
        latest.current(event.clientX);
      };
      element.addEventListener("pointermove", move);
      return () => {
        element.removeEventListener("pointermove", move);
        part(null);
      };
    },
    [part],
  );
}

/** Places are in the paths themselves: a path that changes is painted anew, a transform that changes lays layers anew. */
const fillOf = (now: number): string => `M${END},${BASE - 12}H${now.toFixed(1)}v12H${END}z`;
const pointerAt = (now: number): string => `M${now.toFixed(1)},${BASE + 3}l-8,-11v-12h16v12z`;

/** Where the limit is, seen on what has been filled beyond it. */
const limitMark = (now: number, edge: number): string =>
  now > edge ? `M${edge.toFixed(1)},${BASE - 15}V${BASE}` : "";

interface BaseProps {
  readonly max: number;
  readonly limit: number;
  readonly width_px: number;
}

/** What a drag does not change: the rule's frame, its ticks and figures, and the hatching beyond the limit. */
const Base = memo(function Base({ max, limit, width_px }: BaseProps) {
  const scale = straightScale(0, max, width_px - 2 * END);
  const edge = END + scale.at(limit);
  const { major, minor } = tickIntervals(max, width_px, 52);
  const ticks = (interval: number, length: number) =>
    multiples(0, max, interval)
      .map((tick) => `M${(END + scale.at(tick)).toFixed(1)},${BASE}v${length}`)
      .join("");
  return (
    <>
      <Hatch x={edge} y={BASE - 12} width={width_px - END - edge} height={12} />
      <rect className="ink-1-line" x={END} y={BASE - 12} width={width_px - 2 * END} height={12} />
      <path
        className="ink-2-line"
        d={`M${edge.toFixed(1)},${BASE - 15}V${BASE}M${END},${BASE}H${width_px - END}`}
      />
      <path className="ink-1-line" d={ticks(minor, 4) + ticks(major, 8)} />
      <g className="rule-number">
        {multiples(0, max, major).map((tick) => {
          const x = END + scale.at(tick);
          return x > 12 && x < width_px - 14 ? (
            <text key={tick} x={x} y={BASE + 20} textAnchor="middle">
              {figure(tick)}
            </text>
          ) : null;
        })}
      </g>
    </>
  );
});
