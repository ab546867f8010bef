import "./no-eval.ts";
import "@fontsource-variable/atkinson-hyperlegible-next";
import "./theme/tokens.css";
import "./theme/base.css";
import "./theme/sheet.css";
import "./first-paint/first-paint.css";
import { startKeep } from "./keep/keep.ts";
import { wearPreferences } from "./preferences/preferences.ts";
import { atRest } from "./sw/at-rest.ts";

wearPreferences();

const place = document.getElementById("root");
if (place === null) throw new Error("main: expected an element #root in the page, found none");
// what draws the page is read while the storage opens, in turns of its own: first what it takes its turns by, a small
// part that would otherwise be made in the midst of reading the large one
const drawing = import("scheduler").then(() => import("./draw-app.tsx"));
const drawn = Promise.withResolvers<void>();
const keep = startKeep({ afterFirstPage: (work) => void drawn.promise.then(atRest).then(work) });
void Promise.all([drawing, keep.opened]).then(([{ drawApp }]) => {
  drawApp(place, keep);
  drawn.resolve();
});
