import {
  NOT_FOR_PILOT_OWNER_NAMES,
  NOT_FOR_PILOT_OWNERS,
  OF_THE_PILOT_OWNER,
  pilotOwnerTask,
  type RulePack,
  releaseOf,
  rulePacks,
} from "@witnessmark/assess";
import type { Bodies, ReleaseRole } from "@witnessmark/ledger";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { RuledStepList } from "./ruled-step-list.tsx";

/** What was said so far of who released it. */
export interface ReleaseDraft {
  readonly pack: RulePack;
  readonly as: ReleaseRole | undefined;
  readonly authority: string;
  readonly said: Readonly<Record<string, boolean>>;
}

export const newRelease = (pack: RulePack): ReleaseDraft => ({
  pack,
  as: undefined,
  authority: "",
  said: {},
});

/** The event of it; undefined where the rules ask nothing beyond who it was. */
export const releasedBody = (
  discrepancy: string,
  by: string,
  { pack, as, authority, said }: ReleaseDraft,
): Bodies["discrepancy.released"] | undefined =>
  pack.release === undefined
    ? undefined
    : {
        discrepancy,
        rulePack: pack.id,
        as: as ?? "not-known",
        by,
        ...(authority.trim() === "" ? {} : { authority: authority.trim() }),
        said,
      };

const ROLES: readonly { readonly as: ReleaseRole; readonly label: string }[] = [
  { as: "pilot-owner", label: "The pilot-owner, ML.A.803" },
  { as: "certifying-staff", label: "Certifying staff, ML.A.801(b)" },
  { as: "organisation", label: "A maintenance organisation, ML.A.801(b)" },
  { as: "not-known", label: "Not known" },
];
const ENTERED = "Does the release stand in the record of the aircraft?";
const AUTHORITY: Readonly<Record<Exclude<ReleaseRole, "not-known">, string>> = {
  "pilot-owner": "Number of the pilot licence",
  "certifying-staff": "Number of the certifying licence",
  organisation: "Number of the organisation's approval",
};

interface ReleasePartProps {
  readonly open: OpenAircraft;
  readonly draft: ReleaseDraft;
  readonly onDraft: (draft: ReleaseDraft) => void;
}

/** By whom it was released, and on which authority: asked where the rules say who may release what. */
export function ReleasePart({ open, draft, onDraft }: ReleasePartProps) {
  const { pack, as, authority, said } = draft;
  const say = (more: Readonly<Record<string, boolean>>) => onDraft({ ...draft, said: { ...said, ...more } });
  const ruled = releaseOf(pack, open.book, {
    as,
    authority: authority.trim() === "" ? undefined : authority.trim(),
    said,
  });
  return (
    <>
      <fieldset className="choices">
        <legend className="legend">Under which rules</legend>
        {[...rulePacks.values()].map((each) => (
          <button
            key={each.id}
            type="button"
            aria-pressed={each === pack}
            onClick={() => onDraft(newRelease(each))}
          >
            {each.title}
          </button>
        ))}
      </fieldset>
      {ruled === undefined ? null : (
        <fieldset className="choices">
          <legend className="legend">On which authority</legend>
          {ROLES.map((role) => (
            <button
              key={role.as}
              type="button"
              aria-pressed={role.as === as}
              onClick={() => onDraft({ ...draft, as: role.as, said: {} })}
            >
              {role.label}
            </button>
          ))}
        </fieldset>
      )}
      {ruled === undefined || as === undefined || as === "not-known" ? null : (
        <>
          <label className="field">
            <span>{AUTHORITY[as]}</span>
            <input
              value={authority}
              onChange={(event) => onDraft({ ...draft, authority: event.target.value })}
              maxLength={200}
              autoComplete="off"
            />
          </label>
          {as === "pilot-owner" ? <PilotOwner said={said} onSay={say} /> : null}
          {as === "pilot-owner" ? null : (
            <YesNo words={ENTERED} value={said["entered"]} onSay={(entered) => say({ entered })} />
          )}
        </>
      )}
      {ruled === undefined || as === undefined ? null : (
        <>
          <RuledStepList steps={ruled.steps} />
          {ruled.failing.length === 0 ? null : (
            <p className="verdict stop" role="status">
              <Mark status="stop" size_px={28} />
              <span>
                Not the pilot-owner's to release: {ruled.failing.join(", ")}. Certifying staff or an
                organisation releases it.
              </span>
            </p>
          )}
        </>
      )}
    </>
  );
}

interface SayProps {
  readonly said: Readonly<Record<string, boolean>>;
  readonly onSay: (more: Readonly<Record<string, boolean>>) => void;
}

const { entered: ENTERED_BY_OWNER, ...FIRST } = OF_THE_PILOT_OWNER;

function PilotOwner({ said, onSay }: SayProps) {
  const none = NOT_FOR_PILOT_OWNER_NAMES.every((name) => said[name] === false);
  return (
    <>
      {Object.entries(FIRST).map(([name, words]) => (
        <YesNo key={name} words={words} value={said[name]} onSay={(value) => onSay({ [name]: value })} />
      ))}
      <fieldset className="choices">
        <legend className="legend">Is the work one of these?</legend>
        <button type="button" aria-pressed={none} onClick={() => onSay(pilotOwnerTask("none"))}>
          None of these
        </button>
        {NOT_FOR_PILOT_OWNER_NAMES.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={said[name] === true}
            onClick={() => onSay(pilotOwnerTask(name))}
          >
            {NOT_FOR_PILOT_OWNERS[name]}
          </button>
        ))}
      </fieldset>
      <YesNo words={ENTERED_BY_OWNER} value={said["entered"]} onSay={(entered) => onSay({ entered })} />
    </>
  );
}

interface YesNoProps {
  readonly words: string;
  readonly value: boolean | undefined;
  readonly onSay: (value: boolean) => void;
}

function YesNo({ words, value, onSay }: YesNoProps) {
  return (
    <fieldset className="choices">
      <legend className="legend">{words}</legend>
      <button type="button" aria-pressed={value === true} onClick={() => onSay(true)}>
        Yes
      </button>
      <button type="button" aria-pressed={value === false} onClick={() => onSay(false)}>
        No
      </button>
    </fieldset>
  );
}
