import type { Stroke } from "@witnessmark/book";
import { memo } from "react";
import "./drawing.css";

const classOf = ({ weight, dashed, filled, soft }: Stroke) =>
  ["stroke", `stroke-${weight}`, dashed && "stroke-dashed", filled && "stroke-filled", soft && "stroke-soft"]
    .filter(Boolean)
    .join(" ");

/** Lines that follow each other in the same look are one path; a filled body stays its own, for what it hides. */
export function merged(
  strokes: readonly Stroke[],
): readonly { readonly className: string; readonly d: string }[] {
  const paths: { className: string; d: string }[] = [];
  for (const stroke of strokes) {
    const className = classOf(stroke);
    const last = paths.at(-1);
    if (last !== undefined && last.className === className && !stroke.filled) last.d += stroke.d;
    else paths.push({ className, d: stroke.d });
  }
  return paths;
}

/** The strokes of a drawing, in their order. Memoised: an aircraft does not change while it is walked round. */
export const Strokes = memo(function Strokes({ strokes }: { readonly strokes: readonly Stroke[] }) {
  return (
    <g>
      {merged(strokes).map(({ className, d }, index) => (
        // the order is fixed by the book's geometry, so the place is the identity
        // biome-ignore lint/suspicious/noArrayIndexKey: strokes have no other identity than their place
        <path key={index} className={className} d={d} />
      ))}
    </g>
  );
});
