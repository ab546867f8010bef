import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium, type Page } from "playwright-core";

/** Flags without which a Chromium on a closed network spends its time trying to reach its maker. */
const QUIET = [
  "--no-sandbox",
  "--disable-quic",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
];

export const PHONE = { width: 360, height: 740, scale: 2, touch: true } as const;
export const TABLET = { width: 1180, height: 820, scale: 1.5, touch: true } as const;
export type Device = typeof PHONE | typeof TABLET;

/** `npm test` has found one; alone, the tests look where Debian puts it. */
export const browserPath = (): string => process.env["WITNESSMARK_BROWSER"] ?? "/usr/bin/chromium";

export interface Phone {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the page wrote to its console as an error, and what it threw: a test ends with none. */
  readonly complaints: readonly string[];
  /** Kills the browser's processes at once; its profile stays for `reopen`. */
  readonly kill: () => Promise<void>;
  readonly close: () => Promise<void>;
  readonly profile: string;
}

/** A browser with a profile on disk, as a phone has: what it keeps is there after it was killed. */
export async function openPhone(
  url: string,
  given: { readonly device?: Device; readonly profile?: string; readonly theme?: "light" | "dark" } = {},
): Promise<Phone> {
  const device = given.device ?? PHONE;
  const profile = given.profile ?? mkdtempSync(join(tmpdir(), "witnessmark-phone-"));
  const context = await chromium.launchPersistentContext(profile, {
    executablePath: browserPath(),
    headless: true,
    args: QUIET,
    viewport: { width: device.width, height: device.height },
    deviceScaleFactor: device.scale,
    hasTouch: device.touch,
    colorScheme: given.theme ?? "light",
    locale: "en-GB",
    timezoneId: "Europe/London",
    serviceWorkers: "allow",
  });
  const complaints: string[] = [];
  const page = context.pages()[0] ?? (await context.newPage());
  page.on("console", (message) => {
    // a refused connection is what "no net" looks like from inside; everything else is a complaint
    if (
      message.type() === "error" &&
      !/net::ERR_(INTERNET_DISCONNECTED|CONNECTION_REFUSED|FAILED)/.test(message.text())
    ) {
      complaints.push(message.text());
    }
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  await page.goto(url);
  return {
    page,
    context,
    complaints,
    profile,
    async kill() {
      // the profile's folder is on the command line of each of its processes
      spawnSync("pkill", ["-KILL", "-f", profile]);
      await context.close().catch(() => undefined); // it is gone already; this only tells the driver
    },
    async close() {
      await context.close();
      if (given.profile === undefined) rmSync(profile, { recursive: true, force: true });
    },
  };
}
