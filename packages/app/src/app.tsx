import { lazy, Suspense, useEffect } from "react";
import { known } from "./first-paint/known.ts";
import { Opening } from "./frame/opening.tsx";
import { Safe } from "./frame/safe.tsx";
import { useKeepSnapshot } from "./keep/react.ts";
import { FirstRun } from "./screens/first-run/first-run.tsx";

// everything that needs an aircraft comes in a part of its own: who is asked for the first time waits for none of it
const screens = () => import("./screens/screens.tsx");
const Screens = lazy(async () => ({ default: (await screens()).Screens }));

/** Fetches the screens while the storage opens, when they will be wanted. A part that fails comes when it is shown. */
export function fetchScreens(): void {
  if (known.get()) screens().catch(() => {});
}

/** The app: what the storage holds, and who holds the phone. */
export function App() {
  const snapshot = useKeepSnapshot();
  const isKnown = snapshot.person !== null;
  useEffect(() => {
    if (isKnown) known.set(true);
  }, [isKnown]);
  if (snapshot.phase === "opening") return <Opening />;
  if (snapshot.phase === "cannot-open") return <CannotOpen why={snapshot.openError} />;
  if (snapshot.person === null) return <FirstRun />;
  return (
    <Safe place={window.location.hash}>
      <Suspense fallback={<Opening />}>
        <Screens snapshot={snapshot} />
      </Suspense>
    </Safe>
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
