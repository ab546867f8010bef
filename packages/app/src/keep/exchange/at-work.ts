import type { Holdings } from "../holdings.ts";
import type { Locks } from "../locks.ts";
import type { FullOptions } from "../options.ts";
import { part } from "../part.ts";
import { afterExchange, afterGreeting } from "../phone.ts";
import type { PhoneInHand } from "../phone-in-hand.ts";
import type { Connection } from "../storage/open-database.ts";
import type { Tabs } from "../tabs.ts";
import type { ExchangeContext } from "./context.ts";
import type { Exchange, ExchangeParts, Outcome, Scope } from "./exchange.ts";
import { listen } from "./live.ts";
import { makeSchedule } from "./schedule.ts";

/** What the first page is shown without. It comes right after it. */
const exchangePart = part(() => import("./exchange.ts"));

/** A phone that needs more new ids than this in one sitting is not being told the truth. */
const NEW_IDS_MOST = 8;

/** The exchanges of one page with the server. */
export interface ExchangesAtWork {
  readonly context: ExchangeContext;
  /** Exchanges soon. Resolves when an exchange that began after this call has ended. */
  want(scope: Scope): Promise<void>;
  /** What the last one could not do, in one sentence for a person. */
  trouble(): string | null;
  /** Hears the server's news while the page is looked at. */
  listen(): void;
  pause(): void;
  close(): void;
}

/** @param parts.reached told when a server was reached: what waits beside events can go now */
export function startExchanges(parts: {
  readonly options: FullOptions;
  readonly connection: Connection;
  readonly locks: Locks;
  readonly holdings: Holdings;
  readonly phone: PhoneInHand;
  readonly tabs: Tabs;
  readonly report: (error: unknown) => void;
  readonly reached: () => void;
}): ExchangesAtWork {
  const { options, connection, locks, holdings, phone, tabs, report } = parts;
  const { now_ms, server } = options;
  let trouble: string | null = null;

  const context: ExchangeContext = {
    connection,
    locks,
    server,
    now_ms,
    device: phone.device,
    newIds: { left: NEW_IDS_MOST },
    longLedger: options.longLedger,
    deviceChanged: async () => {
      await phone.refresh();
      tabs.tell({ kind: "settings" });
    },
    heads: (aircraft) => holdings.of(aircraft).ledger.state.heads,
    async tell({ aircraft, ...change }) {
      await holdings.committed(aircraft, change);
      tabs.tell({ kind: "aircraft", aircraft: [aircraft] });
    },
  };
  const asked: ExchangeParts = {
    names: () => holdings.names(),
    operator: () => phone.now().operator,
    greeted: (greeting) => void phone.learn(afterGreeting(phone.now(), greeting)),
    isLevel(aircraft, epoch, head) {
      const { row, toSend } = holdings.of(aircraft);
      const isWhole = !row.older?.askAgain && !row.older?.taking;
      return row.epoch === epoch && row.pulledTo === head && !row.refill && toSend === 0 && isWhole;
    },
    report,
  };

  /** Made when it is first wanted, of a part of its own. */
  let exchange: Promise<Exchange> | null = null;
  const atWork = (): Promise<Exchange> => {
    exchange ??= exchangePart().then(({ makeExchange }) => makeExchange(context, asked));
    exchange.catch(() => {
      exchange = null; // out of reach: it is fetched again at the next try
    });
    return exchange;
  };
  const interrupted = () => void exchange?.then((made) => made.interrupted(), report);

  async function round(scope: Scope): Promise<Outcome> {
    let made: Exchange;
    try {
      made = await atWork();
    } catch {
      return { reached: false, trouble: null }; // its part is at the server, and that is out of reach
    }
    return made.round(scope);
  }

  const schedule = makeSchedule(
    async (scope) => {
      const outcome = await round(scope);
      trouble = outcome.trouble;
      const written = phone.learn(afterExchange(phone.now(), outcome, now_ms()));
      if (outcome.reached) parts.reached();
      await written;
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

  return {
    context,
    want: schedule.want,
    trouble: () => trouble,
    listen: () => live?.open(),
    pause: () => live?.close(),
    close() {
      schedule.stop();
      live?.close();
    },
  };
}
