import type { Page } from "playwright-core";

const SPOKEN = new Set([
  "button",
  "link",
  "textbox",
  "combobox",
  "slider",
  "dialog",
  "navigation",
  "region",
  "img",
]);

export interface Spoken {
  readonly role: string;
  readonly name: string;
}

/** What the browser hands to a screen reader: role and name of each control, landmark and picture, in order. */
export async function spokenNames(page: Page): Promise<readonly Spoken[]> {
  const session = await page.context().newCDPSession(page);
  try {
    const { nodes } = await session.send("Accessibility.getFullAXTree");
    return nodes.flatMap(({ ignored, role, name }) =>
      !ignored && SPOKEN.has(String(role?.value))
        ? [{ role: String(role?.value), name: String(name?.value ?? "") }]
        : [],
    );
  } finally {
    await session.detach();
  }
}

/** Names that are missing, or that no person would write: a space before a comma, two spaces, a bare sign. */
export const oddNames = (spoken: readonly Spoken[]): readonly string[] =>
  spoken
    .filter(({ name }) => name.trim() === "" || /\s[,.;:]/.test(name) || !/[\p{L}\p{N}]/u.test(name))
    .map(({ role, name }) => `${role} "${name}"`);
