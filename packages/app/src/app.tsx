import { lazy, Suspense, useEffect, useMemo } from "react";
import { useFlight } from "./flight/flight-in-hand.ts";
import { useFlightKeeping } from "./flight/use-flight-keeping.ts";
import type { OpenAircraft } from "./frame/open-aircraft.ts";
import { Safe } from "./frame/safe.tsx";
import { PlainTitle } from "./frame/title-block.tsx";
import type { AircraftEntry, KeepSnapshot } from "./keep/contract.ts";
import { useKeep, useKeepSnapshot } from "./keep/react.ts";
import { useMinute } from "./preferences/clock.ts";
import { href, type Route } from "./routes/route.ts";
import { useRoute } from "./routes/use-route.ts";
import { Apron } from "./screens/apron/apron.tsx";
import { FirstRun } from "./screens/first-run/first-run.tsx";
import { StartWalk } from "./screens/walk/start-walk.tsx";
import { WalkScreen } from "./screens/walk/walk-screen.tsx";
import { assessed } from "./walk/assessed.ts";
import { openWalk } from "./walk/open-walk.ts";
import { usePresence } from "./walk/use-presence.ts";
import { keptOfAll } from "./words/keeping.ts";

// what is not wanted at once comes in parts of its own, fetched when the page is at rest so that no screen waits for it
const parts = {
  decide: () => import("./screens/decide/decide-screen.tsx"),
  left: () => import("./screens/walk/what-is-left.tsx"),
  happened: () => import("./screens/walk/happened.tsx"),
  aircraft: () => import("./screens/aircraft/aircraft-screen.tsx"),
  bookTrouble: () => import("./screens/aircraft/book-trouble.tsx"),
  sheet: () => import("./screens/sheet/decision-sheet.tsx"),
  settings: () => import("./screens/settings/settings.tsx"),
  add: () => import("./screens/add/add-aircraft.tsx"),
  archived: () => import("./screens/apron/archived.tsx"),
  load: () => import("./screens/load/load-screen.tsx"),
  conditions: () => import("./screens/conditions/conditions-screen.tsx"),
  calculators: () => import("./screens/calculators/calculators.tsx"),
};
const DecideScreen = lazy(async () => ({ default: (await parts.decide()).DecideScreen }));
const WhatIsLeft = lazy(async () => ({ default: (await parts.left()).WhatIsLeft }));
const Happened = lazy(async () => ({ default: (await parts.happened()).Happened }));
const AircraftScreen = lazy(async () => ({ default: (await parts.aircraft()).AircraftScreen }));
const BookTrouble = lazy(async () => ({ default: (await parts.bookTrouble()).BookTrouble }));
const DecisionSheet = lazy(async () => ({ default: (await parts.sheet()).DecisionSheet }));
const Settings = lazy(async () => ({ default: (await parts.settings()).Settings }));
const AddAircraft = lazy(async () => ({ default: (await parts.add()).AddAircraft }));
const LoadScreen = lazy(async () => ({ default: (await parts.load()).LoadScreen }));
const ConditionsScreen = lazy(async () => ({ default: (await parts.conditions()).ConditionsScreen }));
const Calculators = lazy(async () => ({ default: (await parts.calculators()).Calculators }));
const Archived = lazy(async () => ({ default: (await parts.archived()).Archived }));

/** Fetches the parts one after another while nothing else is to be done; a part that fails comes when it is asked for. */
function useParts(): void {
  useEffect(() => {
    let left = false;
    const fetchAll = async () => {
      for (const part of Object.values(parts)) {
        if (left) return;
        try {
          await part();
        } catch {
          // out of reach for now: `lazy` asks again, and the screen says so if it fails then
          return;
        }
      }
    };
    const timer = setTimeout(() => void fetchAll(), 1500);
    return () => {
      left = true;
      clearTimeout(timer);
    };
  }, []);
}

/** The app: what the storage holds, and where one is. */
export function App() {
  const snapshot = useKeepSnapshot();
  const route = useRoute();
  useParts();
  if (snapshot.phase === "opening") return <Opening />;
  if (snapshot.phase === "cannot-open") return <CannotOpen why={snapshot.openError} />;
  if (snapshot.person === null) return <FirstRun />;
  return (
    <Safe place={window.location.hash}>
      <Suspense fallback={<Opening />}>
        <Screen snapshot={snapshot} route={route} />
      </Suspense>
    </Safe>
  );
}

