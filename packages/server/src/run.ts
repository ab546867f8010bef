import { join, resolve } from "node:path";
import { openStore } from "@witnessmark/store";
import { readSettings, type Settings, USAGE } from "./settings.ts";
import { startServer } from "./start-server.ts";
import { weatherService } from "./weather/weather-service.ts";

const ROOT = resolve(import.meta.dirname, "../../..");

async function run(settings: Settings): Promise<void> {
  const { port, host, databaseUrl, file, operator, publicOrigins, behindProxy, weatherUrl } = settings;
  const store = await openStore({ databaseUrl, file });
  try {
    const own = store.forOperator(operator);
    if (settings.demo !== "none" && (await own.heads()).length === 0) {
      // Loaded only when it is needed: it brings everything that reads a book.
      const { seedDemo } = await import("./demo/seed-demo.ts");
      const added = await seedDemo({
        own,
        operator,
        books: join(ROOT, "books"),
        now_ms: Date.now(),
        zone_min: -new Date().getTimezoneOffset(),
        past: settings.demo,
      });
      if (added.length > 0) console.log(`Put in the demo aircraft ${added.join(", ")}.`);
    }
    const server = await startServer({
      store,
      operator,
      port,
      host,
      appDirectory: join(ROOT, "packages/app/dist"),
      allowedOrigins: publicOrigins,
      behindProxy,
      weather: weatherService(weatherUrl),
    });
    stopOnSignal(async () => {
      await server.close();
      await store.close();
    });
    if (!isLoopback(host) && publicOrigins.length === 0) {
      console.log(
        `It listens for others on ${host}, but answers only to this machine's own names: set PUBLIC_ORIGIN to the address that they use.`,
      );
    }
    const kept = databaseUrl === undefined ? resolve(file) : "the PostgreSQL database of DATABASE_URL";
    console.log(`Witnessmark is at ${server.url}\nEverything is kept in ${kept}. Stop it with Ctrl+C.`);
  } catch (error) {
    await store.close();
    throw error;
  }
}

const isLoopback = (host: string) => host === "localhost" || host === "::1" || host.startsWith("127.");

/** The first signal ends it in order; a second one at once. */
function stopOnSignal(stop: () => Promise<void>): void {
  let stopping = false;
  for (const signal of ["SIGINT", "SIGTERM"] as const) {
    process.on(signal, () => {
      if (stopping) process.exit(1);
      stopping = true;
      stop().then(
        () => process.exit(0),
        (error) => fail(error),
      );
    });
  }
}

function fail(error: unknown): void {
  console.error(error instanceof Error ? error.message : error);
  process.exit(1);
}

try {
  const settings = readSettings(process.argv.slice(2), process.env);
  if (settings === null) console.log(USAGE);
  else await run(settings);
} catch (error) {
  fail(error);
}
