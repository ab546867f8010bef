import { localDayOf } from "@witnessmark/assess";
import { addMonths } from "@witnessmark/engine";
import { type FormEvent, useState } from "react";
import { saveFile } from "../../frame/save-file.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";

/** The record of a period as a PDF, for whoever reviews it. The server makes it: the phone does not hold ten years. */
export function RecordPdf({ registration }: { readonly registration: string }) {
  const keeping = useKeeping();
  const today = localDayOf(Date.now(), -new Date().getTimezoneOffset());
  const [from, setFrom] = useState(() => addMonths(today, -12));
  const [to, setTo] = useState(today);
  const send = (event: FormEvent) => {
    event.preventDefault();
    void keeping.keep(async () => {
      const pdf = await asked(registration, from, to);
      saveFile(pdf, `${registration.toLowerCase()}-${from}-${to}.pdf`);
    });
  };
  return (
    <form className="record-pdf" onSubmit={send} noValidate>
      <label className="field">
        <span>From</span>
        <input type="date" value={from} onChange={(event) => setFrom(event.target.value)} />
      </label>
      <label className="field">
        <span>To</span>
        <input type="date" value={to} onChange={(event) => setTo(event.target.value)} />
      </label>
      <button type="submit" className="button" aria-busy={keeping.busy}>
        The record of it, PDF
      </button>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
    </form>
  );
}

/** @throws {Error} in words, when the server is out of reach or refuses the period */
async function asked(registration: string, from: string, to: string): Promise<Blob> {
  if (from !== "" && to !== "" && to < from)
    throw new Error(`The period ends on ${to}, before it begins on ${from}. Change one of the two days.`);
  try {
    const { makeClient } = await import("@witnessmark/server/client");
    return await makeClient("").recordPdf(registration, {
      ...(from === "" ? {} : { from }),
      ...(to === "" ? {} : { to }),
    });
  } catch (error) {
    if (error instanceof Error && error.name === "Refused") throw error; // the server's own words
    throw new Error("The server makes this file, and it is out of reach. Try again with a connection.", {
      cause: error,
    });
  }
}
