import type { HappeningKind } from "@witnessmark/book";
import { sentence } from "./count-words.ts";

const WORDS: Readonly<Record<HappeningKind, string>> = {
  fuelled: "fuelled",
  unattended: "left unattended",
  rain: "rained on",
  frost: "frosted on",
  maintenance: "worked on",
  flown: "flown",
  towed: "towed",
  loaded: "loaded",
};

/** What has happened to the aircraft: `left unattended`. */
export const happeningWords = (kind: HappeningKind): string => WORDS[kind];

/** The same at the start of a sentence: `Left unattended`. */
export const happened = (kind: HappeningKind): string => sentence(WORDS[kind]);
