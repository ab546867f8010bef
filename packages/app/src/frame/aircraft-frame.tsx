import type { ReactNode } from "react";
import { clockTime } from "../words/dates.ts";
import { keptOfOne } from "../words/keeping.ts";
import { personText } from "../words/people.ts";
import { deviceWord } from "./device-word.ts";
import type { OpenAircraft } from "./open-aircraft.ts";
import { type SheetName, SheetsNav } from "./sheets-nav.tsx";
import { TitleBlock } from "./title-block.tsx";
import { worstBySheet } from "./worst-by-sheet.ts";

interface AircraftFrameProps {
  readonly open: OpenAircraft;
  readonly sheet: SheetName;
  readonly title: string;
  readonly under: string;
  readonly className?: string;
  readonly children: ReactNode;
}

/** Title block, sheet, row of sheets: the frame of everything that belongs to one aircraft. */
export function AircraftFrame({ open, sheet, title, under, className, children }: AircraftFrameProps) {
  const { registration, book, entry, assessment, person, flight, state } = open;
  return (
    <div className={className === undefined ? "frame" : `frame ${className}`}>
      <TitleBlock
        registration={registration}
        type={book.aircraft.type}
        sheet={title}
        under={under}
        wide={
          flight === null
            ? { title: "No flight planned", under: "Say where to on Decide" }
            : {
                title: `${flight.from} to ${flight.to}`,
                under: `Off blocks ${clockTime(Date.parse(flight.offBlocks))}`,
              }
        }
        person={personText(person)}
        kept={keptOfOne(entry.toSend, deviceWord())}
      />
      {children}
      <SheetsNav
        registration={registration}
        here={sheet}
        worst={worstBySheet(assessment, state.discrepancies)}
        revision={book.revision}
      />
    </div>
  );
}
