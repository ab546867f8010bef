import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach } from "vitest";
import { openPhones } from "./browser.ts";
import { ROOT } from "./server.ts";

const FOLDER = join(ROOT, ".cache/e2e-failed");

// A test that fails leaves a picture of every phone, and what a screen reader would find on it.
afterEach(async ({ task }) => {
  if (task.result?.state !== "fail") return;
  mkdirSync(FOLDER, { recursive: true });
  const name = task.name.replaceAll(/[^a-z0-9]+/gi, "-").slice(0, 80);
  let number = 0;
  for (const { page } of openPhones) {
    number += 1;
    const file = join(FOLDER, `${name}-${number}`);
    try {
      await page.screenshot({ path: `${file}.png`, timeout: 5_000 });
      writeFileSync(`${file}.txt`, await page.locator("body").ariaSnapshot({ timeout: 5_000 }));
    } catch (error) {
      console.error(`No picture of the failed test: ${String(error)}`);
    }
  }
});
