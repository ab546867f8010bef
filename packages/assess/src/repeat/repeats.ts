import type { Discrepancy } from "@witnessmark/ledger";
import type { Context } from "../context.ts";
import type { Finding } from "../finding.ts";
import { finding } from "../flight/finding-of.ts";
import { equipmentOf } from "../relief/equipment-of.ts";
import { recorded_ms } from "../walk/moments.ts";
import { counted } from "../words/count-words.ts";
import { dayText } from "../words/local-time.ts";

/** Within so many days a second discrepancy of one thing is a repeat. @source common practice */
const REPEAT_D = 90;
const DAY_MS = 86_400_000;

/** What a discrepancy is of: its equipment, else its check, else its point and system; undefined when none is said. */
function subjectOf(discrepancy: Discrepancy, { book }: Context): string | undefined {
  const equipment = equipmentOf(book, discrepancy);
  if (equipment !== undefined) return `equipment ${equipment.id}`;
  if (discrepancy.check !== undefined) return `check ${discrepancy.check}`;
  return discrepancy.point === undefined ? undefined : `point ${discrepancy.point} ${discrepancy.jasc ?? ""}`;
}

/** Earlier discrepancies of the same thing within 90 days before this one was written down, oldest first. */
export function repeatsOf(discrepancy: Discrepancy, context: Context): readonly Discrepancy[] {
  const subject = subjectOf(discrepancy, context);
  if (subject === undefined) return [];
  const raised_ms = recorded_ms(discrepancy.raised);
  return [...context.state.discrepancies.values()].filter((other) => {
    if (other.id === discrepancy.id) return false;
    const before_ms = raised_ms - recorded_ms(other.raised);
    return before_ms >= 0 && before_ms <= REPEAT_D * DAY_MS && subjectOf(other, context) === subject;
  });
}

/** A caution for every open discrepancy that is not the first of its kind in 90 days. */
export function repeatVerdicts(context: Context): readonly Finding[] {
  return context.discrepancies.open.flatMap((discrepancy): readonly Finding[] => {
    const earlier = repeatsOf(discrepancy, context);
    const last = earlier.at(-1);
    if (last === undefined) return [];
    const stillOpen = earlier.every(({ isOpen }) => isOpen);
    const told = earlier.map(
      ({ raised, words }) => `${dayText(recorded_ms(raised), context.clock)}: ${words}`,
    );
    return [
      finding({
        id: `repeat:${discrepancy.id}`,
        topic: "discrepancy",
        status: "caution",
        title: stillOpen ? "Told before" : "It came back",
        says: `${discrepancy.words}. Before, ${told.join("; ")}`,
        margin: { value: earlier.length + 1, unit: "", text: counted(earlier.length + 1, "time") },
        because: [
          stillOpen
            ? "The same thing stands open from before: it may be one fault told twice, or a second one"
            : "The same thing was not right before, within 90 days: what was done then did not end it",
        ],
        working: {
          lines: earlier.map(({ raised, words, closings }) => ({
            label: dayText(recorded_ms(raised), context.clock),
            value: `${words}${closings.at(-1) === undefined ? "" : `; ${closings.at(-1)?.words}`}`,
          })),
        },
        evidence: [discrepancy.raised.event, ...earlier.map(({ raised }) => raised.event)],
        sources: [{ title: "Witnessmark's own rule", locator: "repeats within 90 days; common practice" }],
        subject: { kind: "discrepancy", id: discrepancy.id },
      }),
    ];
  });
}
