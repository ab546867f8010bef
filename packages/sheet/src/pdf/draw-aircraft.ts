import { type Book, extent, noseUp, planView, type Stroke } from "@witnessmark/book";
import { balloons } from "../balloons.ts";
import { legendOf } from "../legend.ts";
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
  // the worst on top, and what is only named small
  for (const mark of marks.toReversed()) {
    const [x, y] = project(mark.place[0], mark.place[1]);
    if (mark.status === "clear") pen.rule(x, y - 3.2, x, y + 3.2, 1.5);
    else drawMark(document, mark.status, x, y, mark.note === undefined ? 7 : 11);
  }
  const legend_pt = legend(pen, marks, frame);
  numberNotes(pen, marks, project, frame, legend_pt);
}

const LEGEND_ROW = 14;

/** What the strokes and the marks on the drawing mean, as far as they stand on it; returns how high that is. */
function legend(pen: Pen, marks: readonly SheetMark[], { x, y }: Frame): number {
  let below = y + 11;
  for (const { status, words } of legendOf(marks)) {
    if (status === "clear") pen.rule(x + 12, below - 3.2, x + 12, below + 3.2, 1.5);
    else drawMark(pen.document, status, x + 12, below, 11);
    pen.line(words, x + 21, below + 3, { size: 9 });
    below += LEGEND_ROW;
  }
  return below - y - 4;
}

const RING_pt = 5.6;

/** Rings stand in the margins of the frame, each on its mark's own side, in the order of their height: lines never cross. */
function numberNotes(
  pen: Pen,
  marks: readonly SheetMark[],
  project: (x: number, y: number) => readonly [number, number],
  frame: Frame,
  legend_pt: number,
): void {
  const noted = marks.flatMap(({ note, place }) => {
    if (note === undefined) return [];
    const [x, y] = project(place[0], place[1]);
    return [{ note, x: x - frame.x, y: y - frame.y }];
  });
  const room = { width: frame.width, height: frame.height, radius: RING_pt, legend: legend_pt };
  for (const { note, x, y, bx, by } of balloons(noted, room)) {
    const inward = bx < frame.width / 2 ? 1 : -1;
    const [ringX, ringY] = [frame.x + bx, frame.y + by];
    pen.rule(ringX + inward * RING_pt, ringY, frame.x + x - inward * 6, frame.y + y, 0.5);
    pen.document.circle(ringX, ringY, RING_pt).lineWidth(0.8).fillAndStroke("white", "black");
    pen.line(String(note), ringX, ringY + 2.7, { size: 7.5, weight: "bold", align: "centre" });
  }
}