function Screen({ snapshot, route }: { readonly snapshot: KeepSnapshot; readonly route: Route }) {
  switch (route.at) {
    case "apron":
      return <Apron snapshot={snapshot} />;
    case "archived":
      return <Archived snapshot={snapshot} />;
    case "add":
      return <AddAircraft snapshot={snapshot} />;
    case "settings":
      return <Settings snapshot={snapshot} />;
    case "calculators":
      return <Calculators snapshot={snapshot} quantity={route.quantity} />;
    case "unknown":
      return <Nowhere snapshot={snapshot} what={`There is nothing at “${route.address}”.`} />;
    default:
      return <OfAircraft snapshot={snapshot} route={route} />;
  }
}

type AircraftRoute = Extract<Route, { readonly registration: string }>;

function OfAircraft({ snapshot, route }: { readonly snapshot: KeepSnapshot; readonly route: AircraftRoute }) {
  const entry = snapshot.aircraft.get(route.registration);
  if (entry === undefined) {
    return <Nowhere snapshot={snapshot} what={`${route.registration} is not kept here.`} />;
  }
  if (entry.book === null) return <BookTrouble snapshot={snapshot} entry={entry} />;
  return <WithBook snapshot={snapshot} entry={entry} book={entry.book} route={route} />;
}

interface WithBookProps {
  readonly snapshot: KeepSnapshot;
  readonly entry: AircraftEntry;
  readonly book: NonNullable<AircraftEntry["book"]>;
  readonly route: AircraftRoute;
}

function WithBook({ snapshot, entry, book, route }: WithBookProps) {
  const keep = useKeep();
  const minute = useMinute();
  const { registration, state } = entry;
  const { person } = snapshot;
  const flight = useFlight(registration, state, minute * 60_000);
  const flightTrouble = useFlightKeeping(keep, registration, state, flight);
  const assessment = assessed(book, state, flight, minute);
  usePresence(keep, registration, openWalk(state)?.id);
  const open = useMemo(
    (): OpenAircraft | null =>
      person === null
        ? null
        : { registration, book, entry, state, flight, flightTrouble, assessment, person, snapshot },
    [registration, book, entry, state, flight, flightTrouble, assessment, person, snapshot],
  );
  if (open === null) return null;
  switch (route.at) {
    case "walk":
      return <WalkScreen open={open} step={route.step} />;
    case "start":
      return <StartWalk open={open} />;
    case "left":
      return <WhatIsLeft open={open} gear={false} />;
    case "gear":
      return <WhatIsLeft open={open} gear />;
    case "happened":
      return <Happened open={open} />;
    case "load":
      return <LoadScreen open={open} />;
    case "conditions":
      return <ConditionsScreen open={open} />;
    case "decide":
      return <DecideScreen open={open} />;
    case "decision":
      return <DecisionSheet open={open} decisionId={route.decision} />;
    case "aircraft":
      return <AircraftScreen open={open} check={route.check} />;
    default:
      return route satisfies never;
  }
}

function Opening() {
  return (
    <div className="frame">
      <main className="page" aria-busy="true">
        <p className="out-of-sight" role="status">
          Opening what is kept here
        </p>
      </main>
    </div>
  );
}

/** The storage cannot be opened: nothing else would be true. */
function CannotOpen({ why }: { readonly why: string | null }) {
  useEffect(() => {
    document.title = "Cannot open, Witnessmark";
  }, []);
  return (
    <div className="frame">
      <main className="page cannot-open">
        <h1>What is kept here cannot be opened</h1>
        <p className="trouble" role="alert">
          {why ?? "The browser gave no reason."}
        </p>
        <p>
          Nothing was lost by this. Nothing new can be kept until it opens, so the walk cannot go on here.
        </p>
        <button type="button" className="button filled tall full" onClick={() => window.location.reload()}>
          Try again
        </button>
      </main>
    </div>
  );
}

function Nowhere({ snapshot, what }: { readonly snapshot: KeepSnapshot; readonly what: string }) {
  return (
    <div className="frame">
      <PlainTitle title="Not here" kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      <main className="page">
        <section>
          <p>{what}</p>
          <a className="button filled tall full" href={href({ at: "apron" })}>
            Back to the Apron
          </a>
        </section>
      </main>
    </div>
  );
}
