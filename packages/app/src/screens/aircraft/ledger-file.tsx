import { saveFile } from "../../frame/save-file.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";

/** Everything of one aircraft as a file: it can be verified and assessed with nothing but the program. */
export function LedgerFile({ registration }: { readonly registration: string }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const save = () =>
    keeping.keep(async () => {
      saveFile(await keep.exportLedger(registration), `${registration}.ledger.jsonl`);
    });
  return (
    <>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <button type="button" className="button" aria-busy={keeping.busy} onClick={() => void save()}>
        Save the ledger as a file
      </button>
    </>
  );
}
