import { type DrawnLine, type DrawnText, envelopeDrawing } from "../envelope/envelope-drawing.ts";
import type { SheetEnvelope } from "../flight/mass-and-balance.ts";
import { drawMark } from "./mark.ts";
import type { Origin } from "./measures.ts";
import type { Pen } from "./pen.ts";

/** The drawing is in 96ths of an inch. */
const SCALE = 0.75;

/** Stroke and dash, 96ths of an inch. */
const STROKES: Readonly<
  Record<DrawnLine["kind"], readonly [weight: number, dash?: readonly [number, number]]>
> = {
  hatch: [0.7],
  edge: [1.8],
  limit: [0.8, [5, 3]],
  rest: [1, [4, 3]],
  flown: [2.2],
  dimension: [0.8],
};
const LETTERS: Readonly<Record<DrawnText["kind"], { readonly size: number; readonly bold: boolean }>> = {
  scale: { size: 11, bold: false },
  limit: { size: 11, bold: false },
  margin: { size: 12, bold: true },
};

/** A width of paper behind a text that stands over lines. */
function blank(pen: Pen, text: DrawnText, size: number): void {
  const width = pen.width(text.text, { size, weight: "bold" }) + 2;
  const left =
    text.align === "centre" ? text.x - width / 2 : text.align === "right" ? text.x - width + 1 : text.x - 1;
  pen.document.rect(left, text.y - size * 0.78, width, size * 0.95).fill("white");
}

/** Draws the envelope with the flight in it; returns how high it is. */
export function drawEnvelope(pen: Pen, envelope: SheetEnvelope, { x, y }: Origin, width: number): number {
  const drawing = envelopeDrawing(envelope);
  const { document } = pen;
  document.save();
  document.translate(x + (width - drawing.width * SCALE) / 2, y).scale(SCALE);
  for (const { kind, d } of drawing.lines) {
    const [weight, dash] = STROKES[kind];
    document.save().path(d).lineWidth(weight).lineJoin("miter");
    if (dash !== undefined) document.dash(dash[0], { space: dash[1] });
    document.stroke("black").restore();
  }
  for (const mark of drawing.marks) drawMark(document, mark.status, mark.x, mark.y, 16);
  for (const text of drawing.texts) {
    const { size, bold } = LETTERS[text.kind];
    if (text.kind === "margin") blank(pen, text, size);
    pen.line(text.text, text.x, text.y, { size, weight: bold ? "bold" : "text", align: text.align });
  }
  document.restore();
  return drawing.height * SCALE;
}
