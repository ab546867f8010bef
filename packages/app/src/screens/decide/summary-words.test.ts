import { expect, it } from "vitest";
import { asksText } from "./summary-words.ts";

const counts = (stop: number, caution: number, open: number) => ({ stop, caution, open, clear: 9 });

it.each([
  [counts(0, 0, 0), ""],
  [counts(1, 0, 2), "asks why, for 1 stop and 2 open"],
  [counts(2, 1, 1), "asks why, for 2 stops, 1 caution and 1 open"],
  [counts(0, 3, 0), "asks why, for 3 cautions"],
])("says of %j what going asks for", (given, text) => {
  expect(asksText(given)).toBe(text);
});
