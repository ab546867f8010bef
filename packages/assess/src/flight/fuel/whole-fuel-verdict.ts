import { fuelConsistency, fuelFromLastFlight } from "@witnessmark/engine";
import { bookSource } from "../../book-index.ts";
import type { Context } from "../../context.ts";
import type { Finding } from "../../finding.ts";
import { finding, some } from "../finding-of.ts";
import { kg, words } from "../words.ts";
import type { WholeFuel } from "./whole-fuel.ts";

const percent = (share_1: number): string => `${Math.floor(share_1 * 100)}\u00A0%`;

/** Why the ways of knowing the fuel warn, and which of them to believe. */
function reasons({ together, fits, odd, finer, beyond_kg, believed_kg }: WholeFuel): readonly string[] {
  const size = kg(Math.abs(beyond_kg), "up");
  const differ = together.consistent
    ? []
    : odd !== undefined
      ? [
          `${odd.name} alone does not fit the others: believe those, ${kg(believed_kg, "down")}, and find out why`,
        ]
      : [
          "They differ by more than their accuracies explain: the least of them counts until it is found out which is wrong",
          ...(finer === undefined ? [] : [`${finer.name} can be read more closely: look at it again first`]),
        ];
  if (fits) return differ;
  return [
    ...differ,
    beyond_kg > 0
      ? `${size} less than planned is aboard by what counts`
      : `${size} more than planned is aboard by what counts: it is heavier`,
  ];
}

/** Gauges, dips and totaliser against each other and the plan. */
export function wholeFuelVerdict(whole: WholeFuel, context: Context, read: readonly string[]): Finding {
  const { last, sources, together, planned_kg, believed_kg, fits, beyond_kg } = whole;
  const size = kg(Math.abs(beyond_kg), "up");
  const told = {
    id: "fuel:together",
    topic: "fuel" as const,
    title: "Fuel by every way it is known",
    says: `${sources.map(({ name, fuel_kg }) => `${name} ${kg(fuel_kg, "down")}`).join(", ")}; planned ${kg(planned_kg, "up")}, all that can be used`,
    margin: words(fits ? "as planned" : beyond_kg > 0 ? `${size} short` : `${size} more`),
    evidence: [...read, ...(last?.evidence ?? [])],
    working: {
      lines: [
        ...sources.map(({ name, fuel_kg, standardUncertainty_kg }) => ({
          label: name,
          value: `${kg(fuel_kg, "down")}, standard uncertainty ${kg(standardUncertainty_kg, "up")}`,
        })),
        ...(last === undefined
          ? []
          : [
              {
                label: "From the last flight",
                value: `${kg(last.left_kg, "down")} left, ${kg(last.added_kg, "down")} filled in, ${kg(last.drained_kg, "up")} drained`,
              },
            ]),
        { label: "Planned", value: kg(planned_kg, "up") },
        ...(sources.length < 2
          ? []
          : [
              {
                label: "Chance that they differ so much by themselves",
                value: `${percent(together.probability_1)}, needs 5`,
              },
            ]),
        { label: "Counts", value: kg(believed_kg, "down") },
      ],
      formula: { quantity: fuelConsistency.id, text: fuelConsistency.formula },
    },
    sources: [
      bookSource(context.book, "fuel, gauges, totaliser"),
      ...(last === undefined ? [] : fuelFromLastFlight.sources.map(({ title }) => ({ title }))),
      ...fuelConsistency.sources.map(({ title }) => ({ title })),
    ],
  };
  return whole.status === "clear"
    ? finding({ ...told, status: "clear" })
    : finding({ ...told, status: "caution", because: some(reasons(whole), "It is otherwise than planned") });
}
