import { useRef, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeep } from "../../keep/react.ts";
import { longDay } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";

/** So many entries at a time: some months of an aircraft that flies every day. */
const AT_A_TIME = 10_000;

interface OlderEntriesProps {
  readonly open: OpenAircraft;
  /** How deep the heading stands on its screen. */
  readonly as?: "h2" | "h3";
}

/** Says what was answered so long ago that this phone left it at the server, and brings it when asked. */
export function OlderEntries({ open, as: Heading = "h3" }: OlderEntriesProps) {
  const { older } = open.entry;
  const keep = useKeep();
  const [left, setLeft] = useState<number | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const stopping = useRef<AbortController | null>(null);
  if (older === undefined) return null;
  const isReached = open.snapshot.status.server === "reached";

  async function fetch(most: number): Promise<void> {
    stopping.current = new AbortController();
    setTrouble(null);
    setLeft(older?.entries ?? 0);
    try {
      const { signal } = stopping.current;
      await keep.fetchOlder(open.registration, { most, signal, onProgress: setLeft });
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    } finally {
      setLeft(null);
    }
  }

  return (
    <section className="one-section">
      <Heading>Older answers</Heading>
      <p>
        What was answered on walks before {longDay(Date.parse(older.since))} is{" "}
        {isReached ? "at the server, not on this phone." : "not on this phone; connect to read it."}{" "}
        Everything that a verdict rests on is here.
        {older.inDoubt
          ? " Something came in late: until the server is asked again, this may be short of it."
          : ""}
      </p>
      <Trouble words={trouble} onDismiss={() => setTrouble(null)} />
      {left === null ? (
        <div className="save-files">
          <button type="button" className="button" onClick={() => void fetch(AT_A_TIME)}>
            Fetch some months more
          </button>
          <button type="button" className="button" onClick={() => void fetch(Number.POSITIVE_INFINITY)}>
            Fetch everything
          </button>
        </div>
      ) : (
        <div className="save-files">
          <p role="status">{tally(left, "entry", "entries")} left at the server</p>
          <button type="button" className="button" onClick={() => stopping.current?.abort()}>
            Stop
          </button>
        </div>
      )}
    </section>
  );
}
