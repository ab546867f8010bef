import type { Sheet } from "../sheet.ts";
import { fitting, MM, type Origin, WIDTH } from "./measures.ts";
import type { Pen } from "./pen.ts";

const LEFT = 102 * MM;
const RIGHT = WIDTH - LEFT;
const VOID_ROW = 13;
const LEAST = 118;
const CAUTION = { size: 9.5, weight: "bold" } as const;
const HOLDS = { size: 10.5, weight: "black" } as const;

function field(pen: Pen, label: string, value: string, at: Origin, width: number): void {
  pen.line(label, at.x + 6, at.y + 10.5, { size: 8.5 });
  pen.line(value, at.x + 6, at.y + 23.5, { size: fitting(pen, value, width - 12, 11), weight: "black" });
}

const holdsText = (sheet: Sheet): string => `${sheet.holds}. Void at once when`;

const isLong = (pen: Pen, text: string): boolean => pen.width(text, { size: 9.5 }) > LEFT / 2 - 22;

/** What makes it void, two in a row; one that is too long for half a row has its own. */
function voidRows(pen: Pen, voidWhen: readonly string[]): readonly (readonly string[])[] {
  const rows: string[][] = [];
  for (const words of voidWhen) {
    const last = rows.at(-1);
    const isOpen = last?.length === 1 && !isLong(pen, last[0] ?? "");
    if (last !== undefined && isOpen && !isLong(pen, words)) last.push(words);
    else rows.push([words]);
  }
  return rows;
}

interface Heights {
  readonly holds: number;
  readonly rows: readonly (readonly string[])[];
  readonly caution: number;
}

function heightsOf(pen: Pen, sheet: Sheet): Heights {
  return {
    holds: pen.wrap(holdsText(sheet), LEFT - 14, HOLDS).length * 12.6 + 8,
    rows: voidRows(pen, sheet.voidWhen),
    caution: pen.wrap(sheet.caution, LEFT - 30, CAUTION).length * 12.35 + 8,
  };
}

/** How high the foot is; `drawFoot` draws as much. */
export function footHeight(pen: Pen, sheet: Sheet): number {
  const { holds, rows, caution } = heightsOf(pen, sheet);
  return Math.max(LEAST, holds + rows.length * VOID_ROW + caution + 12);
}

/** Until when it holds, what makes it void, the caution; who signed what. */
export function drawFoot(pen: Pen, sheet: Sheet, { x, y }: Origin): void {
  const height = footHeight(pen, sheet);
  const heights = heightsOf(pen, sheet);
  pen.rule(x + LEFT, y, x + LEFT, y + height, 1.2);
  pen.block(holdsText(sheet), x + 7, y + 5, LEFT - 14, HOLDS, 1.2);
  let below = y + heights.holds;
  for (const row of heights.rows) {
    row.forEach((when, index) => {
      const left = x + 7 + index * (LEFT / 2);
      pen.box(left, below, 8, 8, 0.9);
      pen.line(when, left + 13, below + 7.4, { size: fitting(pen, when, LEFT - 28, 9.5) });
    });
    below += VOID_ROW;
  }
  const top = y + height - heights.caution - 7;
  pen.box(x + 7, top, LEFT - 14, heights.caution, 1.4);
  pen.block(sheet.caution, x + 15, top + 3.5, LEFT - 30, CAUTION);
  signature(pen, sheet, { x: x + LEFT, y }, height);
}

function signature(pen: Pen, sheet: Sheet, { x, y }: Origin, height: number): void {
  const signed = sheet.signature;
  const row = 29;
  const tall = height - 3 * row;
  const half = RIGHT * 0.47;
  const tops = [y + tall, y + tall + row, y + tall + 2 * row] as const;
  for (const top of tops) pen.rule(x, top, x + RIGHT, top, 0.5);
  if (signed === null) field(pen, "Pilot in command", "Not signed", { x, y }, RIGHT);
  else {
    field(pen, `Signed by, ${signed.role}`, signed.by, { x, y }, RIGHT);
    pen.rule(x + half, tops[0], x + half, tops[1], 0.5);
    field(pen, "Signed", signed.at, { x, y: tops[0] }, half);
    const label = signed.keySigned ? "Decision" : "Decision, no key on this phone";
    field(pen, label, signed.hash, { x: x + half, y: tops[0] }, RIGHT - half);
  }
  field(
    pen,
    `Rests on: ${sheet.walk.charAt(0).toLowerCase()}${sheet.walk.slice(1)}`,
    sheet.restsOn,
    { x, y: tops[1] },
    RIGHT,
  );
  pen.block(sheet.notice, x + 6, tops[2] + 3, RIGHT - 12, { size: 8.5 }, 1.2);
}

/** Between the two halves: room for a line on either side of the cut. */
export const CUT = 36;
export const GROUND = 33;

/** The half that stays behind; the stripe crosses the cut, so the two show that they belong together. */
export function drawGroundHalf(pen: Pen, sheet: Sheet, { x, y }: Origin): void {
  const cut = y + CUT / 2;
  pen.rule(x + 23.5 * MM, y, x + 23.5 * MM, y + CUT, 11);
  pen.line("Take this half with you.", x + 29 * MM, cut - 6, { size: 8.5 });
  pen.rule(x, cut, x + WIDTH, cut, 0.9, 3);
  pen.line(
    "Leave this half on the ground. The stripe shows that the two belong together.",
    x + 29 * MM,
    cut + 13,
    { size: 8.5 },
  );
  const top = y + CUT;
  pen.box(x, top, WIDTH, GROUND, 1.5);
  const first = 45 * MM;
  const each = (WIDTH - first) / (sheet.slip.length - 1);
  sheet.slip.forEach(({ label, value, after }, index) => {
    const left = index === 0 ? x : x + first + (index - 1) * each;
    const width = index === 0 ? first : each;
    if (index > 0) pen.rule(left, top, left, top + GROUND, 0.5);
    const whole = after === undefined ? value : `${value} ${after}`;
    const size = fitting(pen, whole, width - 12, 12);
    pen.line(label, left + 6, top + 11.5, { size: 8.5 });
    pen.line(value, left + 6, top + 25.5, { size, weight: "black" });
    if (after !== undefined)
      pen.line(after, left + 6 + pen.width(`${value} `, { size, weight: "black" }), top + 25.5, {
        size: size * 0.85,
      });
  });
}
