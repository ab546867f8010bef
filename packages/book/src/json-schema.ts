import { z } from "zod";
import { BookSource } from "./schema/book-source.ts";

/**
 * The schema of a book as it is written, for editors that complete and check YAML while one types. It knows the shape
 * only; what must hold between the parts, `readBook` knows.
 */
export function bookJsonSchema(): Readonly<Record<string, unknown>> {
  return {
    ...z.toJSONSchema(BookSource, { io: "input", target: "draft-07" }), // the draft that editors read
    title: "Witnessmark book",
    description: "The description of one aircraft. Units stand in the values: `5.20 bar`, `15 °C`, `24 h`.",
  };
}
