/** A page that never comes to rest is not waited for longer than this. */
const LONGEST_ms = 3_000;

/** Resolves once the page has all that it was opened with and has nothing to do: what can wait does not slow it. */
export async function atRest(): Promise<void> {
  if (document.readyState !== "complete") {
    await new Promise<void>((done) => window.addEventListener("load", () => done(), { once: true }));
  }
  await new Promise<void>((done) => {
    if (typeof requestIdleCallback === "function") requestIdleCallback(() => done(), { timeout: LONGEST_ms });
    else setTimeout(done, 200);
  });
}
