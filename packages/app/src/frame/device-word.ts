/** What a person would call the thing in their hands. */
export function deviceWord(): "phone" | "tablet" | "computer" {
  if (!window.matchMedia("(min-width: 900px)").matches) return "phone";
  return window.matchMedia("(pointer: coarse)").matches ? "tablet" : "computer";
}
