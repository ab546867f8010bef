import { judge, oddWhileTyped } from "@witnessmark/assess";
import type { Check, Gauge, Reading } from "@witnessmark/book";
import { fromSI, toSI, type UnitId } from "@witnessmark/engine";
import type { Read, RecordedReading } from "@witnessmark/ledger";
import { useMemo, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { roundTo } from "../../instruments/scale.ts";
import type { Draft } from "../../keep/contract.ts";
import { preferences } from "../../preferences/preferences.ts";
import { lastLook, readingOfWalk } from "../../walk/last-look.ts";
import { draftOf, dropDraft, keepDraft, keepTemperature, temperatureSaid } from "../../walk/reading-draft.ts";
import { type EntryUnit, entryUnit, type ReadingView, readingView } from "../../walk/reading-view.ts";

/** The reading of the check in hand while it is being made. */
export interface ReadingInHand {
  readonly check: Check;
  readonly reading: Reading;
  readonly gauge: Gauge;
  readonly entry: EntryUnit;
  readonly view: ReadingView;
  readonly verdict: ReturnType<typeof judge> | null;
  readonly read: Read | null;
  /** "0.06 bar less than expected since 9 Nov": what its past says of it, where that is something. */
  readonly odd: string | undefined;
  readonly temperature: Read | undefined;
  readonly last: RecordedReading | undefined;
  readonly needsTemperature: boolean;
  setValue(value: number): void;
  /** A figure typed, in whatever unit it was typed in. */
  setRead(read: Read): void;
  setTemperature(temperature: Read): void;
  /** The fact to keep with the answer; none when nothing was read, or it is kept already. */
  drafts(): readonly Draft[];
  /** Called once the answer is kept. */
  settle(): void;
}

/**
 * @param asked the step is open: a reading kept in this walk is then last time's, and nothing comes filled in
 * @returns null for a check that asks for no reading, or whose gauge the book does not have
 */
export function useReading(
  open: OpenAircraft,
  walk: string,
  check: Check,
  asked: boolean,
): ReadingInHand | null {
  const { book, state } = open;
  const { reading } = check;
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  const kept = readingOfWalk(state, check.id, walk);
  const [draft, setDraft] = useState(() => {
    const found = draftOf(walk, check.id);
    const said =
      reading?.temperatureOf === undefined ? undefined : temperatureSaid(walk, reading.temperatureOf);
    return {
      read: found?.read ?? (asked ? null : kept?.read) ?? null,
      temperature: found?.temperature ?? (asked ? null : kept?.temperature) ?? said ?? null,
    };
  });
  const chosen = preferences.use().units;
  const [ownUnit, setOwnUnit] = useState<UnitId | undefined>(draft.read?.unit);
  const last = (asked ? kept : undefined) ?? lastLook(state, check.id, walk).reading;
  const temperature = draft.temperature ?? undefined;
  const unit = ownUnit ?? (reading === undefined ? undefined : chosen[reading.dimension]);
  const entry = useMemo(
    () => (reading === undefined || gauge === undefined ? null : entryUnit(reading, gauge, unit)),
    [reading, gauge, unit],
  );
  const view = useMemo(
    () =>
      reading === undefined || gauge === undefined || entry === null
        ? null
        : readingView({
            book,
            check,
            reading,
            gauge,
            entry,
            now: draft.read === null ? null : valueIn(draft.read, entry),
            temperature: draft.temperature ?? undefined,
            last,
          }),
    [book, check, reading, gauge, entry, draft, last],
  );
  const verdict = useMemo(
    () =>
      draft.read === null || reading === undefined
        ? null
        : judge(check, book, {
            read: draft.read,
            ...(draft.temperature === null ? {} : { temperature: draft.temperature }),
          }),
    [book, check, reading, draft],
  );
  const odd = useMemo(() => {
    if (draft.read === null) return undefined;
    const now_ms = Date.now();
    return oddWhileTyped(
      book,
      state,
      check,
      { walk, read: draft.read, ...(draft.temperature === null ? {} : { temperature: draft.temperature }) },
      { now_ms, offset_min: -new Date(now_ms).getTimezoneOffset() },
    );
  }, [book, state, check, walk, draft]);
  if (reading === undefined || gauge === undefined || entry === null || view === null) return null;

  const change = (next: typeof draft) => {
    setDraft(next);
    keepDraft(walk, check.id, next);
  };
  return {
    check,
    reading,
    gauge,
    entry,
    view,
    verdict,
    read: draft.read,
    odd,
    temperature,
    last,
    needsTemperature: reading.limit.by !== "fixed",
    setValue: (value) =>
      change({ ...draft, read: { value: roundTo(value, 10 ** -entry.decimals), unit: entry.unit } }),
    setRead: (read) => {
      setOwnUnit(read.unit);
      change({ ...draft, read });
    },
    setTemperature: (next) => {
      change({ ...draft, temperature: next });
      if (reading.temperatureOf !== undefined) keepTemperature(walk, reading.temperatureOf, next);
    },
    drafts: () => {
      if (draft.read === null || (!asked && isSame(kept, draft))) return [];
      return [
        {
          type: "reading.recorded",
          body: {
            walk,
            check: check.id,
            gauge: reading.gauge,
            read: draft.read,
            ...(draft.temperature === null ? {} : { temperature: draft.temperature }),
          },
        },
      ];
    },
    settle: () => dropDraft(walk, check.id),
  };
}

const valueIn = (read: Read, entry: EntryUnit): number =>
  read.unit === entry.unit
    ? read.value
    : roundTo(fromSI(toSI(read.value, read.unit), entry.unit), 10 ** -entry.decimals);

const sameRead = (a: Read | null | undefined, b: Read | null | undefined) =>
  (a ?? null) === (b ?? null) || (a?.value === b?.value && a?.unit === b?.unit);

const isSame = (
  kept: RecordedReading | undefined,
  draft: { readonly read: Read | null; readonly temperature: Read | null },
) => kept !== undefined && sameRead(kept.read, draft.read) && sameRead(kept.temperature, draft.temperature);
