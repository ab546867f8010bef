import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** An empty folder for one test, and how to take it away. */
export function temporaryFolder(): { readonly path: string; readonly remove: () => void } {
  const path = mkdtempSync(join(tmpdir(), "witnessmark-"));
  return { path, remove: () => rmSync(path, { recursive: true, force: true }) };
}
