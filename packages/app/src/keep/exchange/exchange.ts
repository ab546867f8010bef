import { withRoom } from "../room.ts";
import { isFull } from "../storage/not-kept.ts";
import { CannotOpen, isDeadConnection } from "../storage/open-database.ts";
import type { ExchangeContext } from "./context.ts";
import { ServerInconsistent } from "./context.ts";
import { type About, OutOfReach, PROTOCOL_VERSION, Refused } from "./server.ts";
import { syncAircraft } from "./sync-aircraft.ts";

/** Everything, or one aircraft of which something is new. */
export type Scope = "all" | { readonly aircraft: string };

export interface Outcome {
  /** Whether a Witnessmark server answered. */
  readonly reached: boolean;
  /** What could not be done, in one sentence for a person. */
  readonly trouble: string | null;
}

/** What the server says of itself, as an exchange with everything begins. */
export interface Greeting {
  readonly operator: string;
  /** This phone's clock against the server's; `null` when its answer took too long to tell. */
  readonly clockOffset_ms: number | null;
}

/** A measure of the clocks taken over a slower answer than this says little. */
const SLOW_ANSWER_MS = 10_000;

/** A server that was put back to an older copy and grew again while nobody looked is found out by then. */
const COMPARE_EVERY_MS = 10 * 60_000;

export interface Exchange {
  /** One exchange with the server. Never throws: what goes wrong is in the outcome. */
  round(scope: Scope): Promise<Outcome>;
  /** The connection was interrupted: compare both sides anew at the next exchange. */
  interrupted(): void;
}

/** What an exchange asks of the keeper that it works for. */
export interface ExchangeParts {
  readonly names: () => readonly string[];
  readonly operator: () => string | null;
  /** Told at once: the connection may be lost before the exchange has ended. */
  readonly greeted: (greeting: Greeting) => void;
  /** Whether this phone and the server are known to hold the same of an aircraft. */
  readonly isLevel: (aircraft: string, epoch: string, head: number) => boolean;
  /** Told of every error that is not merely a server out of reach. */
  readonly report: (error: unknown) => void;
}

export function makeExchange(context: ExchangeContext, parts: ExchangeParts): Exchange {
  /** When both sides of an aircraft were last compared, since the connection was last interrupted. */
  const comparedAt_ms = new Map<string, number>();
  let epoch: string | null = null;

  function wasCompared(aircraft: string): boolean {
    const at_ms = comparedAt_ms.get(aircraft);
    return at_ms !== undefined && Math.abs(context.now_ms() - at_ms) < COMPARE_EVERY_MS;
  }

  async function everything(): Promise<Outcome> {
    const { about, clockOffset_ms } = await greet(context);
    parts.greeted({ operator: about.operator, clockOffset_ms });
    const refusal = refusalOf(about, parts.operator());
    if (refusal !== null) return { reached: true, trouble: refusal };
    const list = await context.server.aircraft();
    epoch = list.epoch;
    const heads = new Map(list.aircraft.map(({ aircraft, head }) => [aircraft, head]));
    const troubles: string[] = [];
    for (const aircraft of new Set([...parts.names(), ...heads.keys()])) {
      const isLevel = wasCompared(aircraft) && parts.isLevel(aircraft, list.epoch, heads.get(aircraft) ?? 0);
      if (!isLevel) troubles.push(...(await one(aircraft, list.epoch)));
    }
    return { reached: true, trouble: troubles[0] ?? null };
  }

  /** @returns what could not be done: trouble with one aircraft does not hold up the others */
  async function one(aircraft: string, at: string): Promise<readonly string[]> {
    try {
      const thorough = !wasCompared(aircraft);
      await withRoom(context.connection, parts.report, () => syncAircraft(context, aircraft, at, thorough));
      if (thorough) comparedAt_ms.set(aircraft, context.now_ms());
      return [];
    } catch (error) {
      if (error instanceof OutOfReach) throw error;
      comparedAt_ms.delete(aircraft);
      parts.report(error);
      return [sentenceOf(error)];
    }
  }

  async function attempt(scope: Scope): Promise<Outcome> {
    try {
      if (scope === "all" || epoch === null) return await everything();
      const [trouble = null] = await one(scope.aircraft, epoch);
      return { reached: true, trouble };
    } catch (error) {
      comparedAt_ms.clear();
      if (error instanceof OutOfReach) return { reached: false, trouble: null };
      parts.report(error);
      return { reached: error instanceof Refused, trouble: sentenceOf(error) };
    }
  }

  return {
    // Two tabs exchanging at once would be right, and a waste.
    round: (scope) => context.locks.hold("exchange", () => attempt(scope)),
    interrupted: () => comparedAt_ms.clear(),
  };
}

async function greet(
  context: ExchangeContext,
): Promise<{ readonly about: About; readonly clockOffset_ms: number | null }> {
  const asked_ms = context.now_ms();
  const about = await context.server.about();
  const answered_ms = context.now_ms();
  const server_ms = Date.parse(about.now);
  const took_ms = answered_ms - asked_ms;
  const isMeasured = Number.isFinite(server_ms) && took_ms >= 0 && took_ms < SLOW_ANSWER_MS;
  return {
    about,
    clockOffset_ms: isMeasured ? Math.round((asked_ms + answered_ms) / 2 - server_ms) : null,
  };
}

/** Why nothing can be exchanged with this server, whatever it holds. */
function refusalOf(about: About, operator: string | null): string | null {
  if (about.protocolVersion !== PROTOCOL_VERSION) {
    return about.protocolVersion > PROTOCOL_VERSION
      ? "The server is newer than this app. Take up the new version of the app; what is kept here stays."
      : "This app is newer than the server. Ask whoever runs the server to bring it up to date; what is kept here stays.";
  }
  if (operator !== null && about.operator !== operator) {
    return `This server keeps the records of ${about.operator}, and this phone those of ${operator}. Nothing is exchanged between them.`;
  }
  return null;
}

/** A sentence for a person about what an exchange could not do. */
function sentenceOf(error: unknown): string {
  if (isFull(error)) return "This phone has no room left for what the server holds. Free some room.";
  if (error instanceof CannotOpen || isDeadConnection(error)) {
    return "The browser has taken the storage away. Reload the page; what was kept is still there.";
  }
  if (error instanceof Refused || error instanceof ServerInconsistent) return error.message;
  return `The exchange with the server failed: ${error instanceof Error ? error.message : String(error)}`;
}
