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
export const rowIn = async (transaction: Writing, aircraft: string): Promise<AircraftRow> =>
  (await transaction.objectStore("aircraft").get(aircraft)) ?? newAircraftRow(aircraft);

/** As `rowIn`; `undefined` before the first run is done. */
export const deviceIn = async (transaction: Writing): Promise<DeviceRow | undefined> =>
  // Under this name the settings hold a device.
  (await transaction.objectStore("settings").get("device")) as DeviceRow | undefined;

/** Whether events made after the one row still follow after the other. */
export const isSamePlace = (a: AircraftRow, b: AircraftRow): boolean =>
  a.chain?.device === b.chain?.device &&
  (a.chain?.hash ?? null) === (b.chain?.hash ?? null) &&
  a.hlc === b.hlc;
