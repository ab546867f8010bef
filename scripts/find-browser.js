// A browser for the tests: the system's Chromium, else Debian's package, else the browser tool's own download.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { giveUp, ROOT } from "./runtime.js";

const LIKELY = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome-stable",
  "/usr/bin/google-chrome",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
];

const runs = (browser) =>
  existsSync(browser) && spawnSync(browser, ["--version"], { encoding: "utf8" }).status === 0;
const installed = () => LIKELY.find(runs) ?? null;

function fromDebian() {
  if (process.getuid?.() !== 0 || spawnSync("apt-get", ["--version"]).status !== 0) return null;
  console.log("Installing Debian's chromium for the browser tests.");
  const quiet = { stdio: "inherit", env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" } };
  spawnSync("apt-get", ["update", "-qq"], quiet);
  spawnSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", "chromium"], quiet);
  return installed();
}

async function fromTheBrowserTool() {
  console.log("Downloading a browser for the browser tests.");
  spawnSync(process.execPath, [join(ROOT, "node_modules/playwright-core/cli.js"), "install", "chromium"], {
    stdio: "inherit",
  });
  const { chromium } = await import("playwright-core");
  const path = chromium.executablePath();
  return runs(path) ? path : null;
}

/** The path of a Chromium that answers. */
export async function findBrowser() {
  const given = process.env.WITNESSMARK_BROWSER;
  if (given) return runs(given) ? given : giveUp(`WITNESSMARK_BROWSER names ${given}, which does not run.`);
  const found = installed() ?? fromDebian() ?? (await fromTheBrowserTool());
  return (
    found ??
    giveUp(
      "No browser for the browser tests. Install Chromium, or set WITNESSMARK_BROWSER to the path of one, then run npm test again.",
    )
  );
}
