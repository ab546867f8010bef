import { createHash } from "node:crypto";
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { VitePWA } from "vite-plugin-pwa";
import { firstPaint } from "./src/first-paint/first-paint.ts";

const packages = fileURLToPath(new URL("..", import.meta.url));

/**
 * A stamp of the code that decides how a book and a state look in memory. What the phone caches under another stamp
 * is thrown away, so that nobody has to remember to count a version up.
 */
function cacheShape(): string {
  const hash = createHash("sha256");
  for (const name of ["engine", "book", "ledger"]) {
    const folder = join(packages, name, "src");
    const files = readdirSync(folder, { recursive: true, encoding: "utf8" })
      .filter((file) => file.endsWith(".ts") && !file.endsWith(".test.ts"))
      .sort();
    for (const file of files) hash.update(file).update(readFileSync(join(folder, file)));
  }
  return hash.digest("hex").slice(0, 16);
}

/** Our own packages do nothing when they are merely imported, so what a page does not use is left out of it. */
const moduleSideEffects = (id: string): boolean =>
  !/[\\/]packages[\\/](?!app[\\/])[^\\/]+[\\/]src[\\/]/.test(id);

export default defineConfig(({ command }) => ({
  root: fileURLToPath(new URL(".", import.meta.url)),
  // In development the code changes under a running page: cache nothing from one start to the next.
  define: { __CACHE_SHAPE__: JSON.stringify(command === "build" ? cacheShape() : `dev-${Date.now()}`) },
  resolve: {
    alias: { "node:module": fileURLToPath(new URL("src/fit/no-node-module.ts", import.meta.url)) },
  },
  plugins: [
    react(),
    firstPaint(),
    VitePWA({
      // The pilot decides when a new version is taken up; nothing reloads under a walk.
      registerType: "prompt",
      // src/sw/updates.ts registers it: no script is put into the page, so that script-src 'self' holds.
      injectRegister: false,
      // The glob below already finds them.
      includeManifestIcons: false,
      manifest: {
        id: "/",
        name: "Witnessmark",
        short_name: "Witnessmark",
        description:
          "Walk round an aircraft before flight, miss nothing, and sign a decision that others can trust.",
        lang: "en",
        dir: "ltr",
        start_url: "/",
        scope: "/",
        display: "standalone",
        theme_color: "#FBFCF9",
        background_color: "#FBFCF9",
        categories: ["utilities", "productivity"],
        icons: [
          { src: "/icon-192.png", sizes: "192x192", type: "image/png", purpose: "any" },
          { src: "/icon-512.png", sizes: "512x512", type: "image/png", purpose: "any" },
          { src: "/icon-maskable-512.png", sizes: "512x512", type: "image/png", purpose: "maskable" },
          { src: "/icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" },
        ],
      },
      workbox: {
        globPatterns: ["**/*.{js,css,html,woff2,svg,png,wasm}"],
        maximumFileSizeToCacheInBytes: 8_000_000,
        navigateFallback: "/index.html",
        navigateFallbackDenylist: [/^\/api\//],
        // The first visit is served by the worker at once, so that its lazy parts are there without a connection.
        // A later version still waits: it only starts when it is told to.
        clientsClaim: true,
        skipWaiting: false,
        cleanupOutdatedCaches: true,
        sourcemap: false,
      },
    }),
  ],
  build: {
    outDir: "dist",
    emptyOutDir: true,
    target: "es2022",
    // Type stays out of the style sheet: a font in data: form would be refused by the server's policy.
    assetsInlineLimit: 0,
    // How long plugins take says nothing but how busy the machine is.
    rolldownOptions: { treeshake: { moduleSideEffects }, checks: { pluginTimings: false } },
  },
  worker: {
    format: "es",
    rolldownOptions: { treeshake: { moduleSideEffects }, checks: { pluginTimings: false } },
  },
  server: {
    host: "127.0.0.1",
    port: 4461,
    proxy: {
      // The server checks Host and Origin; both are its own here.
      "/api": {
        target: "http://127.0.0.1:4460",
        changeOrigin: true,
        headers: { origin: "http://127.0.0.1:4460" },
      },
    },
  },
}));
