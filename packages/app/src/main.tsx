import "./no-eval.ts";
import "@fontsource-variable/atkinson-hyperlegible-next";
import "./theme/tokens.css";
import "./theme/base.css";
import "./theme/sheet.css";
import "./first-paint/first-paint.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App, fetchScreens } from "./app.tsx";
import { startKeep } from "./keep/keep.ts";
import { KeepProvider } from "./keep/react.ts";
import { wearPreferences } from "./preferences/preferences.ts";

wearPreferences();

const found = document.getElementById("root");
if (found === null) throw new Error("main: expected an element #root in the page, found none");
const root = createRoot(found);
const keep = startKeep();
fetchScreens();
// until the storage is open the page stands as index.html has it
void keep.opened.then(() =>
  root.render(
    <StrictMode>
      <KeepProvider keep={keep}>
        <App />
      </KeepProvider>
    </StrictMode>,
  ),
);
