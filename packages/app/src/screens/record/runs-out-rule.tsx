import type { LimitLeft, TimedFigure } from "@witnessmark/assess";
import { Hatch } from "../../instruments/hatch.tsx";
import { useWidth } from "../../instruments/use-width.ts";
import { figure as figureText } from "../../words/figures.ts";

const HIGH = 32;
const BAR = 10;
/** Beyond the limit the rule goes on by so much of what it was. */
const BEYOND_1 = 0.1;
const DAY_MS = 86_400_000;

interface Span {
  readonly from: number;
  readonly now: number;
  readonly limit: number;
  readonly text: string;
}

const dayOf = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS;

/** A year back, for what is printed with a date and no beginning. */
const PRINTED_d = 365;

function spanOf(left: LimitLeft | undefined): Span | undefined {
  switch (left?.by) {
    case "date": {
      const limit = dayOf(left.on);
      return {
        from: left.from === undefined ? limit - PRINTED_d : dayOf(left.from),
        now: limit - left.left_d,
        limit,
        text: "today",
      };
    }
    case "counter": {
      const used = figureText(left.now - left.from, left.counter.unit === "h" ? 1 : 0);
      return {
        from: left.from,
        now: left.now,
        limit: left.at,
        text: left.counter.unit === "h" ? `${used} h` : used,
      };
    }
    default:
      return undefined;
  }
}

/** From when it was done to where it ends, hatched beyond, with a pointer at today; nothing where that is not known. */
export function RunsOutRule({ figure }: { readonly figure: TimedFigure }) {
  const [ref, width_px] = useWidth<HTMLSpanElement>("runs-out");
  const span = spanOf(figure.nearest);
  if (span === undefined || span.limit <= span.from) return null;
  const most = span.limit + (span.limit - span.from) * BEYOND_1;
  const at = (value: number) =>
    1 + ((Math.min(Math.max(value, span.from), most) - span.from) / (most - span.from)) * (width_px - 2);
  const limit = at(span.limit);
  const now = at(span.now);
  const room = 6 + span.text.length * 7;
  const side = now > width_px - room ? "end" : "start";
  return (
    <span className="runs-out" ref={ref}>
      {width_px === 0 ? null : (
        <svg width={width_px} height={HIGH} viewBox={`0 0 ${width_px} ${HIGH}`} aria-hidden="true">
          <Hatch x={limit} y={2} width={width_px - 1 - limit} height={BAR} />
          <rect className="ink-1-line" x={1} y={2} width={width_px - 2} height={BAR} />
          <path className="ink-2-line" d={`M${limit.toFixed(1)},0v${BAR + 4}`} />
          <path className="runs-out-now" d={`M${now.toFixed(1)},${BAR + 3}l-5,9h10z`} />
          <text x={side === "end" ? now - 9 : now + 9} y={BAR + 14} textAnchor={side}>
            {span.text}
          </text>
        </svg>
      )}
    </span>
  );
}
