import type { Document } from "yaml";

/** A book in the look in which a person writes it: no line is broken for them, comments stay where they are. */
export const writeYaml = (document: Document): string =>
  document.toString({ lineWidth: 0, flowCollectionPadding: true });
