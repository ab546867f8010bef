import { createHash } from "node:crypto";
import { deflateSync } from "node:zlib";

/** A file as a PDF holds it: deflated, so that the whole of a long one is never in memory. */
export interface PackedFile {
  readonly deflated: Uint8Array;
  readonly size_B: number;
  /** Hexadecimal; a PDF names its embedded files by it (ISO 32000-1, 7.11.4). */
  readonly md5: string;
}

export function packText(text: string): PackedFile {
  const bytes = Buffer.from(text, "utf8");
  return {
    deflated: deflateSync(bytes),
    size_B: bytes.byteLength,
    md5: createHash("md5").update(bytes).digest("hex"),
  };
}

interface AttachAbout {
  readonly name: string;
  readonly type: string;
  readonly description: string;
  readonly at: Date;
}

/** What of a document is used that its types do not tell. */
interface Inner {
  addNamedEmbeddedFile(name: string, file: PDFKit.PDFKitReference): void;
  readonly _root: { readonly data: { AF?: PDFKit.PDFKitReference[] } };
}

/**
 * Embeds a file that is deflated already: the document's own way deflates it anew, and works out its checksum in plain
 * JavaScript, which takes a minute for ten years.
 */
export function attachPacked(
  document: PDFKit.PDFDocument,
  { deflated, size_B, md5 }: PackedFile,
  { name, type, description, at }: AttachAbout,
): void {
  const inner = document as unknown as Inner; // parts of the document that its types leave out
  const embedded = document.ref({
    Type: "EmbeddedFile",
    Subtype: type.replace("/", "#2F"),
    Filter: "FlateDecode",
    Params: {
      CreationDate: at,
      ModDate: at,
      CheckSum: new String(md5),
      Size: size_B,
    },
  });
  embedded.end(Buffer.from(deflated.buffer, deflated.byteOffset, deflated.byteLength));
  const spec = document.ref({
    Type: "Filespec",
    AFRelationship: "Unspecified",
    F: new String(name),
    EF: { F: embedded },
    UF: new String(name),
    Desc: new String(description),
  });
  spec.end("");
  inner.addNamedEmbeddedFile(name, spec);
  inner._root.data.AF = [...(inner._root.data.AF ?? []), spec];
}
