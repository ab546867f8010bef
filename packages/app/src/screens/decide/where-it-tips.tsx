import type { TippingPoint } from "@witnessmark/assess";
import { useState } from "react";
import type { AheadState } from "../../ahead/use-ahead.ts";
import { Hatch } from "../../instruments/hatch.tsx";
import { useSize } from "../../instruments/use-width.ts";
import { capital } from "../../words/capital.ts";
import { steadyWords, tipWords } from "./tip-words.ts";
import "./ahead.css";

/** The likeliest are shown; the rest unfold. */
const SHOWN = 5;

interface WhereItTipsProps {
  readonly ahead: AheadState;
  readonly offBlocks_ms: number;
}

/** Where the answer for the flight changes when one value of it does, the likeliest first. */
export function WhereItTips({ ahead, offBlocks_ms }: WhereItTipsProps) {
  const [all, setAll] = useState(false);
  if (ahead.kind === "working") {
    return (
      <section className="tips" aria-busy="true">
        <h2>Where it tips over</h2>
        <p>Being worked out.</p>
      </section>
    );
  }
  if (ahead.kind === "failed") {
    return (
      <section className="tips">
        <h2>Where it tips over</h2>
        <p role="alert">It could not be worked out ({ahead.why}). The answer itself stands as it is.</p>
      </section>
    );
  }
  const { points: tips, steady } = ahead.ahead.tips;
  const shown = all ? tips : tips.slice(0, SHOWN);
  return (
    <section className="tips">
      <h2>Where it tips over</h2>
      {tips.length === 0 ? (
        <p>No single value, as far as it could plausibly be off, changes the answer for this flight.</p>
      ) : (
        <ul>
          {shown.map((point) => (
            <Tip key={`${point.variable} ${point.changes}`} point={point} offBlocks_ms={offBlocks_ms} />
          ))}
        </ul>
      )}
      {tips.length > SHOWN ? (
        <button type="button" className="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
          {all ? "Fewer" : `${tips.length - SHOWN} more, less likely`}
        </button>
      ) : null}
      {tips.length > 0 && steady.length > 0 ? (
        <p>
          Looked for too: nothing comes to stop the flight or to be unknown, though a caution may come or go.{" "}
          {capital(steady.map(steadyWords).join("; "))}.
        </p>
      ) : null}
    </section>
  );
}

const HEIGHT_px = 34;
const BAR_px = 9;

/** A plain rule: a pointer at now, hatching after the edge. */
function Tip({ point, offBlocks_ms }: { readonly point: TippingPoint; readonly offBlocks_ms: number }) {
  const [ref, { width_px }] = useSize<HTMLDivElement>("tip");
  const { value, what, now } = tipWords(point, offBlocks_ms);
  // drawn from now to as far again behind the edge, within what is plausible
  const away = Math.abs(point.changes - point.now) || 1;
  const low = Math.max(point.low, Math.min(point.now, point.changes) - away);
  const high = Math.min(point.high, Math.max(point.now, point.changes) + away);
  const at = (value_: number) => ((value_ - low) / (high - low || 1)) * width_px;
  const [edge, pointer] = [at(point.changes), at(point.now)];
  const up = point.changes > point.now;
  const bad = point.better === up ? { x: 0, width: edge } : { x: edge, width: width_px - edge };
  return (
    <li>
      <p>
        <b>{value}</b> <span>{what}</span>
      </p>
      <div className="tip-rule" ref={ref}>
        {width_px === 0 ? null : (
          <svg width={width_px} height={HEIGHT_px} aria-hidden="true">
            <rect className="tip-bar" x={0.5} y={0.5} width={width_px - 1} height={BAR_px} />
            <Hatch x={bad.x} y={0} width={bad.width} height={BAR_px} gap={4} />
            <path className="tip-edge" d={`M${edge},-1v${BAR_px + 3}`} />
            <path className="tip-now" d={`M${pointer},${BAR_px}l-5,9h10z`} />
            <text
              className="tip-text"
              x={Math.min(width_px - 4, Math.max(4, pointer + 9))}
              y={BAR_px + 18}
              textAnchor={pointer > width_px - 120 ? "end" : "start"}
              dx={pointer > width_px - 120 ? -18 : 0}
            >
              {now}
            </text>
          </svg>
        )}
      </div>
      <p className="out-of-sight">{now}</p>
    </li>
  );
}
