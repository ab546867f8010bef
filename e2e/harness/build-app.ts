import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "vite";
import { ROOT } from "./server.ts";

export interface BuiltApp {
  readonly directory: string;
  remove(): void;
}

/** The name of the mark in the page's head that tells one build from another. */
export const BUILD_MARK = "witnessmark-build";

/**
 * Builds the app with a mark of its own in every part, so that each part gets another name, as in a later version.
 * The app as `npm start` builds it carries no mark.
 */
export async function buildApp(mark: string): Promise<BuiltApp> {
  const directory = mkdtempSync(join(tmpdir(), "witnessmark-app-"));
  await build({
    configFile: join(ROOT, "packages/app/vite.config.ts"),
    logLevel: "error",
    mode: "production",
    build: { outDir: directory, emptyOutDir: true },
    plugins: [
      {
        name: "marks-a-build",
        apply: "build",
        renderChunk: (code) => ({
          code: `${code}\n;globalThis.${BUILD_MARK.replace("-", "_")}="${mark}";`,
          map: null,
        }),
        transformIndexHtml: () => [
          { tag: "meta", attrs: { name: BUILD_MARK, content: mark }, injectTo: "head" },
        ],
      },
    ],
  });
  return { directory, remove: () => rmSync(directory, { recursive: true, force: true }) };
}
