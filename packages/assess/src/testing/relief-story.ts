import type { Bodies, PlannedFlight } from "@witnessmark/ledger";
import { reliefOf } from "../relief/relief-of.ts";
import type { ReliefSaid } from "../rules/relief.ts";
import type { RulePack } from "../rules/rule-pack.ts";
import { usPart91 } from "../rules/us-part-91/pack.ts";
import { atText, type Story } from "./story.ts";

/** A flight of 48 minutes between two of the demo's islands; in May the sun sets there towards 21:30 of the story. */
export const flightAt = (
  time: string,
  flightRules: "VFR" | "IFR" = "VFR",
  rulePack = usPart91.id,
  days = 0,
): PlannedFlight => ({
  id: "01900000-0000-7000-8000-0000000000f1",
  from: "ZZTW",
  to: "ZZQN",
  offBlocks: atText(time, days),
  plan: {
    rulePack,
    flightRules,
    route: {
      distance: { value: 120, unit: "NM" },
      time: { value: 48, unit: "min" },
      level: { value: 6000, unit: "ft" },
    },
  },
});

/** Everything a pilot would say of a thing that was made inactive and placarded. */
export const ALL_SAID: ReliefSaid = {
  action: "deactivated",
  placard: true,
  deactivationIsMaintenance: false,
  noHazardBy: "pilot",
  recordAtHand: true,
  provisosMet: true,
};

/** Says which equipment it is. */
export function assessed(story: Story, discrepancy: string, equipment: string): void {
  story.ada.tell({
    type: "discrepancy.assessed",
    body: { discrepancy, words: "Looked at again", equipment },
  });
}

interface Signed {
  readonly flight: PlannedFlight | null;
  readonly said?: ReliefSaid;
  readonly pack?: RulePack;
  readonly changed?: Partial<Bodies["discrepancy.relieved"]>;
}

/** Signs the relief that the rules allow. @returns its id @throws when they do not */
export function relieve(
  story: Story,
  id: string,
  { flight, said = ALL_SAID, pack, changed }: Signed,
): string {
  const { book, state } = story;
  const discrepancy = state.discrepancies.get(id);
  if (discrepancy === undefined) throw new Error(`no discrepancy ${id}`);
  const asked = { book, discrepancy, flight, said, state };
  const answer = reliefOf(pack === undefined ? asked : { ...asked, pack });
  if (answer === undefined || !answer.ruling.allowed) {
    throw new Error(`no relief is allowed: ${JSON.stringify(answer?.ruling.steps)}`);
  }
  const relief = story.id();
  story.ada.tell(
    {
      type: "discrepancy.relieved",
      body: {
        discrepancy: id,
        relief,
        rulePack: answer.pack.id,
        basis: `14 CFR ${answer.ruling.path}`,
        equipment: answer.equipment.id,
        steps: answer.ruling.steps.map(({ rule, words, holds }) => ({ rule, words, holds: holds === true })),
        action: said.action ?? "none",
        ...(said.placard === true ? { placard: answer.placard } : {}),
        ...(said.recorded === true ? { recordEntry: "Removed, order 118" } : {}),
        determinedBy: "Ada",
        as: "pilot",
        notFor: [...answer.notFor],
        ...(answer.until === undefined ? {} : { until: answer.until }),
        ...(answer.listItem === undefined ? {} : { category: answer.listItem.category }),
        ...changed,
      },
    },
    "signed",
  );
  return relief;
}
