import type { Status } from "@witnessmark/ledger";
import { Mark } from "../marks/mark.tsx";
import { href } from "../routes/route.ts";

export type SheetName = "walk" | "load" | "conditions" | "record" | "decide" | "aircraft";

interface SheetsNavProps {
  readonly registration: string;
  readonly here: SheetName;
  readonly worst: Readonly<Record<SheetName, Status>>;
  readonly revision: number | null;
}

const NAMES: Readonly<Record<SheetName, string>> = {
  walk: "Walk",
  load: "Load",
  conditions: "Conditions",
  record: "Record",
  decide: "Decide",
  aircraft: "Aircraft",
};

/**
 * A row of fasteners: each sheet wears its worst mark, so the row itself says what is left. Five have room on a phone:
 * there the aircraft and its book are come to from the Apron and from the end of the record.
 */
export function SheetsNav({ registration, here, worst, revision }: SheetsNavProps) {
  return (
    <nav className="sheets" aria-label="Sheets">
      {(["walk", "load", "conditions", "record", "decide", "aircraft"] as const).map((name) => (
        <a
          key={name}
          className={name === "aircraft" ? "only-wide" : undefined}
          href={href({ at: name, registration })}
          aria-current={name === here ? "page" : undefined}
        >
          <Mark status={worst[name]} size_px={22} />
          {NAMES[name]}
          {name === "aircraft" && revision !== null ? <small>rev {revision}</small> : null}
        </a>
      ))}
    </nav>
  );
}
