import { useEffect, useMemo } from "react";
import { useFlight } from "../flight/flight-in-hand.ts";
import { useFlightKeeping } from "../flight/use-flight-keeping.ts";
import type { OpenAircraft } from "../frame/open-aircraft.ts";
import { PlainTitle } from "../frame/title-block.tsx";
import type { AircraftEntry, KeepSnapshot } from "../keep/contract.ts";
import { useKeep } from "../keep/react.ts";
import { useMinute } from "../preferences/clock.ts";
import { href, type Route } from "../routes/route.ts";
import { useRoute } from "../routes/use-route.ts";
import { assessed } from "../walk/assessed.ts";
import { openWalk } from "../walk/open-walk.ts";
import { useBookPictures } from "../walk/use-book-pictures.ts";
import { usePresence } from "../walk/use-presence.ts";
import { keptOfAll } from "../words/keeping.ts";
import { Apron } from "./apron/apron.tsx";
import { partOf } from "./part.ts";
import { StartWalk } from "./walk/start-walk.tsx";
import { WalkScreen } from "./walk/walk-screen.tsx";

// what is not wanted at once comes in parts of its own, fetched when the page is at rest so that no screen waits for it
const parts = {
  decide: partOf(async () => (await import("./decide/decide-screen.tsx")).DecideScreen),
  left: partOf(async () => (await import("./walk/what-is-left.tsx")).WhatIsLeft),
  order: partOf(async () => (await import("./walk/order-screen.tsx")).OrderScreen),
  happened: partOf(async () => (await import("./walk/happened.tsx")).Happened),
  after: partOf(async () => (await import("./after/after-screen.tsx")).AfterScreen),
  aircraft: partOf(async () => (await import("./aircraft/aircraft-screen.tsx")).AircraftScreen),
  book: partOf(async () => (await import("./book/book-screen.tsx")).BookScreen),
  bookTrouble: partOf(async () => (await import("./aircraft/book-trouble.tsx")).BookTrouble),
  sheet: partOf(async () => (await import("./sheet/decision-sheet.tsx")).DecisionSheet),
  settings: partOf(async () => (await import("./settings/settings.tsx")).Settings),
  add: partOf(async () => (await import("./add/add-aircraft.tsx")).AddAircraft),
  begin: partOf(async () => (await import("./begin/begin-screen.tsx")).BeginScreen),
  chart: partOf(async () => (await import("./chart/chart-screen.tsx")).ChartScreen),
  load: partOf(async () => (await import("./load/load-screen.tsx")).LoadScreen),
  conditions: partOf(async () => (await import("./conditions/conditions-screen.tsx")).ConditionsScreen),
  record: partOf(async () => (await import("./record/record-screen.tsx")).RecordScreen),
  discrepancy: partOf(async () => (await import("./record/discrepancy-screen.tsx")).DiscrepancyScreen),
  timed: partOf(async () => (await import("./record/timed-screen.tsx")).TimedScreen),
  point: partOf(async () => (await import("./record/point-screen.tsx")).PointScreen),
  trend: partOf(async () => (await import("./record/trend-screen.tsx")).TrendScreen),
  bringIn: partOf(async () => (await import("./record/import/import-screen.tsx")).ImportScreen),
  paper: partOf(async () => (await import("./paper/paper-screen.tsx")).PaperScreen),
  typedIn: partOf(async () => (await import("./paper/typed-in-screen.tsx")).TypedInScreen),
  learn: partOf(async () => (await import("./learn/learn-screen.tsx")).LearnScreen),
  study: partOf(async () => (await import("./learn/study-screen.tsx")).StudyScreen),
  calculators: partOf(async () => (await import("./calculators/calculators.tsx")).Calculators),
  rules: partOf(async () => (await import("./rules/rules-screen.tsx")).RulesScreen),
  archived: partOf(async () => (await import("./apron/archived.tsx")).Archived),
};
const DecideScreen = parts.decide.Screen;
const WhatIsLeft = parts.left.Screen;
const OrderScreen = parts.order.Screen;
const Happened = parts.happened.Screen;
const AfterScreen = parts.after.Screen;
const AircraftScreen = parts.aircraft.Screen;
const BookScreen = parts.book.Screen;
const BookTrouble = parts.bookTrouble.Screen;
const DecisionSheet = parts.sheet.Screen;
const Settings = parts.settings.Screen;
const AddAircraft = parts.add.Screen;
const BeginScreen = parts.begin.Screen;
const ChartScreen = parts.chart.Screen;
const LoadScreen = parts.load.Screen;
const ConditionsScreen = parts.conditions.Screen;
const RecordScreen = parts.record.Screen;
const DiscrepancyScreen = parts.discrepancy.Screen;
const TimedScreen = parts.timed.Screen;
const PointScreen = parts.point.Screen;
const TrendScreen = parts.trend.Screen;
const ImportScreen = parts.bringIn.Screen;
const PaperScreen = parts.paper.Screen;
const TypedInScreen = parts.typedIn.Screen;
const LearnScreen = parts.learn.Screen;
const StudyScreen = parts.study.Screen;
const Calculators = parts.calculators.Screen;
const RulesScreen = parts.rules.Screen;
const Archived = parts.archived.Screen;

