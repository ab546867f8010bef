import { existsSync, mkdtempSync, readFileSync, readlinkSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type BrowserContext, chromium, type Page } from "playwright-core";
import { PATIENCE_ms } from "./patience.ts";
import { shiftClock } from "./shift-clock.ts";

/**
 * Parts of the browser that are left out. A list given here takes the place of the one that the driver gives
 * (playwright-core 1.65, chromiumSwitches), so that one stands here too. The last two are pages of the address bar that
 * nobody sees here: to make them ready is half the work of a start.
 */
const LEFT_OUT = [
  "AvoidUnnecessaryBeforeUnloadCheckSync",
  "DestroyProfileOnBrowserClose",
  "HttpsUpgrades",
  "HttpsFirstBalancedModeAutoEnable",
  "LensOverlay",
  "MediaRouter",
  "PaintHolding",
  "ThirdPartyStoragePartitioning",
  "AvoidCorsURLLoaderRestartOnRedirect",
  "TcpPortRandomizationWin",
  "OptimizationHints",
  "NetworkTimeServiceQuerying",
  "AimEnabled",
  "PreconnectToSearch",
  "msForceBrowserSignIn",
  "msEdgeUpdateLaunchServicesPreferredVersion",
  "WebUIOmniboxPopup",
  "WebUIOmniboxAimPopup",
];

/** Flags without which a Chromium on a closed network spends its time trying to reach its maker. */
export const QUIET = [
  "--no-sandbox",
  "--disable-quic",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
  "--no-first-run",
  "--hide-crash-restore-bubble",
  `--disable-features=${LEFT_OUT.join(",")}`,
];

export const PHONE = { width: 360, height: 740, scale: 2, touch: true } as const;
export const TABLET = { width: 1180, height: 820, scale: 1.5, touch: true } as const;

export interface Device {
  readonly width: number;
  readonly height: number;
  readonly scale: number;
  readonly touch: boolean;
}

/** `npm test` has found one; alone, the tests look where Debian puts it. */
export const browserPath = (): string => process.env["WITNESSMARK_BROWSER"] ?? "/usr/bin/chromium";

export interface PhoneGiven {
  readonly device?: Device;
  readonly theme?: "light" | "dark";
  readonly reducedMotion?: "reduce" | "no-preference";
  readonly forcedColors?: "active" | "none";
  /** How much the app may keep, bytes; the browser's own measure when left out. */
  readonly quota_B?: number;
  /** How far its clock is ahead of the machine's. */
  readonly shift_ms?: number;
  /** Runs in every page before its own scripts. */
  readonly before?: () => void;
  readonly profile?: string;
}

export interface Phone {
  readonly page: Page;
  readonly context: BrowserContext;
  /** What the page wrote to its console as an error, and what it threw: a test ends with none. */
  readonly complaints: readonly string[];
  readonly profile: string;
  /** Ends the browser's processes at once, as a phone that runs out of battery. Its profile stays. */
  kill(): Promise<void>;
  /** The same phone switched on again. */
  reopen(): Promise<Phone>;
  /** Ends it and removes its profile. */
  close(): Promise<void>;
}

/** Phones that are open now; a test that fails leaves a picture of each. */
export const openPhones = new Set<Phone>();

/** A browser with a profile on disk, as a phone has: what it keeps is there after it was killed. */
export async function openPhone(url: string, given: PhoneGiven = {}): Promise<Phone> {
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
    reducedMotion: given.reducedMotion ?? "no-preference",
    forcedColors: given.forcedColors ?? "none",
    locale: "en-GB",
    timezoneId: "Europe/London",
    serviceWorkers: "allow",
  });
  await context.addInitScript(tellBreaches);
  if (given.shift_ms !== undefined) await context.addInitScript(shiftClock, given.shift_ms);
  if (given.before !== undefined) await context.addInitScript(given.before);
  const complaints: string[] = [];
  context.setDefaultTimeout(PATIENCE_ms);
  const page = context.pages()[0] ?? (await context.newPage());
  listen(page, complaints);
  // set before the app opens its database: what room there is the browser reckons then, and keeps for a while
  if (given.quota_B !== undefined) await setQuota(context, page, new URL(url).origin, given.quota_B);
  await page.goto(url);
  const phone: Phone = {
    page,
    context,
    complaints,
    profile,
    async kill() {
      openPhones.delete(phone);
      await killBrowserOf(profile);
      await context.close().catch(() => undefined); // it is gone already; this only tells the driver
    },
    reopen: () => openPhone(url, { ...given, profile }),
    async close() {
      openPhones.delete(phone);
      await context.close();
      rmSync(profile, { recursive: true, force: true });
    },
  };
  openPhones.add(phone);
  return phone;
}

/** A refused connection is what "no net" looks like from inside. */
const NO_NET =
  /net::ERR_(INTERNET_DISCONNECTED|CONNECTION_\w+|FAILED|EMPTY_RESPONSE|NETWORK_CHANGED|INCOMPLETE_CHUNKED_ENCODING|SOCKET_NOT_CONNECTED)/;

/** Runs inside the page: what its policy forbids is told as an error, as the browser's own tools tell it. */
function tellBreaches(): void {
  addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI, sourceFile }) => {
    console.error(`forbidden by ${violatedDirective}: ${blockedURI} (${sourceFile})`);
  });
}

function listen(page: Page, complaints: string[]): void {
  page.on("console", (message) => {
    if (message.type() !== "error" || NO_NET.test(message.text())) return;
    const { url } = message.location();
    // a phone asks whether the server has a picture before it sends it; "no" is an answer
    if (url.includes("/api/photos/") && message.text().includes("404")) return;
    complaints.push(`${message.text()} (${url})`);
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
}

/** Sets how much an origin may keep. A greater measure counts at once, a smaller one after half a minute. */
export async function setQuota(
  context: BrowserContext,
  page: Page,
  origin: string,
  quota_B: number,
): Promise<void> {
  const session = await context.newCDPSession(page);
  await session.send("Storage.overrideQuotaForOrigin", { origin, quotaSize: quota_B });
}

/** SIGKILL to the browser that holds this profile and to all that it started; resolves when it is gone. */
async function killBrowserOf(profile: string): Promise<void> {
  const process_id = browserProcess(profile);
  // the driver starts each browser as the first of a group of its own
  process.kill(-process_id, "SIGKILL");
  while (isAlive(process_id)) await new Promise((done) => setImmediate(done));
}

/** A profile's lock names the machine and the process that holds it: `machine-1234`. */
function browserProcess(profile: string): number {
  const holder = readlinkSync(join(profile, "SingletonLock"));
  const process_id = Number(holder.slice(holder.lastIndexOf("-") + 1));
  const command = readFileSync(`/proc/${process_id}/cmdline`, "utf8");
  if (!command.includes(profile)) {
    throw new Error(`browser: expected the browser of ${profile} in process ${process_id}, found ${command}`);
  }
  return process_id;
}

function isAlive(process_id: number): boolean {
  const status = `/proc/${process_id}/stat`;
  if (!existsSync(status)) return false;
  // a dead process that nobody has asked after yet is a zombie, Z
  return !/\) Z/.test(readFileSync(status, "utf8"));
}
