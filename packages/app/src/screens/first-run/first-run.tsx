import type { Author } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { Logo } from "../../marks/logo.tsx";
import { ROLE_NAMES, ROLES } from "../../words/people.ts";
import "./first-run.css";

/** Asks who holds the phone: every entry carries a name, so nothing can be kept before. */
export function FirstRun() {
  return (
    <div className="frame first-run">
      <main>
        <Logo />
        <p className="lead">
          Walk round an aircraft before flight, miss nothing, and sign a decision that others can trust.
        </p>
        <h1 className="heading">Who are you?</h1>
        <p className="hint">
          Your name or initials stand beside everything you see and sign. More people can share this phone
          later.
        </p>
        <PersonForm submit="Begin" />
        <p className="fine">
          Witnessmark advises; the pilot in command decides. The approved flight manual, the rules where you
          fly and licensed mechanics come first.
        </p>
      </main>
    </div>
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
