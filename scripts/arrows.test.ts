import { spawnSync } from "node:child_process";
import { copyFileSync, globSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";

// The rule of ARCHITECTURE.md: arrows point down only, nothing reaches past a package's face, and the pure packages
// know no clock, no chance and no machine. Biome holds the first two; this proves that it does.

const ROOT = join(import.meta.dirname, "..");
const BIOME = join(ROOT, "node_modules/@biomejs/biome/bin/biome");

const biome = (args: readonly string[], cwd = ROOT, rule = "style/noRestrictedImports") => {
  const done = spawnSync(process.execPath, [BIOME, "lint", `--only=${rule}`, ...args], {
    cwd,
    encoding: "utf8",
  });
  const output = done.stdout + done.stderr;
  return { status: done.status, output, filesSeen: Number(/Checked (\d+) files?/.exec(output)?.[1] ?? 0) };
};

/** Lints one file as if it stood at `path`, in an empty copy of the tree that has our rules and nothing else. */
function lintAs(path: string, source: string, rule = "style/noRestrictedImports") {
  const tree = mkdtempSync(join(tmpdir(), "arrows-"));
  try {
    copyFileSync(join(ROOT, "biome.json"), join(tree, "biome.json"));
    mkdirSync(join(tree, dirname(path)), { recursive: true });
    writeFileSync(join(tree, path), source);
    return biome(["--vcs-enabled=false", path], tree, rule);
  } finally {
    rmSync(tree, { recursive: true });
  }
}

const importing = (name: string) => `import { thing } from "${name}";\nexport const other = thing;\n`;

describe("arrows point down only", () => {
  it.each([
    { from: "engine", to: "@witnessmark/book" },
    { from: "engine", to: "@witnessmark/ledger" },
    { from: "book", to: "@witnessmark/ledger" },
    { from: "book", to: "@witnessmark/assess" },
    { from: "weather", to: "@witnessmark/book" },
    { from: "fit", to: "@witnessmark/book" },
    { from: "ledger", to: "@witnessmark/assess" },
    { from: "ledger", to: "@witnessmark/store" },
    { from: "assess", to: "@witnessmark/planner" },
    { from: "assess", to: "@witnessmark/fit" },
    { from: "planner", to: "@witnessmark/assess" },
    { from: "store", to: "@witnessmark/server" },
    { from: "sheet", to: "@witnessmark/server" },
    { from: "record", to: "@witnessmark/sheet" },
    { from: "assess", to: "@witnessmark/record" },
    { from: "server", to: "@witnessmark/app" },
    { from: "app", to: "@witnessmark/store" },
    { from: "app", to: "@witnessmark/server" },
  ])("a planted import of $to in $from is caught", ({ from, to }) => {
    const planted = lintAs(`packages/${from}/src/planted.ts`, importing(to));
    expect(planted.filesSeen, planted.output).toBe(1);
    expect(planted.output).toContain("noRestrictedImports");
    expect(planted.status).not.toBe(0);
  });

  it.each([
    { from: "book", to: "@witnessmark/engine" },
    { from: "ledger", to: "@witnessmark/book" },
    { from: "assess", to: "@witnessmark/ledger" },
    { from: "assess", to: "@witnessmark/weather" },
    { from: "fit", to: "@witnessmark/engine" },
    { from: "app", to: "@witnessmark/server/client" },
    { from: "server", to: "@witnessmark/store" },
  ])("an import of $to in $from is allowed", ({ from, to }) => {
    const planted = lintAs(`packages/${from}/src/planted.ts`, importing(to));
    expect(planted.filesSeen, planted.output).toBe(1);
    expect(planted.status, planted.output).toBe(0);
  });

  it("holds in every package, and has looked at files in each", () => {
    for (const name of [
      "engine",
      "weather",
      "fit",
      "book",
      "ledger",
      "assess",
      "planner",
      "record",
      "sheet",
      "store",
      "server",
      "app",
      "cli",
    ]) {
      const found = biome([`packages/${name}/src`]);
      expect(found.filesSeen, `files of ${name} that were looked at`).toBeGreaterThan(0);
      expect(found.status, found.output).toBe(0);
    }
  });
});

describe("nothing reaches past a package's face", () => {
  const PAST_THE_FACE = /from "(?:@witnessmark\/[a-z]+\/src\/|(?:\.\.\/)+(?:packages\/)?[a-z]+\/src\/)/;

  it("neither by name nor by a relative path", () => {
    const files = globSync("{packages/*/src,bench,e2e,reference}/**/*.{ts,tsx}", { cwd: ROOT });
    expect(files.length).toBeGreaterThan(40);
    expect(files.filter((file) => PAST_THE_FACE.test(readFileSync(join(ROOT, file), "utf8")))).toEqual([]);
  });

  it.each([
    'from "@witnessmark/book/src/book.ts"',
    'from "../../book/src/book.ts"',
    'from "../packages/book/src/book.ts"',
  ])("a planted import %s would be caught", (planted) => {
    expect(PAST_THE_FACE.test(planted)).toBe(true);
  });
});

/** Source lines of the pure packages, tests and test helpers left out, comments stripped. */
function pureSources(): { file: string; source: string }[] {
  return globSync("packages/{engine,weather,book,ledger,assess,planner,record}/src/**/*.ts", { cwd: ROOT })
    .filter((file) => !/\.test(-d)?\.ts$/.test(file) && !file.includes("/testing/"))
    .map((file) => ({
      file,
      source: readFileSync(join(ROOT, file), "utf8").replace(/\/\*[\s\S]*?\*\/|^\s*\/\/.*$/gm, ""),
    }));
}

/** Clock, chance and Node's own modules; Biome's noRestrictedGlobals holds the rest, as it can tell a variable from a global. */
const IMPURE = /\bDate\.now\(|\bnew Date\(\)|\bMath\.random\(|\bfrom "node:/;

describe("the pure packages know no clock, no chance and no machine", () => {
  it("no such call in their sources", () => {
    const sources = pureSources();
    expect(sources.length).toBeGreaterThan(40);
    expect(sources.filter(({ source }) => IMPURE.test(source)).map(({ file }) => file)).toEqual([]);
  });

  it.each(["Date.now()", "new Date()", "Math.random()", 'import x from "node:fs"'])(
    "a planted %s would be caught",
    (planted) => {
      expect(IMPURE.test(`export const late = ${planted};`)).toBe(true);
    },
  );

  it.each([
    "window.open()",
    "document.body",
    "fetch('/')",
    "process.env",
    "localStorage.length",
    "performance.now()",
  ])("a planted %s is caught", (planted) => {
    const found = lintAs(
      "packages/engine/src/planted.ts",
      `export const here = ${planted};\n`,
      "style/noRestrictedGlobals",
    );
    expect(found.filesSeen, found.output).toBe(1);
    expect(found.output).toContain("noRestrictedGlobals");
    expect(found.status).not.toBe(0);
  });
});
