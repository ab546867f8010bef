// What runs before anything is installed: plain JavaScript, no dependencies, Node 20.19 or newer.
// It finds or brings the Node that the project runs on, and installs the project's packages when they changed.
import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { delimiter, dirname, join, resolve } from "node:path";
import { fileURLToPath } from "node:url";

export const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), "..");
export const CACHE = join(ROOT, ".cache");

const WANTED_NODE = readFileSync(join(ROOT, ".node-version"), "utf8").trim();
const RUNTIME = join(ROOT, ".runtime");
const BROUGHT_NODE = join(
  RUNTIME,
  "node_modules",
  "node",
  "bin",
  process.platform === "win32" ? "node.exe" : "node",
);

/** Ends the process with a sentence a person can act on. */
export function giveUp(sentence) {
  console.error(`\n${sentence}`);
  process.exit(1);
}

const majorOf = (version) => Number(version.split(".")[0]);

const versionOf = (node) => {
  const answer = spawnSync(node, ["--version"], { encoding: "utf8" });
  return answer.status === 0 ? answer.stdout.trim().replace(/^v/, "") : null;
};

/** npm's own script, so that it can run on whichever Node we choose. */
function npmScript() {
  const given = process.env.npm_execpath;
  if (given && /npm-cli\.js$/.test(given) && existsSync(given)) return given;
  const beside = [
    join(dirname(process.execPath), "..", "lib", "node_modules", "npm", "bin", "npm-cli.js"),
    join(dirname(process.execPath), "node_modules", "npm", "bin", "npm-cli.js"),
  ].find(existsSync);
  return beside ?? null;
}

function npm(node, args, cwd) {
  const script = npmScript();
  const env = { ...process.env, PATH: `${dirname(node)}${delimiter}${process.env.PATH ?? ""}` };
  // npm passes its own flags on as npm_config_*; a run from inside `npm start` must not inherit a prefix
  delete env.npm_config_prefix;
  const [command, full] = script === null ? ["npm", args] : [node, [script, ...args]];
  return spawnSync(command, full, {
    cwd,
    env,
    stdio: "inherit",
    shell: script === null && process.platform === "win32",
  });
}

function bringNode() {
  console.log(
    `This machine runs Node ${process.versions.node}. Bringing Node ${WANTED_NODE} for this project alone (about 190 MB, once).`,
  );
  mkdirSync(RUNTIME, { recursive: true });
  const done = npm(
    process.execPath,
    [
      "install",
      "--prefix",
      RUNTIME,
      "--no-save",
      "--no-audit",
      "--no-fund",
      "--loglevel=error",
      `node@${WANTED_NODE}`,
    ],
    RUNTIME,
  );
  if (done.status !== 0 || versionOf(BROUGHT_NODE) !== WANTED_NODE) {
    giveUp(
      `Node ${WANTED_NODE} could not be brought from the npm registry. Install Node 24 or newer yourself, or check the network, then run the same command again.`,
    );
  }
}

/** The Node that everything runs on: this one when it is new enough, else the one brought from npm. */
function chooseNode() {
  if (majorOf(process.versions.node) >= majorOf(WANTED_NODE)) return process.execPath;
  if (!existsSync(BROUGHT_NODE) || versionOf(BROUGHT_NODE) !== WANTED_NODE) bringNode();
  return BROUGHT_NODE;
}

/**
 * Makes sure that the calling script runs on the wanted Node: when it does not, runs it again there and never
 * returns. Signals go through to the child, and its exit code comes back.
 */
export async function onWantedNode(scriptUrl) {
  const node = chooseNode();
  process.env.PATH = `${dirname(node)}${delimiter}${process.env.PATH ?? ""}`;
  if (node === process.execPath) return;
  const child = spawn(node, [fileURLToPath(scriptUrl), ...process.argv.slice(2)], {
    stdio: "inherit",
    cwd: process.cwd(),
  });
  for (const signal of ["SIGINT", "SIGTERM", "SIGHUP"]) process.on(signal, () => child.kill(signal));
  const code = await new Promise((done) =>
    child.on("exit", (status, signal) => done(signal ? 1 : (status ?? 1))),
  );
  process.exit(code);
}

const hashOf = (...parts) =>
  parts.reduce((hash, part) => hash.update(part), createHash("sha256")).digest("hex");

/** Whether a stamp file says what it should; a missing one does not. */
export const stampIs = (file, wanted) => existsSync(file) && readFileSync(file, "utf8") === wanted;

export function writeStamp(file, value) {
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, value);
}

/** Installs exactly what the lock file says, unless that is what is there. */
export function ensureInstalled() {
  const wanted = hashOf(readFileSync(join(ROOT, "package-lock.json")), process.platform, process.arch);
  const stamp = join(ROOT, "node_modules", ".witnessmark-installed");
  if (stampIs(stamp, wanted)) return;
  console.log("Installing the packages that the lock file names.");
  const install = () => npm(process.execPath, ["ci", "--no-audit", "--no-fund", "--loglevel=error"], ROOT);
  let done = install();
  if (done.status !== 0 && existsSync(join(ROOT, "node_modules"))) {
    console.log("Once more, from an empty folder: an install that was cut off may have left a part behind.");
    rmSync(join(ROOT, "node_modules"), { recursive: true, force: true, maxRetries: 3 });
    done = install();
  }
  if (done.status !== 0)
    giveUp(
      "The packages could not be installed (see above). Check the network, then run the same command again.",
    );
  writeStamp(stamp, wanted);
}
