import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import type { HtmlTagDescriptor, Plugin } from "vite";
import { FirstPage } from "../screens/first-run/first-page.tsx";
import { wearBeforePaint } from "./wear-before-paint.ts";

const PLACE = '<div id="root"></div>';
/** The one file of type that the first page is written in. */
const FIRST_TYPE = /-latin-wght-normal-[^/]+\.woff2$/;

/**
 * Makes index.html worth looking at before any script has run: the first page's words, its theme, its type, and the
 * parts of the program asked for at once but after what is seen.
 */
export function firstPaint(): Plugin {
  return {
    name: "witnessmark:first-paint",
    transformIndexHtml: {
      order: "post",
      handler(html, { bundle }) {
        if (!html.includes(PLACE)) {
          throw new Error(
            `first paint: expected ${PLACE} in index.html, found none; is it written another way now?`,
          );
        }
        const words = renderToStaticMarkup(createElement(FirstPage));
        const page = html
          .replace(PLACE, `<div id="root"><div class="before-app">${words}</div></div>`)
          .replaceAll(/<(script type="module"|link rel="modulepreload")/g, '<$1 fetchpriority="low"');
        return { html: page, tags: bundle === undefined ? [] : tagsOf(Object.keys(bundle)) };
      },
    },
    generateBundle() {
      this.emitFile({ type: "asset", name: "before-paint.js", source: `(${wearBeforePaint})();\n` });
    },
  };
}

function tagsOf(files: readonly string[]): HtmlTagDescriptor[] {
  const one = (pattern: RegExp): string => {
    const [found, ...others] = files.filter((file) => pattern.test(file));
    if (found === undefined || others.length > 0) {
      throw new Error(
        `first paint: expected one file like ${pattern} in the build, found ${others.length + (found === undefined ? 0 : 1)}`,
      );
    }
    return `/${found}`;
  };
  return [
    ...[/scheduler-[^/]+\.js$/, /draw-app-[^/]+\.js$/].map(
      (part): HtmlTagDescriptor => ({
        tag: "link",
        attrs: { rel: "modulepreload", fetchpriority: "low", crossorigin: "", href: one(part) },
        injectTo: "head",
      }),
    ),
    { tag: "script", attrs: { src: one(/before-paint[^/]*\.js$/) }, injectTo: "head" },
    {
      tag: "link",
      attrs: { rel: "preload", as: "font", type: "font/woff2", crossorigin: "", href: one(FIRST_TYPE) },
      injectTo: "head",
    },
  ];
}
