import { useLayoutEffect } from "react";

const NAMES = ["--page-left", "--page-right"] as const;

/** A text as CSS writes a string; what would end it or the line stands escaped. */
export const cssString = (text: string): string =>
  `"${text.replace(/["\\]/g, "\\$&").replace(/[\n\r\f]/g, " ")}"`;

/**
 * What stands over every printed page, at the left and at the right: a loose page still says whose it is. The style
 * sheet's `@page` reads both from the root element, the only one whose properties it sees.
 */
export function usePageMargins(left: string, right: string): void {
  useLayoutEffect(() => {
    const { style } = document.documentElement;
    for (const [index, text] of [left, right].entries())
      style.setProperty(NAMES[index] ?? "", cssString(text));
    return () => {
      for (const name of NAMES) style.removeProperty(name);
    };
  }, [left, right]);
}
