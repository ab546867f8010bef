import { memo } from "react";
import { MarkAt } from "../marks/mark.tsx";
import type { DrawingMark } from "./drawing-props.ts";
import { needsLeader, type Stood } from "./mark-places.ts";
import { worst } from "./walk-scene.ts";

const Glyph = memo(MarkAt);
const LEAST_LETTER_px = 13;

interface MarkStrokesProps {
  readonly stood: Stood;
  readonly marks: readonly DrawingMark[];
  readonly size_px: number;
  readonly isSelected: boolean;
}

/** One mark at its square, or the count of those that share it; a leader when the square had to give way. */
export const StoodMark = memo(function StoodMark({ stood, marks, size_px, isSelected }: MarkStrokesProps) {
  const { x, y, ofX, ofY } = stood;
  const [mark] = marks;
  if (mark === undefined) return null;
  return (
    <>
      {needsLeader(stood) ? (
        <>
          <path
            className="mark-leader"
            d={`M${ofX.toFixed(1)},${ofY.toFixed(1)}L${x.toFixed(1)},${y.toFixed(1)}`}
          />
          <circle className="mark-foot" cx={ofX} cy={ofY} r={1.6} />
        </>
      ) : null}
      {isSelected ? <circle className="mark-ring" cx={x} cy={y} r={Math.max(12, size_px * 0.72)} /> : null}
      {marks.length > 1 ? (
        <Several marks={marks} x={x} y={y} half_px={Math.min(stood.half_px, size_px * 0.75)} />
      ) : mark.status === undefined ? (
        <circle className={`mark-dot mark-${mark.state ?? "left"}`} cx={x} cy={y} r={size_px * 0.28} />
      ) : (
        <Glyph status={mark.status} x={x} y={y} size_px={size_px} />
      )}
    </>
  );
}, looksTheSame);

/** An answer changes one mark: the others are not drawn again. */
function looksTheSame(was: MarkStrokesProps, now: MarkStrokesProps): boolean {
  return (
    was.stood === now.stood &&
    was.size_px === now.size_px &&
    was.isSelected === now.isSelected &&
    was.marks.length === now.marks.length &&
    was.marks.every(
      ({ status, state }, index) =>
        status === now.marks[index]?.status && (status !== undefined || state === now.marks[index]?.state),
    )
  );
}

/** How many stand here, in a ring that says the worst of them: broken while one is open, filled for a stop. */
function Several({
  marks,
  x,
  y,
  half_px,
}: {
  readonly marks: readonly DrawingMark[];
  readonly x: number;
  readonly y: number;
  readonly half_px: number;
}) {
  const statuses = marks.flatMap(({ status }) => (status === undefined ? [] : [status]));
  const status = statuses.length === 0 ? "plain" : worst(statuses);
  // the ring and half its line stay inside the square
  const r = Math.min(13, half_px - 0.8);
  const letter_px = Math.max(LEAST_LETTER_px, r * 1.2);
  return (
    <g className={`mark-several several-${status}`}>
      <circle cx={x} cy={y} r={r} />
      <text x={x} y={y + letter_px * 0.35} textAnchor="middle" fontSize={letter_px}>
        {marks.length}
      </text>
    </g>
  );
}
