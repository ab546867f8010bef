import PdfDocument from "pdfkit";
import { attachPacked, type PackedFile, packText } from "../pdf/attach-packed.ts";
import { collect } from "../pdf/collect.ts";
import { Pen } from "../pdf/pen.ts";
import { registerTypeFace } from "../pdf/type-face.ts";
import type { AircraftRecord } from "./aircraft-record.ts";
import { drawRecord } from "./draw-record.ts";

/**
 * The aircraft's record as a PDF file, black on white, with the ledger that it is drawn from attached.
 * The same record and ledger give the same bytes.
 */
export async function renderRecordPdf(given: {
  readonly record: AircraftRecord;
  /** The file that `record.ledger` names, or as much as a PDF needs of it. */
  readonly ledgerText: string | PackedFile;
  readonly paper?: "A4" | "LETTER";
}): Promise<Uint8Array> {
  const { record, ledgerText } = given;
  const at = new Date(record.madeAt);
  const { registration, period, ledger } = record;
  const document = new PdfDocument({
    size: given.paper ?? "A4",
    margin: 0,
    lang: "en",
    displayTitle: true,
    info: {
      Title: `${registration}: aircraft's record, ${period.from} to ${period.to}`,
      Author: "Witnessmark",
      Subject: record.caution,
      Creator: "Witnessmark",
      Producer: "Witnessmark",
      CreationDate: at,
      ModDate: at,
    },
  });
  const done = collect(document);
  registerTypeFace(document);
  drawRecord(new Pen(document), record, () => document.addPage());
  const file = typeof ledgerText === "string" ? packText(ledgerText) : ledgerText;
  attachPacked(document, file, {
    name: ledger.file,
    type: "application/jsonl",
    description: "The whole ledger as JSON Lines",
    at,
  });
  document.end();
  return done;
}
