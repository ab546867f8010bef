import { ended } from "@witnessmark/sheet";
import { capital } from "../../words/capital.ts";

/** With a capital, and with its stop. */
export const sentence = (words: string): string => ended(capital(words));
