import { type Dimension, UNITS, type UnitId } from "@witnessmark/engine";
import { isRecord, stored } from "./stored.ts";

export interface Preferences {
  readonly theme: "day" | "night" | "auto";
  /** Left mirrors the row of answers. */
  readonly hand: "right" | "left";
  /** The unit a person reads a quantity in; the gauge's own where none is chosen. */
  readonly units: Readonly<Partial<Record<Dimension, UnitId>>>;
}

const isUnit = (found: unknown): found is UnitId => typeof found === "string" && Object.hasOwn(UNITS, found);

export const preferences = stored<Preferences>("preferences", (found) => {
  const given = isRecord(found) ? found : {};
  const theme = given["theme"];
  const units: Partial<Record<Dimension, UnitId>> = {};
  for (const [dimension, unit] of Object.entries(isRecord(given["units"]) ? given["units"] : {})) {
    if (isUnit(unit) && UNITS[unit].dimension === dimension) units[UNITS[unit].dimension] = unit;
  }
  return {
    theme: theme === "day" || theme === "night" ? theme : "auto",
    hand: given["hand"] === "left" ? "left" : "right",
    units,
  };
});

/** Sets theme and hand on the document, now and whenever they or the device's own theme change. */
export function wearPreferences(): void {
  const dark = window.matchMedia("(prefers-color-scheme: dark)");
  const wear = () => {
    const { theme, hand } = preferences.get();
    const night = theme === "night" || (theme === "auto" && dark.matches);
    document.documentElement.dataset["theme"] = night ? "night" : "day";
    document.documentElement.dataset["hand"] = hand;
    document
      .querySelector('meta[name="theme-color"]')
      ?.setAttribute("content", night ? "#14100b" : "#fbfcf9");
  };
  wear();
  dark.addEventListener("change", wear);
  preferences.subscribe(wear);
}
