import { type Author, type LedgerEvent, sha256 } from "@witnessmark/ledger";
import { booksIn, openShelf } from "./books/shelf.ts";
import { type Draft, type Keep, type KeepSnapshot, NotKept, type PhotoToKeep } from "./contract.ts";
import { deviceLabel, openDevice } from "./device.ts";
import { makeDrafts } from "./drafts.ts";
import type { ExchangeContext } from "./exchange/context.ts";
import type { Exchange, ExchangeParts, Outcome, Scope } from "./exchange/exchange.ts";
import { listen } from "./exchange/live.ts";
import { makeSchedule } from "./exchange/schedule.ts";
import { openHoldings } from "./holdings.ts";
import { eventsInOrder } from "./ledger/events-in-order.ts";
import { makeLocks } from "./locks.ts";
import { fullOptions, type KeepOptions } from "./options.ts";
import { part } from "./part.ts";
import { handTo, introducePerson } from "./people.ts";
import {
  afterExchange,
  afterGreeting,
  type Learned,
  type PhoneState,
  readPhone,
  UNKNOWN_PHONE,
} from "./phone.ts";
import { makePhotoPost } from "./photos/photo-post.ts";
import { findPhoto } from "./photos/photos.ts";
import { withRoom } from "./room.ts";
import { comingWords, makeSnapshots } from "./snapshots.ts";
import { asNotKept } from "./storage/not-kept.ts";
import { CannotOpen, connect } from "./storage/open-database.ts";
import type { PhotoRow, Settings } from "./storage/schema.ts";
import { joinTabs, type TabMessage } from "./tabs.ts";

/** What the first page is shown without. They come right after it. */
const parts = {
  append: part(() => import("./ledger/append.ts")),
  exchange: part(() => import("./exchange/exchange.ts")),
  exportLedger: part(() => import("./ledger/export-ledger.ts")),
  older: part(() => import("./exchange/fetch-older.ts")),
  pictures: part(() => import("./photos/keep-pictures.ts")),
};

/** A phone that needs more new ids than this in one sitting is not being told the truth. */
const NEW_IDS_MOST = 8;

/** That it is kept is shown before it is sent: both at once would make a slow phone slower for the one who waits. */
const SHOWN_FIRST_ms = 150;

/** A picture as it is kept, and what its event says of it. */
interface ReadyPhoto {
  readonly about: Omit<Extract<Draft, { readonly type: "photo.attached" }>["body"], "subject">;
  readonly row: PhotoRow;
}

/** A keeper at work. A page has one; tests have several. */
export interface OpenKeep extends Keep {
  /** Resolves when the storage was read, or cannot be: see `snapshot().phase`. */
  readonly opened: Promise<void>;
  close(): void;
}

/** Opens what this phone keeps. Resolves also when it cannot be opened: the snapshot then says why. */
export async function openKeep(options: KeepOptions = {}): Promise<OpenKeep> {
  const keep = startKeep(options);
  await keep.opened;
  return keep;
}

