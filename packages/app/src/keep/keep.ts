import type { LedgerEvent } from "@witnessmark/ledger";
import { revisionFault } from "./books/revision-fault.ts";
import { openShelf } from "./books/shelf.ts";
import type { Draft, Keep, KeepSnapshot, PhotoToKeep } from "./contract.ts";
import { deviceLabel, openDevice } from "./device.ts";
import { makeDrafts } from "./drafts.ts";
import { startExchanges } from "./exchange/at-work.ts";
import { openHoldings } from "./holdings.ts";
import { eventsInOrder } from "./ledger/events-in-order.ts";
import { makeLocks } from "./locks.ts";
import { fullOptions, type KeepOptions } from "./options.ts";
import { part } from "./part.ts";
import { handTo, introducePerson } from "./people.ts";
import { makePhoneInHand } from "./phone-in-hand.ts";
import { makePhotoPost } from "./photos/photo-post.ts";
import { findPhoto } from "./photos/photos.ts";
import { makeReadyPhotos } from "./photos/ready-photos.ts";
import { withRoom } from "./room.ts";
import { comingWords, makeSnapshots } from "./snapshots.ts";
import { CannotOpen, connect } from "./storage/open-database.ts";
import type { PhotoRow } from "./storage/schema.ts";
import { joinTabs, type TabMessage } from "./tabs.ts";
import { makeWriting } from "./writing.ts";

/** What the first page is shown without. They come when they are asked for. */
const parts = {
  exportLedger: part(() => import("./ledger/export-ledger.ts")),
  older: part(() => import("./exchange/fetch-older.ts")),
  pictures: part(() => import("./photos/keep-pictures.ts")),
};

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
  let persisted: boolean | null = null;

  const snapshots = makeSnapshots(() => ({
    phase,
    openError,
    phone: phone.now(),
    trouble: exchanges.trouble() ?? comingWords(holdings.coming()) ?? post.trouble(),
    persisted,
    updateWaiting: updates.waiting(),
    needsNet: updates.cannotBeKept(),
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

  const tabs = joinTabs(options.name, (message) => heed(message).catch(report));
  const phone = makePhoneInHand(connection, {
    changed: publish,
    written: () => tabs.tell({ kind: "settings" }),
    report,
  });
  const holdings = openHoldings(connection, shelf, {
    now_ms,
    later: options.later,
    report,
    onChange: publish,
  });
  const post = makePhotoPost({
    connection,
    server,
    locks,
    report,
    onChange: () => phone.refresh().catch(report),
  });
  const exchanges = startExchanges({
    options,
    connection,
    locks,
    holdings,
    phone,
    tabs,
    report,
    reached: () => post.go(),
  });
  const writing = makeWriting({
    options,
    connection,
    locks,
    shelf,
    holdings,
    phone,
    tabs,
    exchanges,
    report,
    opened: () => opened,
    cannot: () => (phase === "ready" ? null : (openError ?? "The storage is not open.")),
    showFirst,
  });
  const readyPhoto = makeReadyPhotos(locks, options.shrink);

  const offs = [
    page.onShown(() => shown().catch(report)),
    page.onHidden(() => exchanges.pause()),
    page.onOnline(() => void exchanges.want("all")),
    updates.subscribe(publish),
  ];

  async function open(): Promise<void> {
    try {
      phone.isDevice(
        await locks.hold("device", () => openDevice(connection, deviceLabel(options.userAgent))),
      );
      await phone.refresh();
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
      writing.makeReady();
      if (options.automatic) void exchanges.want("all");
      if (page.isShown()) exchanges.listen();
    });
  }

  async function shown(): Promise<void> {
    if (phase === "opening") return;
    if (phase === "cannot-open") {
      await open();
      return;
    }
    await connection.probe();
    await phone.refresh();
    await holdings.catchUp();
    exchanges.listen();
    if (options.automatic) void exchanges.want("all");
    updates.look();
  }

  async function heed(message: TabMessage): Promise<void> {
    await opened;
    if (phase !== "ready" || isClosed) return;
    if (message.kind === "settings") await phone.refresh();
    else for (const aircraft of message.aircraft) await holdings.refresh(aircraft);
  }

  async function adopt(
    text: string,
    fileName: string,
    pictures: readonly PhotoRow[] = [],
  ): ReturnType<Keep["adoptBook"]> {
    const { book, faults } = await shelf.read(text, fileName);
    if (book === null) return { faults };
    const { registration, type } = book.aircraft;
    const { state } = holdings.of(registration).ledger;
    const fault = revisionFault(book, text, fileName, state.books);
    if (fault !== undefined) return { faults: [fault] };
    await keepBookPictures(registration, pictures);
    const drafts: Draft[] = [];
    if (state.books.at(-1)?.sha256 !== book.sha256) {
      const body = { sha256: book.sha256, revision: book.revision, registration, type, text };
      drafts.push({ type: "book.adopted", body });
    }
    if (state.archived) drafts.push({ type: "aircraft.restored", body: {} });
    await writing.keep(registration, drafts);
    return { registration };
  }

  /** Keeps pictures that a book names, and has them sent. @throws {NotKept} */
  async function keepBookPictures(registration: string, pictures: readonly PhotoRow[]): Promise<void> {
    if (pictures.length === 0) return;
    await opened;
    const { keepPictures } = await parts.pictures();
    await writing.write(() => keepPictures(connection, registration, pictures));
    await phone.refresh();
    post.go();
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
    const events = await writing.keep(registration, [...drafts, attached], { photo: row, committed });
    await phone.refresh();
    return events;
  }

  /** Runs a change of who is known on this phone. */
  async function changePeople<T>(change: () => Promise<T>): Promise<T> {
    const result = await writing.write(change);
    await phone.refresh();
    writing.makeReady();
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
        ? writing.keep(registration, drafts, { committed })
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
    drafts: makeDrafts(connection, now_ms, async () => (await storage?.estimate()) ?? {}),
    introduce: (person) => changePeople(() => introducePerson(connection, person)),
    choosePerson: (id) => changePeople(() => handTo(connection, id)),
    async exportLedger(registration) {
      const { exportLedger } = await parts.exportLedger();
      return exportLedger({ connection, server, now_ms }, registration, phone.now().operator ?? "");
    },
    async entries(registration) {
      await opened;
      return await Array.fromAsync(eventsInOrder(connection, registration));
    },
    async fetchOlder(registration, about = {}) {
      await opened;
      const { fetchOlder } = await parts.older();
      await withRoom(connection, report, () => fetchOlder(exchanges.context, registration, about));
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
      await exchanges.want("all");
      await post.settled();
    },
    close() {
      isClosed = true;
      exchanges.close();
      tabs.close();
      for (const off of offs) off();
      connection.close();
    },
  };
}
