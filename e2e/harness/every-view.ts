import type { Page } from "playwright-core";
import { axeColours, axeFindings } from "./axe.ts";
import { PHONE, TABLET } from "./browser.ts";
import { sidewaysScroll, smallTargets, smallTexts, weakAnswers } from "./look.ts";
import { oddNames, spokenNames } from "./names.ts";
import { showIn } from "./screens.ts";

interface View {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  readonly theme: "light" | "dark";
  readonly axe: "all" | "colours" | "none";
}

const size = ({ width, height }: { readonly width: number; readonly height: number }) => ({ width, height });

/** How a screen is looked at. What depends on the size alone, or on the colours alone, is asked once. */
const VIEWS: readonly View[] = [
  { name: "phone by day", ...size(PHONE), theme: "light", axe: "all" },
  { name: "phone by night", ...size(PHONE), theme: "dark", axe: "colours" },
  { name: "tablet by night", ...size(TABLET), theme: "dark", axe: "none" },
  { name: "tablet by day", ...size(TABLET), theme: "light", axe: "all" },
  { name: "narrow phone", width: 320, height: 740, theme: "light", axe: "none" },
  { name: "phone laid down", width: 740, height: 360, theme: "light", axe: "none" },
];

export interface Looked {
  /** What is wrong with the screen as it stands, each with the view it was found in. */
  readonly wrong: readonly string[];
  /** Names that a screen reader would stumble over. */
  readonly odd: readonly string[];
}

/** What the narrowest phone shows of a page whose parts were looked at elsewhere: nothing too small, nothing cut off. */
export async function lookOnNarrowPhone(page: Page): Promise<Looked> {
  await showIn(page, { width: 320, height: 740, theme: "light" });
  const wrong = [...(await smallTargets(page)), ...(await smallTexts(page)), ...(await sidewaysScroll(page))];
  return { wrong, odd: oddNames(await spokenNames(page)) };
}

/** Looks at the screen as it stands in every view; the phone by day is left standing. */
export async function lookInEveryView(page: Page): Promise<Looked> {
  const wrong: string[] = [];
  for (const view of VIEWS) {
    await showIn(page, view);
    const found = [
      ...(view.axe === "all" ? await axeFindings(page) : []),
      ...(view.axe === "colours" ? await axeColours(page) : []),
      ...(await smallTargets(page)),
      ...(await smallTexts(page)),
      ...(await sidewaysScroll(page)),
      ...(await weakAnswers(page)),
    ];
    wrong.push(...found.map((what) => `${view.name}: ${what}`));
  }
  const [first] = VIEWS;
  if (first !== undefined) await showIn(page, first);
  const spoken = await spokenNames(page);
  if (process.env["WITNESSMARK_NAMES"] === "1") {
    console.log(`${page.url()}\n${spoken.map(({ role, name }) => `  ${role}: ${name}`).join("\n")}`);
  }
  return { wrong, odd: oddNames(spoken) };
}
