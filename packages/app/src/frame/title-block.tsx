import { type ReactNode, useEffect } from "react";
import { Mark } from "../marks/mark.tsx";
import { useMinute } from "../preferences/clock.ts";
import { href } from "../routes/route.ts";
import { clockTime, shortDay } from "../words/dates.ts";

interface TitleBlockProps {
  readonly registration: string;
  readonly type: string;
  readonly sheet: string;
  readonly under: string;
  /** The wide middle cell of a tablet. */
  readonly wide?: { readonly title: string; readonly under: string };
  /** Who holds the phone; shown beside the day on a tablet. */
  readonly person?: string;
  readonly kept: string;
}

/** Aircraft (back to the Apron) | sheet | time and what is kept. */
export function TitleBlock({ registration, type, sheet, under, wide, person, kept }: TitleBlockProps) {
  const minute = useMinute();
  useEffect(() => {
    document.title = `${sheet}, ${registration}, Witnessmark`;
  }, [sheet, registration]);
  return (
    <header className="title-block">
      <a href={href({ at: "apron" })}>
        <b>{registration}</b>
        <span>{type}</span>
        <span className="out-of-sight">Back to the Apron</span>
      </a>
      <div>
        <h1 tabIndex={-1}>{sheet}</h1>
        <span>{under}</span>
      </div>
      <div className="wide">
        <b>{wide?.title ?? ""}</b>
        <span>{wide?.under ?? ""}</span>
      </div>
      <div className="wide">
        <b>{shortDay(minute * 60_000)}</b>
        <span>{person ?? ""}</span>
      </div>
      <When kept={kept} minute={minute} />
    </header>
  );
}

function When({ kept, minute }: { readonly kept: string; readonly minute: number }) {
  return (
    <div className="when">
      <b>{clockTime(minute * 60_000)}</b>
      <span role="status">{kept}</span>
    </div>
  );
}

interface PlainTitleProps {
  readonly title: string;
  readonly kept: string;
  /** The way back; without it, this is the Apron itself. */
  readonly back?: string;
  readonly children?: ReactNode;
}

/** The title block of a screen that belongs to no aircraft. */
export function PlainTitle({ title, kept, back }: PlainTitleProps) {
  const minute = useMinute();
  useEffect(() => {
    document.title = title === "Apron" ? "Witnessmark" : `${title}, Witnessmark`;
  }, [title]);
  return (
    <header className="title-block plain">
      <div className="logo">
        {back === undefined ? (
          <Mark status="clear" size_px={36} silent />
        ) : (
          <a className="back" href={back} aria-label="Back to the Apron">
            <Mark status="clear" size_px={36} silent />
          </a>
        )}
        <h1 tabIndex={-1}>{title}</h1>
      </div>
      <When kept={kept} minute={minute} />
    </header>
  );
}
