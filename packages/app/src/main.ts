import "./no-eval.ts";
import "@fontsource-variable/atkinson-hyperlegible-next";
import "./theme/tokens.css";
import "./theme/base.css";
import "./theme/sheet.css";
import "./first-paint/first-paint.css";
import { startKeep } from "./keep/keep.ts";
import { wearPreferences } from "./preferences/preferences.ts";

wearPreferences();

const place = document.getElementById("root");
if (place === null) throw new Error("main: expected an element #root in the page, found none");
// what draws the page is read while the storage opens, in a turn of its own
const drawing = import("./draw-app.tsx");
const keep = startKeep();
void Promise.all([drawing, keep.opened]).then(([{ drawApp }]) => drawApp(place, keep));
