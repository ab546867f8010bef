import type { Assessment } from "@witnessmark/assess";
import type { FlightPlan, Status } from "@witnessmark/ledger";
import { type KeyboardEvent, useRef } from "react";
import { worst } from "../../drawing/walk-scene.ts";
import { Mark } from "../../marks/mark.tsx";
import { ROLES, type Role } from "./plan-field.ts";

const TOPICS: readonly string[] = ["runway", "wind", "weather", "light", "ice"];

/** The verdicts of the conditions, of one field or of all. */
export const conditionVerdicts = ({ verdicts }: Assessment, role?: Role) =>
  verdicts.filter(
    ({ id, topic }) => TOPICS.includes(topic) && (role === undefined || id.split(":").includes(role)),
  );

/** A tab's mark: the worst that is known of its field; nothing known yet is open. */
export function statusOf(assessment: Assessment, role: Role): Status {
  const found = conditionVerdicts(assessment, role).map(({ status }) => status);
  return found.length === 0 ? "open" : worst(found);
}

const WORDS: Readonly<Record<Role, string>> = {
  departure: "take-off",
  destination: "landing",
  alternate: "alternate",
};

interface FieldTabsProps {
  readonly assessment: Assessment;
  readonly plan: FlightPlan | undefined;
  readonly here: Role;
  readonly codeOf: (role: Role) => string | undefined;
  readonly onChoose: (role: Role) => void;
}

/** A tab a field, each with its mark. */
export function FieldTabs({ assessment, plan, here, codeOf, onChoose }: FieldTabsProps) {
  const list = useRef<HTMLDivElement>(null);
  const step = (event: KeyboardEvent) => {
    const way = event.key === "ArrowRight" ? 1 : event.key === "ArrowLeft" ? -1 : 0;
    if (way === 0) return;
    event.preventDefault();
    const next = ROLES[(ROLES.indexOf(here) + way + ROLES.length) % ROLES.length];
    if (next === undefined) return;
    onChoose(next);
    list.current?.querySelector<HTMLElement>(`[data-role="${next}"]`)?.focus();
  };
  return (
    <div className="cond-tabs" role="tablist" aria-label="Fields of the flight" ref={list} onKeyDown={step}>
      {ROLES.map((role) => (
        <button
          key={role}
          type="button"
          role="tab"
          id={`cond-tab-${role}`}
          data-role={role}
          aria-selected={role === here}
          aria-controls="cond-panel"
          tabIndex={role === here ? 0 : -1}
          onClick={() => onChoose(role)}
        >
          {role === "alternate" && plan?.alternate === undefined ? null : (
            <Mark status={statusOf(assessment, role)} size_px={24} />
          )}
          <span>
            <b>{codeOf(role) ?? "None"}</b> <span>{WORDS[role]}</span>
          </span>
        </button>
      ))}
    </div>
  );
}