/** As `openKeep`, but to be had at once, in its phase "opening". */
export function startKeep(given: KeepOptions = {}): OpenKeep {
  const options = fullOptions(given);
  const { now_ms, page, server, storage, updates } = options;
  let isClosed = false;
  const report = (error: unknown) => {
    if (!isClosed) options.report(error);
  };

  const connection = connect(options.name);
  const locks = makeLocks(options.locks, options.name);
  const shelf = openShelf(connection, options.readBook, report);

  let phase: KeepSnapshot["phase"] = "opening";
  let openError: string | null = null;
  let phone: PhoneState = UNKNOWN_PHONE;
  let trouble: string | null = null;
  let persisted: boolean | null = null;

  const snapshots = makeSnapshots(() => ({
    phase,
    openError,
    phone,
    trouble: trouble ?? comingWords(holdings.coming()) ?? post.trouble(),
    persisted,
    updateWaiting: updates.waiting(),
    entries: holdings.entries(),
  }));
  /** How many pages are showing a person that something is kept: what follows from it is told after that. */
  let showing = 0;
  const publish = () => {
    if (showing === 0) snapshots.publish();
  };
  async function showFirst(show: () => Promise<void>): Promise<void> {
    showing++;
    try {
      await show();
    } catch (error) {
      report(error);
    } finally {
      showing--;
      publish();
    }
  }

  const holdings = openHoldings(connection, shelf, {
    now_ms,
    later: options.later,
    report,
    onChange: publish,
  });
  const tabs = joinTabs(options.name, (message) => heed(message).catch(report));

  const post = makePhotoPost({
    connection,
    server,
    locks,
    report,
    onChange: () => refreshPhone().catch(report),
  });

  /** Made when it is first wanted, of a part of its own. */
  let exchange: Promise<Exchange> | null = null;
  const exchangeAtWork = (): Promise<Exchange> => {
    exchange ??= parts.exchange().then(({ makeExchange }) => makeExchange(exchangeContext, exchangeParts));
    exchange.catch(() => {
      exchange = null; // out of reach: it is fetched again at the next try
    });
    return exchange;
  };
  const interrupted = () => void exchange?.then((made) => made.interrupted(), report);
  const exchangeContext: ExchangeContext = {
    connection,
    locks,
    server,
    now_ms,
    device: () => deviceInHand(),
    newIds: { left: NEW_IDS_MOST },
    longLedger: options.longLedger,
    deviceChanged: async () => {
      await refreshPhone();
      tabs.tell({ kind: "settings" });
    },
    heads: (aircraft) => holdings.of(aircraft).ledger.state.heads,
    async tell({ aircraft, ...change }) {
      await holdings.committed(aircraft, change);
      tabs.tell({ kind: "aircraft", aircraft: [aircraft] });
    },
  };
  const exchangeParts: ExchangeParts = {
    names: () => holdings.names(),
    operator: () => phone.operator,
    greeted: (greeting) => void learn(afterGreeting(phone, greeting)),
    isLevel(aircraft, epoch, head) {
      const { row, toSend } = holdings.of(aircraft);
      const isWhole = !row.older?.askAgain && !row.older?.taking;
      return row.epoch === epoch && row.pulledTo === head && !row.refill && toSend === 0 && isWhole;
    },
    report,
  };

  async function round(scope: Scope): Promise<Outcome> {
    let made: Exchange;
    try {
      made = await exchangeAtWork();
    } catch {
      return { reached: false, trouble: null }; // its part is at the server, and that is out of reach
    }
    return made.round(scope);
  }

  const schedule = makeSchedule(
    async (scope) => {
      const outcome = await round(scope);
      await takeOutcome(outcome);
      return outcome;
    },
    Math.random,
    options.automatic,
  );

  const live = options.liveSource
    ? listen(options.liveSource, {
        connected() {
          interrupted();
          void schedule.want("all");
        },
        head({ aircraft, head, epoch }) {
          const { row } = holdings.of(aircraft);
          if (row.epoch === epoch && row.pulledTo === head) return;
          if (head < row.pulledTo) interrupted(); // late news, or an older copy of the server
          void schedule.want({ aircraft });
        },
      })
    : null;

  const offs = [
    page.onShown(() => shown().catch(report)),
    page.onHidden(() => live?.close()),
    page.onOnline(() => void schedule.want("all")),
    updates.subscribe(publish),
  ];

  const estimate = async () => (await storage?.estimate()) ?? {};

  function deviceInHand() {
    if (phone.device === null) throw new CannotOpen("The storage of this phone is not open yet.");
    return phone.device;
  }

  /** Reads it again; what an exchange has found out meanwhile is not laid under an older look at the storage. */
  async function refreshPhone(): Promise<void> {
    for (;;) {
      const before = phone;
      const read = await readPhone(connection, before);
      if (phone !== before) continue;
      phone = read;
      publish();
      return;
    }
  }

  /** Who holds the phone will want to keep something: the part that does it is fetched before that. */
  function readyToWrite(): void {
    if (phone.person !== null) parts.append().catch(() => {}); // asked for again by the first entry, and told there
  }

  async function open(): Promise<void> {
    try {
      const device = await locks.hold("device", () => openDevice(connection, deviceLabel(options.userAgent)));
      phone = { ...phone, device };
      await refreshPhone();
      const names = await connection.run((database) => database.getAllKeys("aircraft"));
      await Promise.all(names.map((name) => holdings.refresh(name)));
      persisted = (await storage?.persisted()) ?? null;
      phase = "ready";
      openError = null;
    } catch (error) {
      report(error);
      phase = "cannot-open";
      openError =
        error instanceof CannotOpen
          ? error.message
          : `The storage of this phone cannot be read (${error instanceof Error ? error.message : String(error)}). Reload the page.`;
    }
    publish();
    if (phase !== "ready" || isClosed) return;
    options.afterFirstPage(() => {
      if (isClosed) return;
      readyToWrite();
      if (options.automatic) void schedule.want("all");
      if (page.isShown()) live?.open();
    });
  }

  async function shown(): Promise<void> {
    if (phase === "opening") return;
    if (phase === "cannot-open") {
      await open();
      return;
    }
    await connection.probe();
    await refreshPhone();
    await holdings.catchUp();
    live?.open();
    if (options.automatic) void schedule.want("all");
    updates.look();
  }

  async function heed(message: TabMessage): Promise<void> {
    await opened;
    if (phase !== "ready" || isClosed) return;
    if (message.kind === "settings") await refreshPhone();
    else for (const aircraft of message.aircraft) await holdings.refresh(aircraft);
  }

  async function takeOutcome(outcome: Outcome): Promise<void> {
    trouble = outcome.trouble;
    const written = learn(afterExchange(phone, outcome, now_ms()));
    if (outcome.reached) post.go();
    await written;
  }

  /** Takes in what is now known of the phone. Never fails: what could not be written is measured again next time. */
  async function learn({ phone: now, write }: Learned): Promise<void> {
    phone = now;
    publish();
    try {
      await writeSettings(write);
    } catch (error) {
      report(error);
    }
  }

  async function writeSettings(settings: Partial<Settings>): Promise<void> {
    const names = Object.keys(settings) as (keyof Settings)[]; // the keys of a part of Settings
    if (names.length === 0) return;
    await connection.run(async (database) => {
      const transaction = database.transaction("settings", "readwrite");
      for (const name of names) {
        const value = settings[name];
        if (value !== undefined) await transaction.store.put(value, name);
      }
      await transaction.done;
    });
    tabs.tell({ kind: "settings" });
  }

  async function keepDrafts(
    registration: string,
    drafts: readonly Draft[],
    {
      photo,
      committed,
    }: { readonly photo?: PhotoRow; readonly committed?: (() => Promise<void>) | undefined } = {},
  ): Promise<readonly LedgerEvent[]> {
    await opened;
    const author = await authorInHand();
    if (drafts.length === 0) return [];
    const operator = await operatorOrRefuse();
    let taken: Promise<void> | undefined;
    let shownFirst: Promise<void> | undefined;
    try {
      await shelf.ready(booksIn(drafts));
      const { appendDrafts } = await parts.append();
      const { events } = await withRoom(connection, report, () =>
        locks.inPage(`append:${registration}`, async () => {
          const place = { device: deviceInHand(), row: holdings.of(registration).row };
          const context = {
            connection,
            operator,
            author,
            now_ms: now_ms(),
            clockOffset_ms: phone.clockOffset_ms,
          };
          const appended = await appendDrafts(context, place, drafts, photo);
          const { row, events: inserted } = appended;
          if (committed !== undefined) shownFirst = showFirst(committed);
          taken = holdings.committed(registration, { row, inserted, waiting: inserted.length });
          return appended;
        }),
      );
      await taken;
      await shownFirst;
      tabs.tell({ kind: "aircraft", aircraft: [registration] });
      if (options.automatic) setTimeout(() => void schedule.want({ aircraft: registration }), SHOWN_FIRST_ms);
      return events.slice(-drafts.length);
    } catch (error) {
      throw await asNotKept(error, estimate);
    }
  }

  async function authorInHand(): Promise<Author> {
    if (phase !== "ready") throw new NotKept("gone", `Not kept. ${openError ?? "The storage is not open."}`);
    if (phone.person === null) throw new NotKept("other", "Not kept. Say first who holds the phone.");
    return phone.person;
  }

  /** Every entry names whose record it belongs to, which only the server can tell, once. */
  async function operatorOrRefuse(): Promise<string> {
    if (phone.operator === null) await schedule.want("all");
    if (phone.operator !== null) return phone.operator;
    throw new NotKept(
      "other",
      "Not kept. This phone has never reached its server, which it must do once. Connect it, then answer again.",
    );
  }

  async function adopt(
    text: string,
    fileName: string,
    pictures: readonly PhotoRow[] = [],
  ): ReturnType<Keep["adoptBook"]> {
    const { book, faults } = await shelf.read(text, fileName);
    if (book === null) return { faults };
    const { registration, type } = book.aircraft;
    await keepBookPictures(registration, pictures);
    const { state } = holdings.of(registration).ledger;
    const drafts: Draft[] = [];
    if (state.books.at(-1)?.sha256 !== book.sha256) {
      const body = { sha256: book.sha256, revision: book.revision, registration, type, text };
      drafts.push({ type: "book.adopted", body });
    }
    if (state.archived) drafts.push({ type: "aircraft.restored", body: {} });
    await keepDrafts(registration, drafts);
    return { registration };
  }

  /** Keeps pictures that a book names, and has them sent. @throws {NotKept} */
  async function keepBookPictures(registration: string, pictures: readonly PhotoRow[]): Promise<void> {
    if (pictures.length === 0) return;
    await opened;
    const { keepPictures } = await parts.pictures();
    try {
      await withRoom(connection, report, () => keepPictures(connection, registration, pictures));
    } catch (error) {
      throw await asNotKept(error, estimate);
    }
    await refreshPhone();
    post.go();
  }

  const small = new WeakMap<Blob, Promise<ReadyPhoto>>();

  /** A picture made small and hashed, once for each file. */
  function readyPhoto(file: Blob): Promise<ReadyPhoto> {
    const known = small.get(file);
    if (known !== undefined) return known;
    const made = makeReady(file);
    small.set(file, made);
    made.catch(() => small.delete(file)); // the next try is told why
    return made;
  }

  async function makeReady(file: Blob): Promise<ReadyPhoto> {
    const { blob, mediaType, width_px, height_px } = await locks.hold("shrink", () => options.shrink(file));
    const bytes = await blob.arrayBuffer();
    const hash = await sha256(new Uint8Array(bytes));
    const about = { sha256: hash, mediaType, size_B: bytes.byteLength, width_px, height_px };
    return { about, row: { sha256: hash, mediaType, bytes } };
  }

  /** Keeps the drafts and the picture in one transaction: all of it or nothing. */
  async function keepWithPhoto(
    registration: string,
    drafts: readonly Draft[],
    { subject, file }: PhotoToKeep,
    committed?: () => Promise<void>,
  ): Promise<readonly LedgerEvent[]> {
    const { about, row } = await readyPhoto(file);
    const attached: Draft = { type: "photo.attached", body: { subject, ...about } };
    // the picture's own event comes last: the bytes are sent under its id
    const events = await keepDrafts(registration, [...drafts, attached], { photo: row, committed });
    await refreshPhone();
    return events;
  }

  /** Runs a change of who is known on this phone. */
  async function changePeople<T>(change: () => Promise<T>): Promise<T> {
    await opened;
    let result: T;
    try {
      result = await withRoom(connection, report, change);
    } catch (error) {
      throw await asNotKept(error, estimate);
    }
    await refreshPhone();
    readyToWrite();
    tabs.tell({ kind: "settings" });
    return result;
  }

  const opened = open();
  return {
    opened,
    subscribe: snapshots.subscribe,
    snapshot: snapshots.current,
    append: (registration, drafts, committed, photo) =>
      photo === undefined
        ? keepDrafts(registration, drafts, { committed })
        : keepWithPhoto(registration, drafts, photo, committed),
    async attachPhoto(registration, subject, file) {
      await keepWithPhoto(registration, [], { subject, file });
    },
    preparePhoto(file) {
      readyPhoto(file).catch(() => {}); // told when it is kept
    },
    photo: (hash) => findPhoto(connection, server, hash, report),
    adoptBook: adopt,
    async keepBookPicture(registration, file) {
      const { row } = await readyPhoto(file);
      await keepBookPictures(registration, [row]);
      return row.sha256;
    },
    drafts: makeDrafts(connection, now_ms, estimate),
    introduce: (person) => changePeople(() => introducePerson(connection, person)),
    choosePerson: (id) => changePeople(() => handTo(connection, id)),
    async exportLedger(registration) {
      const { exportLedger } = await parts.exportLedger();
      return exportLedger({ connection, server, now_ms }, registration, phone.operator ?? "");
    },
    async entries(registration) {
      await opened;
      return await Array.fromAsync(eventsInOrder(connection, registration));
    },
    async fetchOlder(registration, about = {}) {
      await opened;
      const { fetchOlder } = await parts.older();
      await withRoom(connection, report, () => fetchOlder(exchangeContext, registration, about));
    },
    async askToPersist() {
      persisted = (await storage?.persist()) ?? false;
      publish();
      return persisted;
    },
    takeUpdate: () => updates.take(),
    async exchange() {
      await opened;
      if (phase !== "ready") return;
      await schedule.want("all");
      await post.settled();
    },
    close() {
      isClosed = true;
      schedule.stop();
      live?.close();
      tabs.close();
      for (const off of offs) off();
      connection.close();
    },
  };
}
