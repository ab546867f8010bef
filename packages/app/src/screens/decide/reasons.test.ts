import { type DecisionNeed, decisionFaults, type Verdict } from "@witnessmark/assess";
import { expect, it } from "vitest";
import { givenReasons, NO_REASONS, parted } from "./reasons.ts";

const verdict = (id: string, topic: Verdict["topic"], status: Verdict["status"]): Verdict =>
  ({ id, topic, status, title: id, says: "" }) as Verdict; // no more of it is read
const needOf = ({ id, status }: Verdict): DecisionNeed => ({
  verdict: id,
  status: status as DecisionNeed["status"],
  title: id,
  says: "",
  basis: status === "stop",
});

const verdicts = [
  verdict("check:tyre", "check", "stop"),
  verdict("check:oil", "check", "caution"),
  verdict("gear:pitot-cover", "ground-gear", "open"),
  verdict("fuel:required", "fuel", "open"),
  verdict("check:door", "check", "open"),
  verdict("check:lamp", "check", "open"),
];
const needs = verdicts.map(needOf);
const both = parted(needs, { verdicts });

it("only checks that are open may share a reason: no stop, no caution, no gear that may still be fitted", () => {
  expect(both.unseen.map(({ verdict: id }) => id)).toEqual(["check:door", "check:lamp"]);
  expect([...both.single, ...both.unseen]).toHaveLength(needs.length);
});

it("one alone is asked like all others", () => {
  expect(parted(needs.slice(0, 5), { verdicts })).toEqual({ single: needs.slice(0, 5), unseen: [] });
});

it("the shared reason stands for each that has none of its own, and for nothing else", () => {
  const each = { "check:lamp": { words: "No spare bulb", basis: "" } };
  expect(givenReasons(both, { each, unseen: " No light left " })).toEqual([
    { verdict: "check:door", words: "No light left" },
    { verdict: "check:lamp", words: "No spare bulb" },
  ]);
});

it("nothing typed gives nothing, and every need stays a fault", () => {
  expect(givenReasons(both, NO_REASONS)).toEqual([]);
  const open = both.unseen;
  const faults = decisionFaults({ verdicts } as unknown as Parameters<typeof decisionFaults>[0], "go", []);
  for (const { verdict: id } of open) expect(faults.map((fault) => fault.verdict)).toContain(id);
});
