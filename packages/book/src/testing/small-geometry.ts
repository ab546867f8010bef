import { parse } from "yaml";
import { BookSource } from "../schema/book-source.ts";
import { smallBookText } from "./small-book.ts";

/** The shape of the small aircraft: every drawn thing is on it. */
export const smallGeometry = BookSource.parse(parse(smallBookText)).geometry;
