import "@fontsource-variable/atkinson-hyperlegible-next";
import "../theme/tokens.css";
import "../theme/base.css";
import "../theme/sheet.css";
import { newId } from "@witnessmark/ledger";
import { createRoot } from "react-dom/client";
import { App } from "../app.tsx";
import { NotKept } from "../keep/contract.ts";
import { reachServer } from "../keep/exchange/reach-server.ts";
import { openKeep } from "../keep/keep.ts";
import { KeepProvider } from "../keep/react.ts";
import { wearPreferences } from "../preferences/preferences.ts";
import { type ScenarioClock, walkThrough } from "./scenario.ts";

/**
 * A page for looking at the screens with a morning already under way. It is not part of the app: the build begins at
 * `index.html` and never comes here. `?scenario=none` begins with an empty storage.
 */
const books = import.meta.glob<string>("../../../../books/*.yaml", { query: "?raw", import: "default" });

/** The morning of the scenario; `?today` has it begin 40 minutes ago by this device's own clock. */
const isToday = new URLSearchParams(window.location.search).has("today");
const MORNING_ms = isToday ? Date.now() - 40 * 60_000 : new Date("2026-11-12T07:20:00").getTime();
const MONDAY_ms = isToday ? MORNING_ms - 3 * 86_400_000 : new Date("2026-11-09T08:05:00").getTime();

async function seed(clock: ScenarioClock, keep: Awaited<ReturnType<typeof openKeep>>): Promise<void> {
  clock.at_ms = MONDAY_ms - 3_600_000;
  await keep.introduce({ name: "MK", role: "pilot" });
  for (const load of Object.values(books)) {
    const result = await keep.adoptBook(await load(), "book.yaml");
    if ("faults" in result) console.error(result.faults[0]);
  }
  const cold = { value: 4, unit: "degC" } as const;
  const mild = { value: 11, unit: "degC" } as const;
  await walkThrough(keep, clock, "ZZ-SKR", {
    from_ms: MONDAY_ms,
    temperature: mild,
    told: { "main-tyre-pressure.right-main-tyre": { read: { value: 5.2, unit: "bar" } } },
    finish: true,
  });
  const query = new URLSearchParams(window.location.search);
  const until = query.get("until");
  await walkThrough(keep, clock, "ZZ-SKR", {
    from_ms: MORNING_ms,
    temperature: cold,
    ...(until === "end" ? {} : { until: until ?? "main-tyre-pressure.right-main-tyre" }),
    told: {
      "main-tyre-pressure.right-main-tyre": { read: { value: 5.0, unit: "bar" } },
      "wing-boot.right-wing-boot": {
        answer: "not-right",
        drafts: (walk) => [
          {
            type: "discrepancy.raised",
            body: {
              discrepancy: newId(),
              words: "Right boot is split",
              walk,
              check: "wing-boot.right-wing-boot",
              fault: "split",
              measured: { value: 38, unit: "mm" },
            },
          },
        ],
      },
    },
    finish: until === "end",
  });
  if (keep.snapshot().aircraft.has("ZZ-BRK")) {
    await walkThrough(keep, clock, "ZZ-BRK", {
      from_ms: MORNING_ms - 3_600_000,
      temperature: cold,
      told: {},
      finish: true,
    });
  }
}

/** A server that tells who it is and takes nothing: every entry stays "to send". */
const lonelyServer: typeof globalThis.fetch = async (input) => {
  const address = input instanceof Request ? input.url : String(input);
  if (address.endsWith("/api/aircraft")) {
    return Response.json({ epoch: "018f0000-0000-7000-8000-000000000001", aircraft: [] });
  }
  if (!address.endsWith("/api/about")) throw new TypeError("Failed to fetch");
  return Response.json({
    program: "witnessmark",
    version: "0.1.0",
    protocolVersion: 1,
    operator: "island-eye",
    epoch: "018f0000-0000-7000-8000-000000000001",
    now: new Date().toISOString(),
  });
};

async function begin(): Promise<void> {
  wearPreferences();
  const query = new URLSearchParams(window.location.search);
  const clock: ScenarioClock = { at_ms: Date.now() };
  let seeding = true;
  const keep = await openKeep({
    name: `scenario-${Date.now()}-${Math.random()}`,
    now_ms: () => (seeding ? clock.at_ms : Date.now()),
    automatic: false,
    server: reachServer(lonelyServer),
    liveSource: null,
  });
  await keep.exchange();
  if (query.get("scenario") !== "none") await seed(clock, keep);
  seeding = false;
  if (query.get("storage") === "full") {
    Object.assign(keep, {
      append: () =>
        Promise.reject(new NotKept("full", "Not kept. Free 2 MB on this phone, then answer again.")),
    });
  }
  const root = document.getElementById("root");
  if (root === null) throw new Error("dev: expected an element #root in the page, found none");
  createRoot(root).render(
    <KeepProvider keep={keep}>
      <App />
    </KeepProvider>,
  );
  document.documentElement.dataset["ready"] = "yes";
}

void begin();
