// `npm test`: installs what it needs and runs every check: types, lint and arrows, unit, property, published-value
// and database tests, then the app in a real browser. Ends with one line of counts.
import { spawnSync } from "node:child_process";
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

function run(args, env = {}) {
  return spawnSync(process.execPath, args, { cwd: ROOT, stdio: "inherit", env: { ...process.env, ...env } })
    .status;
}

/** A check that passes or fails as a whole. */
function check(name, args) {
  console.log(`\n== ${name}`);
  const ok = run(args) === 0;
  counts[ok ? "passed" : "failed"] += 1;
  if (!ok) failures.push(name);
}

/** A run of tests, counted one by one from the runner's own report. */
function suite(name, config) {
  console.log(`\n== ${name}`);
  const report = join(CACHE, `report-${config.replaceAll(/[^a-z0-9]+/g, "-")}.json`);
  rmSync(report, { force: true });
  const status = run(
    [
      "node_modules/vitest/vitest.mjs",
      "run",
      "--config",
      config,
      "--reporter=default",
      "--reporter=json",
      `--outputFile.json=${report}`,
    ],
    { WITNESSMARK_BROWSER: browser },
  );
  let result = { numPassedTests: 0, numFailedTests: 0, numTotalTests: 0 };
  try {
    result = JSON.parse(readFileSync(report, "utf8"));
  } catch (error) {
    console.error(`The test runner left no report: ${error.message}`);
  }
  counts.passed += result.numPassedTests;
  counts.failed += result.numFailedTests;
  // a test that was not run, a file that did not load, a runner that died: each is a failure
  const unrun = result.numTotalTests - result.numPassedTests - result.numFailedTests;
  if (result.numTotalTests === 0 || unrun > 0 || (status !== 0 && result.numFailedTests === 0))
    counts.failed += Math.max(1, unrun);
  if (status !== 0 || result.numTotalTests === 0 || unrun > 0) failures.push(name);
}

check("Types", ["node_modules/typescript/bin/tsc", "-p", "."]);
check("Lint, format, and arrows that point down", [
  "node_modules/@biomejs/biome/bin/biome",
  "ci",
  "--colors=off",
  ".",
]);
suite("Unit, property, published-value and database tests", "vitest.config.ts");
ensureAppBuilt();
suite("The app in a real browser", "e2e/vitest.config.ts");

if (failures.length > 0) console.error(`\nFailed: ${failures.join("; ")}`);
console.log(`\n${counts.passed} passed, ${counts.failed} failed`);
process.exit(counts.failed === 0 && failures.length === 0 ? 0 : 1);
