import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App, fetchScreens } from "./app.tsx";
import type { Keep } from "./keep/contract.ts";
import { KeepProvider } from "./keep/react.ts";

/** Draws the app in its place, over what index.html had there. */
export function drawApp(place: HTMLElement, keep: Keep): void {
  fetchScreens();
  createRoot(place).render(
    <StrictMode>
      <KeepProvider keep={keep}>
        <App />
      </KeepProvider>
    </StrictMode>,
  );
}
