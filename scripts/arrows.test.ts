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

interface Planted {
  readonly path: string;
  readonly source: string;
}

/**
 * Lints files as if they stood at their paths, all at once in an empty copy of the tree that has our rules and nothing
 * else.
 *
 * @returns for each of them, the rules that it breaks
 */
function lintAs(planted: readonly Planted[], rule = "style/noRestrictedImports"): readonly string[][] {
  const tree = mkdtempSync(join(tmpdir(), "arrows-"));
  try {
    copyFileSync(join(ROOT, "biome.json"), join(tree, "biome.json"));
    for (const { path, source } of planted) {
      mkdirSync(join(tree, dirname(path)), { recursive: true });
      writeFileSync(join(tree, path), source);
    }
    const all = ["--vcs-enabled=false", "--max-diagnostics=none", "--colors=off", "packages"];
    const { filesSeen, output, status } = biome(all, tree, rule);
    if (filesSeen !== planted.length)
      throw new Error(`expected ${planted.length} files, looked at ${output}`);
    const found = planted.map(({ path }) =>
      [...output.matchAll(/^(\S+?):\d+:\d+ lint\/\w+\/(\w+)/gm)].flatMap(([, at, broken]) =>
        at === path && broken !== undefined ? [broken] : [],
      ),
    );
    if ((status === 0) !== (found.flat().length === 0))
      throw new Error(`cannot tell what was found: ${output}`);
    return found;
  } finally {
    rmSync(tree, { recursive: true });
  }
}

const importing = (name: string) => `import { thing } from "${name}";\nexport const other = thing;\n`;

/** An import, in a file of its own. */
const importFrom = ({ from, to }: { readonly from: string; readonly to: string }): Planted => ({
  path: `packages/${from}/src/planted-${to.replaceAll(/\W+/g, "-")}.ts`,
  source: importing(to),
});

const AGAINST = [
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
];
const ALLOWED = [
  { from: "book", to: "@witnessmark/engine" },
  { from: "ledger", to: "@witnessmark/book" },
  { from: "assess", to: "@witnessmark/ledger" },
  { from: "assess", to: "@witnessmark/weather" },
  { from: "fit", to: "@witnessmark/engine" },
  { from: "app", to: "@witnessmark/server/client" },
  { from: "server", to: "@witnessmark/store" },
];

describe("arrows point down only", () => {
  const found = lintAs([...AGAINST, ...ALLOWED].map(importFrom));

  it.each(AGAINST.map((arrow, index) => ({ ...arrow, broken: found[index] })))(
    "a planted import of $to in $from is caught",
    ({ broken }) => {
      expect(broken).toEqual(["noRestrictedImports"]);
    },
  );

  it.each(ALLOWED.map((arrow, index) => ({ ...arrow, broken: found[AGAINST.length + index] })))(
    "an import of $to in $from is allowed",
    ({ broken }) => {
      expect(broken).toEqual([]);
    },
  );

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

  const impure = [
    "window.open()",
    "document.body",
    "fetch('/')",
    "process.env",
    "localStorage.length",
    "performance.now()",
  ];
  const found = lintAs(
    impure.map((source, index) => ({
      path: `packages/engine/src/planted-${index}.ts`,
      source: `export const here = ${source};\n`,
    })),
    "style/noRestrictedGlobals",
  );

  it.each(impure.map((source, index) => [source, found[index]] as const))(
    "a planted %s is caught",
    (_, broken) => {
      expect(broken).toEqual(["noRestrictedGlobals"]);
    },
  );
});
