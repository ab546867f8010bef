// `npm test`: installs what it needs and runs every check: types, lint and arrows, unit, property, published-value
// and database tests, then the app in a real browser. Ends with one line of counts.
import { spawn } from "node:child_process";
import { mkdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { CACHE, ensureInstalled, onWantedNode, ROOT } from "./runtime.js";

await onWantedNode(import.meta.url);
ensureInstalled();
const { ensureAppBuilt } = await import("./build-app.js");
const { findBrowser } = await import("./find-browser.js");
const browser = await findBrowser();
mkdirSync(CACHE, { recursive: true });

const counts = { passed: 0, failed: 0 };
const failures = [];

/** Runs a program of the project; `tell` is given what it prints. */
function run(args, tell, env = {}) {
  const child = spawn(process.execPath, args, {
    cwd: ROOT,
    stdio: ["ignore", "pipe", "pipe"],
    env: { ...process.env, ...env },
  });
  child.stdout.on("data", tell);
  child.stderr.on("data", tell);
  return new Promise((done) => {
    child.on("error", (error) => {
      tell(`${error.message}\n`);
      done(1);
    });
    child.on("close", (status) => done(status ?? 1));
  });
}

/** A check that passes or fails as a whole. */
async function check(name, tell, args) {
  tell(`\n== ${name}\n`);
  const ok = (await run(args, tell)) === 0;
  counts[ok ? "passed" : "failed"] += 1;
  if (!ok) failures.push(name);
}

/** A run of tests, counted one by one from the runner's own report. */
async function suite(name, tell, config) {
  tell(`\n== ${name}\n`);
  const report = join(CACHE, `report-${config.replaceAll(/[^a-z0-9]+/g, "-")}.json`);
  rmSync(report, { force: true });
  const status = await run(
    [
      "node_modules/vitest/vitest.mjs",
      "run",
      "--config",
      config,
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${report}`,
    ],
    tell,
    { WITNESSMARK_BROWSER: browser },
  );
  let result = { numPassedTests: 0, numFailedTests: 0, numTotalTests: 0 };
  try {
    result = JSON.parse(readFileSync(report, "utf8"));
  } catch (error) {
    tell(`The test runner left no report: ${error.message}\n`);
  }
  counts.passed += result.numPassedTests;
  counts.failed += result.numFailedTests;
  // a test that was not run, a file that did not load, a runner that died: each is a failure
  const unrun = result.numTotalTests - result.numPassedTests - result.numFailedTests;
  if (result.numTotalTests === 0 || unrun > 0 || (status !== 0 && result.numFailedTests === 0))
    counts.failed += Math.max(1, unrun);
  if (status !== 0 || result.numTotalTests === 0 || unrun > 0) failures.push(name);
}

async function withoutBrowser(tell) {
  await check("Types", tell, ["node_modules/typescript/bin/tsc", "-p", "."]);
  await check("Lint, format, and arrows that point down", tell, [
    "node_modules/@biomejs/biome/bin/biome",
    "ci",
    "--colors=off",
    ".",
  ]);
  await suite("Unit, property, published-value and database tests", tell, "vitest.config.ts");
}

const say = (text) => void process.stdout.write(text);

/** What is printed meanwhile waits its turn; what is printed after that is told at once. */
function inTurn() {
  const waiting = [];
  let isOpen = false;
  return {
    tell: (text) => void (isOpen ? say(text) : waiting.push(text)),
    open() {
      for (const text of waiting) say(text);
      isOpen = true;
    },
  };
}

// both at once: much of the browser's time is waiting, and so is much of what a database is asked
ensureAppBuilt();
const later = inTurn();
const inBrowser = suite("The app in a real browser", later.tell, "e2e/vitest.config.ts");
await withoutBrowser(say);
later.open();
await inBrowser;

if (failures.length > 0) console.error(`\nFailed: ${failures.join("; ")}`);
console.log(`\n${counts.passed} passed, ${counts.failed} failed`);
process.exit(counts.failed === 0 && failures.length === 0 ? 0 : 1);