/** Fetches the parts one after another while nothing else is to be done; a part that fails comes when it is asked for. */
function useParts(): void {
  useEffect(() => {
    let left = false;
    const fetchAll = async () => {
      for (const part of Object.values(parts)) {
        if (left) return;
        try {
          await part.fetch();
        } catch {
          // out of reach for now: it is asked for again, and the screen says so if it fails then
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

/** Every screen of the app, by where one is. */
export function Screens({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const route = useRoute();
  useParts();
  useBookPictures(snapshot);
  return <Screen snapshot={snapshot} route={route} />;
}

function Screen({ snapshot, route }: { readonly snapshot: KeepSnapshot; readonly route: Route }) {
  switch (route.at) {
    case "apron":
      return <Apron snapshot={snapshot} />;
    case "archived":
      return <Archived snapshot={snapshot} />;
    case "add":
      return <AddAircraft snapshot={snapshot} />;
    case "begin":
      return <BeginScreen snapshot={snapshot} />;
    case "chart":
      return <ChartScreen snapshot={snapshot} />;
    case "settings":
      return <Settings snapshot={snapshot} />;
    case "calculators":
      return <Calculators snapshot={snapshot} quantity={route.quantity} />;
    case "rules":
      return <RulesScreen snapshot={snapshot} question={route.question} />;
    case "unknown":
      return <Nowhere snapshot={snapshot} what={`There is nothing at “${route.address}”.`} />;
    default:
      return <OfAircraft snapshot={snapshot} route={route} />;
  }
}

type AircraftRoute = Extract<Route, { readonly registration: string }>;

function OfAircraft({ snapshot, route }: { readonly snapshot: KeepSnapshot; readonly route: AircraftRoute }) {
  const entry = snapshot.aircraft.get(route.registration);
  if (route.at === "book") {
    const { registration, page, item } = route;
    return (
      <BookScreen
        key={registration}
        snapshot={snapshot}
        entry={entry}
        registration={registration}
        page={page}
        item={item}
      />
    );
  }
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
  readonly route: Exclude<AircraftRoute, { readonly at: "book" }>;
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
    case "order":
      return <OrderScreen open={open} />;
    case "gear":
      return <WhatIsLeft open={open} gear />;
    case "happened":
      return <Happened open={open} />;
    case "after":
      return <AfterScreen open={open} />;
    case "load":
      return <LoadScreen open={open} />;
    case "conditions":
      return <ConditionsScreen open={open} />;
    case "record":
      return <RecordScreen open={open} part={route.part} />;
    case "discrepancy":
      return <DiscrepancyScreen key={route.discrepancy} open={open} id={route.discrepancy} />;
    case "timed":
      return <TimedScreen key={route.item} open={open} id={route.item} />;
    case "point":
      return <PointScreen open={open} id={route.point} />;
    case "trend":
      return <TrendScreen key={route.trend} open={open} id={route.trend} />;
    case "paper":
      return <PaperScreen open={open} />;
    case "typed-in":
      return <TypedInScreen open={open} />;
    case "learn":
      return <LearnScreen open={open} />;
    case "study":
      return <StudyScreen open={open} />;
    case "import":
      return <ImportScreen open={open} />;
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
