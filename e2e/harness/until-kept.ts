/** What the app must have said and shown. */
export interface KeptAs {
  /** What the strip must say: the source of a regular expression. */
  readonly said: string;
  /** The card that was in hand; another one, or none, must be there. */
  readonly before: { readonly place: string; readonly title: string };
  readonly patience_ms: number;
}

/**
 * Runs inside the page, from before the tap: resolves once the app says that it is kept and has taken up another step.
 * It waits for what the page tells of itself, so that waiting takes nothing from the page that is being timed.
 *
 * @throws {Error} when that does not come in time, with what was there instead
 */
export function untilKept({ said, before, patience_ms }: KeptAs): Promise<void> {
  const words = new RegExp(said);
  const card = () => document.querySelector('section[aria-label="The check in hand"]');
  const now = () => ({
    place: card()?.querySelector("p b")?.textContent ?? "",
    title: card()?.querySelector("h2")?.textContent ?? "",
    strip: [...document.querySelectorAll('[role="status"]')]
      .map((each) => each.textContent ?? "")
      .filter((text) => /Kept \d\d:\d\d\./.test(text))
      .join("|"),
  });
  const holds = () => {
    const { place, title, strip } = now();
    return strip !== "" && words.test(strip) && (place !== before.place || title !== before.title);
  };
  return new Promise((done, fail) => {
    const observer = new MutationObserver(() => {
      if (!holds()) return;
      clearTimeout(timer);
      observer.disconnect();
      done();
    });
    const timer = setTimeout(() => {
      observer.disconnect();
      fail(
        new Error(
          `Waited ${patience_ms} ms for "${said}" and another card than ${before.place}: ${before.title}; there is ${JSON.stringify(now())}`,
        ),
      );
    }, patience_ms);
    observer.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
  });
}
