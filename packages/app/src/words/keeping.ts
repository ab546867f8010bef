import type { KeepStatus } from "../keep/contract.ts";
import { figure } from "./figures.ts";

/** What the Apron says of everything kept here. */
export function keptOfAll(status: Pick<KeepStatus, "toSend" | "photosToSend" | "server">): string {
  const left = status.toSend + status.photosToSend;
  if (left > 0) return `All kept, ${figure(left)} to send`;
  return status.server === "never-reached" ? "All kept here" : "All on the server";
}

/** What an aircraft's title block says: kept here and on the server are never one word. */
export function keptOfOne(toSend: number, device: string): string {
  if (toSend === 0) return "On the server";
  return device === "phone" ? "Kept on phone" : `Kept on this ${device}`;
}
