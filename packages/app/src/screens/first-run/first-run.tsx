import type { Author } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { ROLE_NAMES, ROLES } from "../../words/people.ts";
import { FirstPage } from "./first-page.tsx";
import "../../marks/mark.css";
import "./first-run.css";

/** Asks who holds the phone: every entry carries a name, so nothing can be kept before. */
export function FirstRun() {
  return (
    <FirstPage>
      <PersonForm submit="Begin" />
    </FirstPage>
  );
}

interface PersonFormProps {
  readonly submit: string;
  readonly onDone?: () => void;
}

/** Name or initials, and a role. */
export function PersonForm({ submit, onDone }: PersonFormProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [name, setName] = useState("");
  const [role, setRole] = useState<Author["role"]>("pilot");
  const [asked, setAsked] = useState(false);
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (name.trim() === "" || keeping.busy) return;
    if (await keeping.keep(() => keep.introduce({ name: name.trim(), role }))) onDone?.();
  };
  const missing = asked && name.trim() === "";
  return (
    <form className="person-form" onSubmit={(event) => void send(event)} noValidate>
      <label className="field">
        <span>Name or initials</span>
        <input
          value={name}
          onChange={(event) => setName(event.target.value)}
          autoComplete="name"
          maxLength={60}
          aria-invalid={missing}
          aria-describedby={missing ? "name-missing" : undefined}
        />
      </label>
      {missing ? (
        <p className="trouble" id="name-missing" role="alert">
          A name or initials, at least one letter.
        </p>
      ) : null}
      <fieldset>
        <legend className="legend">Role</legend>
        <div className="choices">
          {ROLES.map((each) => (
            <button key={each} type="button" aria-pressed={each === role} onClick={() => setRole(each)}>
              {ROLE_NAMES[each]}
            </button>
          ))}
        </div>
      </fieldset>
      <Trouble words={keeping.trouble} />
      <button type="submit" className="button filled tall full" aria-busy={keeping.busy}>
        {submit}
      </button>
    </form>
  );
}
