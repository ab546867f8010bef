import type { Citations } from "./ruling.ts";

export const SIGNATURE_CITATIONS: Citations = [
  {
    title: "AC 120-78: electronic signatures, recordkeeping and manuals",
    edition: "revision A, paraphrased",
    status: "from memory",
  },
];

/** What an electronic signature must be. */
export const SIGNATURE_ATTRIBUTES = [
  "unique",
  "controlled-by-signer",
  "signer-notified-and-intends",
  "deliberate-act",
  "scope-of-what-is-signed-clear",
  "bound-to-record",
  "traceable-retrievable",
  "non-repudiable",
  "access-secured",
  "permanent-unalterable",
  "correctable-with-trail",
  "identifies-and-authenticates",
  "archivable",
] as const;

export const signatureLacks = (has: readonly string[]): readonly string[] =>
  SIGNATURE_ATTRIBUTES.filter((attribute) => !has.includes(attribute));
