import { type DeviceKey, newDeviceKey, newId, tryDeviceKey } from "@witnessmark/ledger";
import { CannotOpen, type Connection, isDeadConnection } from "./storage/open-database.ts";
import type { DeviceRow } from "./storage/schema.ts";
import { writeStrictly } from "./storage/strict-write.ts";

/**
 * Who this phone is: read from its storage, or made at the first run. A key is relied on only after it was stored,
 * read back and tried; where that fails the phone says so on the record and signs nothing.
 */
export async function openDevice(connection: Connection, label: string): Promise<DeviceRow> {
  const stored = await readDevice(connection);
  if (stored !== null) return stored;

  const fresh: DeviceRow = { id: newId(), former: [], label, key: await newDeviceKey() };
  const why = await storeDevice(connection, fresh);
  const readBack = why === null ? await readDevice(connection) : null;
  if (readBack !== null) return readBack;

  const key: DeviceKey = {
    privateKey: null,
    key: { kind: "none", why: why ?? "the browser could not read back the key that it had stored" },
  };
  const keyless = { ...fresh, key };
  await connection.run((database) => keepDevice(database, keyless));
  return keyless;
}

/** The same phone under another id, for when its old one has been used elsewhere too. */
export const underNewId = (device: DeviceRow): DeviceRow => ({
  ...device,
  id: newId(),
  former: [...device.former, device.id],
});

/** `null` when there is none, or when its key no longer signs. */
async function readDevice(connection: Connection): Promise<DeviceRow | null> {
  let row: DeviceRow | undefined;
  try {
    // The settings store holds values of several kinds; under this name it is a device.
    row = (await connection.run((database) => database.get("settings", "device"))) as DeviceRow | undefined;
  } catch (error) {
    // Some browsers fail to read back a key that they have stored. Anything else is trouble with the storage itself.
    if (error instanceof CannotOpen || isDeadConnection(error)) throw error;
    return null;
  }
  if (row === undefined) return null;
  if (row.key.privateKey === null) return row;
  const tried = await tryDeviceKey(row.key.privateKey, row.key.key.publicKey);
  return tried.privateKey === null ? null : row;
}

/** @returns why the browser would not store the key, or `null` */
async function storeDevice(connection: Connection, device: DeviceRow): Promise<string | null> {
  try {
    await connection.run((database) => keepDevice(database, device));
    return null;
  } catch (error) {
    if (error instanceof DOMException && error.name === "DataCloneError")
      return `${error.name}: ${error.message}`;
    throw error;
  }
}

const keepDevice = (
  database: Parameters<Parameters<Connection["run"]>[0]>[0],
  device: DeviceRow,
): Promise<void> =>
  writeStrictly(database, ["settings"], async (transaction) => {
    await transaction.objectStore("settings").put(device, "device");
  });

/** What the record calls this phone: its kind, nothing that tells one person from another. */
export function deviceLabel(userAgent: string): string {
  const kinds: readonly [RegExp, string][] = [
    [/iPad/, "iPad"],
    [/iPhone/, "iPhone"],
    [/Android.*Mobile/, "Android phone"],
    [/Android/, "Android tablet"],
    [/Windows/, "Windows computer"],
    [/Mac OS X|Macintosh/, "Mac"],
    [/CrOS/, "Chromebook"],
    [/Linux/, "Linux computer"],
  ];
  return kinds.find(([pattern]) => pattern.test(userAgent))?.[1] ?? "Device";
}
