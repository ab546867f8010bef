import { useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";

/** Puts the invented aircraft away; their ledgers stay, and they can be fetched back. */
export function TakeDemoAway({ registrations }: { readonly registrations: readonly string[] }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [sure, setSure] = useState(false);
  const putAway = () =>
    keeping.keep(async () => {
      for (const registration of registrations) {
        await keep.append(registration, [
          { type: "aircraft.archived", body: { why: "The demo was taken away" } },
        ]);
      }
    });
  return (
    <>
      {sure ? (
        <button type="button" className="quiet" aria-busy={keeping.busy} onClick={() => void putAway()}>
          Put {registrations.join(", ")} away
        </button>
      ) : (
        <button type="button" className="quiet" onClick={() => setSure(true)}>
          Take the demo away
        </button>
      )}
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
    </>
  );
}
