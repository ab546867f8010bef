import { measure } from "@witnessmark/engine";
import { assess } from "../assess.ts";
import type { Verdict } from "../assessment.ts";
import { plain, verdictOf } from "./plain.ts";
import { book, check, tyreReading, voltsFrom } from "./small-book.ts";
import { at, type Story } from "./story.ts";

/** One check of every sort: that age ends, that a happening ends, with a figure, with a photo, after another. */
export const walkBook = book({
  checks: [
    check("oil", "oil", { title: "Read the dipstick", until: ["flown", "fuelled"], severity: "high" }),
    check("age", "boot", { stance: "wing", atMost: measure(4, "h") }),
    check("tyre", "tyre", {
      stance: "wing",
      title: "Measure the pressure",
      reading: tyreReading,
      until: ["flown"],
    }),
    check("aged", "battery", { reading: voltsFrom(24), atMost: measure(2, "h") }),
    check("photo", "pitot", { stance: "wing", evidence: "photo" }),
    check("drain", "tank", { stance: "wing", walks: ["first-of-day", "turnaround"], until: ["fuelled"] }),
    check("cap", "tank", { stance: "wing", walks: ["first-of-day", "turnaround"], after: ["drain"] }),
    check("brake", "tyre", { stance: "wing", walks: ["after-flight"], title: "Feel the brake" }),
  ],
});

/** The verdict on one of its checks, at a time of the story's day. */
export const told = (story: Story, id: string, time = "09:00", days = 0): Verdict =>
  verdictOf(assess(walkBook, story.state, null, at(time, days)), `check:${id}`);

/** `open: Look: not looked at yet` */
export const line = (verdict: Verdict): string => `${verdict.status}: ${plain(verdict.says)}`;
