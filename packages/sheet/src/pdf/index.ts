import type { Book } from "@witnessmark/book";
import PdfDocument from "pdfkit";
import type { Sheet } from "../sheet.ts";
import { collect } from "./collect.ts";
import { drawSheet } from "./page.ts";
import { Pen } from "./pen.ts";
import { registerTypeFace } from "./type-face.ts";

export { type LedgerSource, recordOfSource, type SourceRecord } from "../record/record-of-source.ts";
export { renderRecordPdf } from "../record/render-record-pdf.ts";

/** The signed record that travels inside the PDF. */
export interface SheetAttachment {
  readonly name: string;
  /** Canonical JSON text. */
  readonly text: string;
  readonly description: string;
}

/**
 * The sheet as a PDF file, black on white, with the signed record attached.
 * The same sheet and attachments at the same moment give the same bytes.
 *
 * @param at the moment written into the file's own properties
 */
export async function renderSheetPdf(given: {
  readonly sheet: Sheet;
  readonly book: Book;
  readonly attachments: readonly SheetAttachment[];
  readonly at: Date;
  readonly paper?: "A4" | "LETTER";
}): Promise<Uint8Array> {
  const { sheet, at } = given;
  const document = new PdfDocument({
    size: given.paper ?? "A4",
    margin: 0,
    lang: "en",
    displayTitle: true,
    info: {
      Title: `${sheet.registration}: ${sheet.title}, ${sheet.date}`,
      Author: sheet.signature?.by ?? "Not signed",
      Subject: sheet.caution,
      Creator: "Witnessmark",
      Producer: "Witnessmark",
      CreationDate: at,
      ModDate: at,
    },
  });
  const done = collect(document);
  registerTypeFace(document);
  drawSheet(new Pen(document), sheet, given.book, () => document.addPage());
  for (const attachment of given.attachments) {
    document.file(Buffer.from(attachment.text, "utf8"), {
      name: attachment.name,
      type: "application/json",
      description: attachment.description,
      creationDate: at,
      modifiedDate: at,
    });
  }
  document.end();
  return done;
}
