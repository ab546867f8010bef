import { envelopeDrawing, type SheetEnvelope } from "@witnessmark/sheet";
import { MarkAt } from "../../marks/mark.tsx";

const ANCHOR = { left: "start", right: "end", centre: "middle" } as const;

/** The envelope with the whole flight in it, in strokes, so that any printer prints it. */
export function PaperEnvelope({ envelope }: { readonly envelope: SheetEnvelope }) {
  const { width, height, lines, marks, texts } = envelopeDrawing(envelope);
  const margins = envelope.edges.map(({ text }) => text).join(", ");
  return (
    <svg
      className="paper-envelope"
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label={`The flight in the envelope; left to its edges: ${margins}`}
    >
      {lines.map(({ kind, d }) => (
        <path key={d} className={`paper-env-${kind}`} d={d} />
      ))}
      {marks.map(({ status, x, y }) => (
        <MarkAt key={`${x} ${y}`} status={status} x={x} y={y} size_px={16} />
      ))}
      {texts.map(({ kind, text, x, y, align }) => (
        <text
          key={`${text} ${x}`}
          className={`paper-env-${kind}-text`}
          x={x}
          y={y}
          textAnchor={ANCHOR[align]}
        >
          {text}
        </text>
      ))}
    </svg>
  );
}
