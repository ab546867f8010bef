import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";

/** Everything of one aircraft as a file: it can be verified and assessed with nothing but the program. */
export function LedgerFile({ registration }: { readonly registration: string }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const save = () =>
    keeping.keep(async () => {
      const file = await keep.exportLedger(registration);
      const address = URL.createObjectURL(file);
      const link = document.createElement("a");
      link.href = address;
      link.download = `${registration}.ledger.jsonl`;
      link.click();
      // the browser has taken it up once this task is over
      setTimeout(() => URL.revokeObjectURL(address), 60_000);
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
