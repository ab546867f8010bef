import { askedByChance } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { type EventDraft, fold, type LedgerEvent, makeEvents, newId, sha256 } from "@witnessmark/ledger";
import { firstOfDay } from "./book.ts";
import type { PictureFile } from "./picture-file.ts";
import { goodReading } from "./readings.ts";

interface Morning {
  readonly url: string;
  readonly book: Book;
  readonly name: string;
  /** What was taken wherever a check asks for a picture. */
  readonly picture: PictureFile;
  /** When the walk began, milliseconds since 1970 UTC. */
  readonly began_ms: number;
  /** Ids of the steps that are left to do. */
  readonly leave: readonly string[];
}

/** Nobody goes from one thing to the next in less. */
const STEP_ms = 13_000;

/**
 * Sends the server most of a first walk of the day, as another phone of the same person made it, at the pace at which
 * it is honestly walked.
 *
 * @returns when the last of it was done, milliseconds since 1970 UTC
 */
export async function walkedMorning({ url, book, name, picture, began_ms, leave }: Morning): Promise<number> {
  const walk = newId();
  const context = {
    operator: "own",
    aircraft: book.aircraft.registration,
    device: newId(),
    author: { id: newId(), name, role: "pilot" },
    zone_min: 0,
    newId,
    key: null,
  } as const;
  const events: LedgerEvent[] = [];
  let [last, clock, now_ms]: [Awaited<ReturnType<typeof makeEvents>>["last"], string | null, number] = [
    null,
    null,
    began_ms,
  ];
  const say = async (drafts: readonly EventDraft[]) => {
    const made = await makeEvents({ ...context, last, clock, now_ms }, drafts);
    events.push(...made.events);
    ({ last, clock } = made);
  };
  const photo = {
    sha256: await sha256(new Uint8Array(picture.buffer)),
    mediaType: "image/jpeg",
    size_B: picture.buffer.byteLength,
    width_px: 1600,
    height_px: 1200,
  } as const;
  await say([
    { type: "device.introduced", body: { label: "Phone", key: { kind: "none", why: "For a picture." } } },
    { type: "walk.started", body: { walk, kind: "first-of-day", bookSha256: book.sha256 } },
  ]);
  const drawn = askedByChance(book, fold(events), fold(events).walks.get(walk) ?? null);
  for (const { step } of firstOfDay(book)) {
    const least_ms = step.kind === "check" ? step.check.least.valueSI * 1_300 : 0;
    now_ms += Math.max(STEP_ms, least_ms);
    if (!leave.includes(step.id)) await say(draftsOf(step, walk, book, photo, drawn));
  }
  await push(url, context.aircraft, events);
  await put(url, photo.sha256, picture);
  return now_ms;
}

function draftsOf(
  step: ReturnType<typeof firstOfDay>[number]["step"],
  walk: string,
  book: Book,
  photo: Omit<Extract<EventDraft, { type: "photo.attached" }>["body"], "subject">,
  drawn: ReadonlySet<string>,
): readonly EventDraft[] {
  if (step.kind === "ground-gear") {
    const { id: item, count, stowedIn } = step.item;
    return [
      { type: "groundGear.removed", body: { item, count, walk, stowedIn: stowedIn[0] ?? "the cabin" } },
    ];
  }
  const { id: check, reading, evidence } = step.check;
  const answer = { type: "check.answered", body: { walk, check, answer: "as-it-should-be" } } as const;
  if (evidence === "photo" || drawn.has(check)) {
    return [answer, { type: "photo.attached", body: { ...photo, subject: { kind: "check", id: check } } }];
  }
  const gauge = reading === undefined ? undefined : book.gauges.get(reading.gauge);
  if (gauge === undefined) return [answer];
  const { value, temperature_degC } = goodReading(book, step.check);
  return [
    {
      type: "reading.recorded",
      body: {
        walk,
        check,
        gauge: gauge.id,
        read: { value: Number(value), unit: gauge.unit },
        ...(temperature_degC === null
          ? {}
          : { temperature: { value: Number(temperature_degC), unit: "degC" as const } }),
      },
    },
    answer,
  ];
}

async function push(url: string, aircraft: string, events: readonly LedgerEvent[]): Promise<void> {
  const answer = await fetch(`${url}/api/aircraft/${aircraft}/events`, {
    method: "POST",
    headers: { "content-type": "application/json" },
    body: JSON.stringify({ protocolVersion: 1, events }),
  });
  const text = await answer.text();
  if (!answer.ok || /"outcome":"(conflict|quarantined)"/.test(text)) {
    throw new Error(`walked-morning: expected every entry to be taken, found ${text.slice(0, 300)}`);
  }
}

async function put(url: string, hash: string, { buffer, mimeType }: PictureFile): Promise<void> {
  const answer = await fetch(`${url}/api/photos/${hash}`, {
    method: "PUT",
    headers: { "content-type": mimeType },
    body: new Uint8Array(buffer),
  });
  if (!answer.ok) throw new Error(`walked-morning: expected the picture to be taken, found ${answer.status}`);
}
