import type { Assessment } from "@witnessmark/assess";
import { countOf } from "../../words/figures.ts";
import { listed } from "../../words/listed.ts";

/** What can be done about it, in one or two short sentences under the headline. */
export function adviceText(
  assessment: Pick<Assessment, "status" | "counts" | "walk" | "holdsUntil">,
): string {
  const { status, counts, walk } = assessment;
  const open = counts.open === 0 ? "" : `${countOf(counts.open, "is", "are")} still open.`;
  switch (status) {
    case "stop":
      return `Put it right, find a relief, or fly another way. ${open}`.trim();
    case "caution":
      return `Close to a limit: read the working, and say why if you go. ${open}`.trim();
    case "open":
      return walk === null
        ? "The walk has not begun."
        : "What is open is not known: look, or say why you go without.";
    case "clear":
      return "Everything that the book asks was seen, and it was as it should be.";
    default:
      return status satisfies never;
  }
}

/** "asks why, for 1 stop and 2 open". */
export function asksText(counts: Assessment["counts"]): string {
  const parts = (["stop", "caution", "open"] as const)
    .filter((status) => counts[status] > 0)
    .map((status) => {
      const count = counts[status];
      const word = status === "open" ? "open" : count === 1 ? status : `${status}s`;
      return `${count} ${word}`;
    });
  if (parts.length === 0) return "";
  return `asks why, for ${listed(parts)}`;
}
