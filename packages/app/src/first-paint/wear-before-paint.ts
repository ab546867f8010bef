/**
 * Theme and hand on the document, and whether someone is known here, before anything is painted. The build makes this
 * function the script that index.html waits for, so it stands alone: it uses nothing that is not written in it. What
 * it finds is what `preferences` and `known` have kept; what it sets, `wearPreferences` sets again.
 */
export function wearBeforePaint(): void {
  const kept = (name: string): unknown => {
    try {
      return JSON.parse(localStorage.getItem(`witnessmark.${name}`) ?? "null");
    } catch {
      return null; // a private mode, or the text of another version: the default holds
    }
  };
  const { theme, hand } = (kept("preferences") ?? {}) as { theme?: unknown; hand?: unknown }; // compared below, not trusted
  const dark = matchMedia("(prefers-color-scheme: dark)").matches;
  const night = theme === "night" || (theme !== "day" && dark);
  const { dataset } = document.documentElement;
  dataset["theme"] = night ? "night" : "day";
  dataset["hand"] = hand === "left" ? "left" : "right";
  if (kept("known") === true) dataset["known"] = "yes";
  document.querySelector('meta[name="theme-color"]')?.setAttribute("content", night ? "#14100b" : "#fbfcf9");
}
