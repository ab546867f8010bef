import type { ChainEnd } from "@witnessmark/ledger";
import { type AircraftRow, type DeviceRow, newAircraftRow } from "../storage/schema.ts";
import type { Writing } from "../storage/strict-write.ts";

/** What the last look at the storage said of this phone and the aircraft. */
export interface ChainPlace {
  readonly device: DeviceRow;
  readonly row: AircraftRow;
}

/** This phone's last event on the aircraft under its present id. */
export function chainEnd(row: AircraftRow, device: DeviceRow): ChainEnd | null {
  if (row.chain === null || row.chain.device !== device.id) return null;
  return { deviceSeq: row.chain.deviceSeq, hash: row.chain.hash };
}

/** What the storage says now. */
export async function placeIn(transaction: Writing, { device, row }: ChainPlace): Promise<ChainPlace> {
  const [storedRow, storedDevice] = await Promise.all([
    transaction.objectStore("aircraft").get(row.aircraft),
    transaction.objectStore("settings").get("device"),
  ]);
  return {
    row: storedRow ?? newAircraftRow(row.aircraft),
    // Under this name the settings hold a device.
    device: (storedDevice as DeviceRow | undefined) ?? device,
  };
}

/** Whether events made at the one place still follow at the other. */
export const isSamePlace = (a: ChainPlace, b: ChainPlace): boolean =>
  a.device.id === b.device.id &&
  a.row.chain?.device === b.row.chain?.device &&
  (a.row.chain?.hash ?? null) === (b.row.chain?.hash ?? null) &&
  a.row.hlc === b.row.hlc;
