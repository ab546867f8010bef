import { runsOf, type Weight } from "./type-face.ts";

export interface Lettering {
  readonly size: number;
  readonly weight?: Weight;
  readonly align?: "left" | "right" | "centre";
}

/** Draws on one document in points from the top left; black only, as the sheet must survive any printer. */
export class Pen {
  readonly document: PDFKit.PDFDocument;

  constructor(document: PDFKit.PDFDocument) {
    this.document = document;
  }

  width(text: string, how: Lettering): number {
    let width = 0;
    for (const run of runsOf(text, how.weight ?? "text")) {
      width += this.document.font(run.font).fontSize(how.size).widthOfString(run.text);
    }
    return width;
  }

  /** One line with its base line at y. */
  line(text: string, x: number, y: number, how: Lettering): void {
    const width = how.align === undefined || how.align === "left" ? 0 : this.width(text, how);
    let at = how.align === "right" ? x - width : how.align === "centre" ? x - width / 2 : x;
    for (const run of runsOf(text, how.weight ?? "text")) {
      this.document.font(run.font).fontSize(how.size);
      this.document.fillColor("black").text(run.text, at, y, { lineBreak: false, baseline: "alphabetic" });
      at += this.document.widthOfString(run.text);
    }
  }

  /** Breaks a text into lines of at most a width; a word longer than that is broken inside. */
  wrap(text: string, width: number, how: Lettering): string[] {
    const lines: string[] = [];
    let line = "";
    for (const word of text.split(/\s+/).filter((part) => part !== "")) {
      const longer = line === "" ? word : `${line} ${word}`;
      if (this.width(longer, how) <= width) {
        line = longer;
        continue;
      }
      if (line !== "") lines.push(line);
      line = word;
      while (this.width(line, how) > width && line.length > 1) {
        let fits = line.length - 1;
        while (fits > 1 && this.width(line.slice(0, fits), how) > width) fits -= 1;
        lines.push(line.slice(0, fits));
        line = line.slice(fits);
      }
    }
    if (line !== "") lines.push(line);
    return lines;
  }

  /** Wrapped text from the top at y; returns the y below it. */
  block(text: string, x: number, y: number, width: number, how: Lettering, leading = 1.3): number {
    let base = y + how.size;
    for (const line of this.wrap(text, width, how)) {
      this.line(line, x, base, how);
      base += how.size * leading;
    }
    return base - how.size;
  }

  /** Wrapped text that begins bold; returns how high it is. With `draw` false it only measures. */
  leadBlock(
    lead: string,
    rest: string,
    at: { readonly x: number; readonly y: number; readonly width: number; readonly size: number },
    draw = true,
  ): number {
    const { x, y, width, size } = at;
    const words = [
      ...lead.split(/\s+/).map((text) => ({ text, weight: "bold" as const })),
      ...rest.split(/\s+/).map((text) => ({ text, weight: "text" as const })),
    ].filter(({ text }) => text !== "");
    const space = this.width(" ", { size });
    let left = 0;
    let base = y + size;
    for (const { text, weight } of words) {
      const wide = this.width(text, { size, weight });
      if (left > 0 && left + wide > width) {
        left = 0;
        base += size * 1.3;
      }
      if (draw) this.line(text, x + left, base, { size, weight });
      left += wide + space;
    }
    return base - y;
  }

  rule(x0: number, y0: number, x1: number, y1: number, weight = 0.75, dash?: number): void {
    this.document.save();
    if (dash !== undefined) this.document.dash(dash, { space: dash });
    this.document.moveTo(x0, y0).lineTo(x1, y1).lineWidth(weight).stroke("black").restore();
  }

  box(x: number, y: number, width: number, height: number, weight = 1.5): void {
    this.document.rect(x, y, width, height).lineWidth(weight).stroke("black");
  }
}
