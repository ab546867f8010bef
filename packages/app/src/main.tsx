import "./no-eval.ts";
import "@fontsource-variable/atkinson-hyperlegible-next";
import "./theme/tokens.css";
import "./theme/base.css";
import "./theme/sheet.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./app.tsx";
import { startKeep } from "./keep/keep.ts";
import { KeepProvider } from "./keep/react.ts";
import { wearPreferences } from "./preferences/preferences.ts";

wearPreferences();

const root = document.getElementById("root");
if (root === null) throw new Error("main: expected an element #root in the page, found none");
createRoot(root).render(
  <StrictMode>
    <KeepProvider keep={startKeep()}>
      <App />
    </KeepProvider>
  </StrictMode>,
);
