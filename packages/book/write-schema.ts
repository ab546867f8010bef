import { writeFileSync } from "node:fs";
import { bookJsonSchema } from "./src/json-schema.ts";

// Run after every change of src/schema: node packages/book/write-schema.ts
writeFileSync(new URL("book.schema.json", import.meta.url), `${JSON.stringify(bookJsonSchema(), null, 2)}\n`);
