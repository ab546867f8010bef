import { type Book, extent, noseUp, planView, type Stroke } from "@witnessmark/book";
import type { SheetMark } from "../sheet.ts";
import { drawMark } from "./mark.ts";
import type { Pen } from "./pen.ts";

interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const WEIGHT_pt: Readonly<Record<Stroke["weight"], number>> = {
  outline: 1.1,
  inside: 0.55,
  hair: 0.35,
  window: 1.4,
  leg: 1.4,
};

/** The aircraft nose up in a frame, a mark at every point, and a numbered ring beside each that has a note. */
export function drawAircraft(pen: Pen, book: Book, marks: readonly SheetMark[], frame: Frame): void {
  const { document } = pen;
  const bounds = extent(book.geometry);
  const length_m = bounds.aft_m - bounds.fore_m;
  const span_m = bounds.right_m - bounds.left_m;
  const scale = Math.min((frame.width - 48) / span_m, (frame.height - 20) / length_m);
  const originX = frame.x + frame.width / 2;
  const originY = frame.y + frame.height / 2 - ((bounds.fore_m + bounds.aft_m) / 2) * scale;
  const project = noseUp(scale, originX, originY);
  for (const stroke of planView(book.geometry, project, 1)) {
    document.save();
    document.path(stroke.d).lineWidth(WEIGHT_pt[stroke.weight]).lineJoin("round");
    if (stroke.dashed) document.dash(2.5, { space: 1.6 });
    if (stroke.filled) document.fillAndStroke("white", "black");
    else document.stroke("black");
    document.restore();
  }
  for (const mark of marks) {
    const [x, y] = project(mark.place[0], mark.place[1]);
    if (mark.status === "clear") pen.rule(x, y - 3.2, x, y + 3.2, 1.5);
    else drawMark(document, mark.status, x, y, 11);
  }
  legend(pen, marks, frame);
  numberNotes(pen, marks, project, frame);
}

const LEGEND = 30;

/** What the strokes and the marks on the drawing mean, at its top left. */
function legend(pen: Pen, marks: readonly SheetMark[], { x, y }: Frame): void {
  pen.rule(x + 12, y + 8, x + 12, y + 14.4, 1.5);
  pen.line("as it should be", x + 21, y + 14, { size: 9 });
  if (marks.every(({ status }) => status === "clear")) return;
  drawMark(pen.document, "caution", x + 12, y + 25, 11);
  pen.line("see the note", x + 21, y + 28, { size: 9 });
}

const RING_pt = 5.6;

/** Rings stand in the margins of the frame, each on its mark's own side, in the order of their height: lines never cross. */
function numberNotes(
  pen: Pen,
  marks: readonly SheetMark[],
  project: (x: number, y: number) => readonly [number, number],
  frame: Frame,
): void {
  for (const side of ["left", "right"] as const) {
    const noted = marks
      .filter(
        (mark) =>
          mark.note !== undefined && mark.status !== "open" && mark.place[1] < 0 === (side === "left"),
      )
      .map((mark) => ({ note: mark.note ?? 0, at: project(mark.place[0], mark.place[1]) }))
      .sort((a, b) => a.at[1] - b.at[1]);
    const x = side === "left" ? frame.x + 10 : frame.x + frame.width - 10;
    let lowest = frame.y + (side === "left" ? LEGEND + 10 : 10);
    for (const { note, at } of noted) {
      const y = Math.max(lowest, Math.min(at[1], frame.y + frame.height - 10));
      lowest = y + 2 * RING_pt + 2;
      if (lowest > frame.y + frame.height) break; // the note itself is in the list all the same
      const inward = side === "left" ? 1 : -1;
      pen.rule(x + inward * RING_pt, y, at[0] - inward * 6, at[1], 0.5);
      pen.document.circle(x, y, RING_pt).lineWidth(0.8).fillAndStroke("white", "black");
      pen.line(String(note), x, y + 2.7, { size: 7.5, weight: "bold", align: "centre" });
    }
  }
}
