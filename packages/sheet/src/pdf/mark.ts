import type { Status } from "@witnessmark/ledger";

const TURN_deg: Readonly<Record<Status, number>> = { clear: 0, caution: 40, stop: 90, open: 0 };

const hexagon = (document: PDFKit.PDFDocument, radius: number, turn_deg: number) => {
  const corners = Array.from({ length: 6 }, (_, i): [number, number] => {
    const angle = ((turn_deg + i * 60 - 90) * Math.PI) / 180;
    return [radius * Math.cos(angle), radius * Math.sin(angle)];
  });
  return document.polygon(...corners);
};

/** The witness mark in black and white, `size` points wide, centred on x, y: the only form that is printed. */
export function drawMark(
  document: PDFKit.PDFDocument,
  status: Status,
  x: number,
  y: number,
  size: number,
): void {
  const large = size >= 24;
  const radius = large ? 15.5 : 16.5;
  const edge = large ? 2.2 : 4.2;
  const stripe = large ? 7.2 : 8;
  const half = large ? 12.6 : 13;
  document.save();
  document.translate(x, y).scale(size / 48);
  if (status === "open") {
    hexagon(document, radius, 0)
      .lineWidth(edge)
      .dash(radius * 0.56, { space: radius * 0.44, phase: radius * 0.28 })
      .stroke("black");
    document.restore();
    return;
  }
  if (large)
    document
      .circle(0, 0, 20.4)
      .lineWidth(edge * 0.42)
      .fillAndStroke("white", "black");
  const stub = (from: number, to: number) =>
    document.rect(-stripe / 2, from, stripe, to - from).fill("black");
  if (status !== "clear") {
    stub(-23.6, -17);
    stub(17, 23.6);
  }
  hexagon(document, radius, TURN_deg[status])
    .lineWidth(edge)
    .lineJoin("round")
    .fillAndStroke(status === "stop" ? "black" : "white", "black");
  document.save().rotate(TURN_deg[status], { origin: [0, 0] });
  const reach = status === "clear" ? 23.6 : half;
  document.rect(-stripe / 2, -reach, stripe, 2 * reach).fill(status === "stop" ? "white" : "black");
  document.restore().restore();
}
