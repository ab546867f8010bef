import type { Learned, PhoneState } from "./phone.ts";
import { readPhone, UNKNOWN_PHONE } from "./phone.ts";
import { CannotOpen, type Connection } from "./storage/open-database.ts";
import type { DeviceRow, Settings } from "./storage/schema.ts";

/** What holds for the phone as a whole, as far as it is known now. */
export interface PhoneInHand {
  now(): PhoneState;
  /** Who this phone is. @throws {CannotOpen} before the storage was read */
  device(): DeviceRow;
  isDevice(device: DeviceRow): void;
  /** Reads it again from the storage. */
  refresh(): Promise<void>;
  /** Takes in what is now known of the phone. Never fails: what could not be written is measured again next time. */
  learn(learned: Learned): Promise<void>;
}

/** @param on.written told when the storage has something new of it, for the other tabs */
export function makePhoneInHand(
  connection: Connection,
  on: {
    readonly changed: () => void;
    readonly written: () => void;
    readonly report: (error: unknown) => void;
  },
): PhoneInHand {
  let phone: PhoneState = UNKNOWN_PHONE;

  async function writeSettings(settings: Partial<Settings>): Promise<void> {
    const names = Object.keys(settings) as (keyof Settings)[]; // the keys of a part of Settings
    if (names.length === 0) return;
    await connection.run(async (database) => {
      const transaction = database.transaction("settings", "readwrite");
      for (const name of names) {
        const value = settings[name];
        if (value !== undefined) await transaction.store.put(value, name);
      }
      await transaction.done;
    });
    on.written();
  }

  return {
    now: () => phone,
    device() {
      if (phone.device === null) throw new CannotOpen("The storage of this phone is not open yet.");
      return phone.device;
    },
    isDevice(device) {
      phone = { ...phone, device };
    },
    async refresh() {
      for (;;) {
        const before = phone;
        const read = await readPhone(connection, before);
        // what an exchange has found out meanwhile is not laid under an older look at the storage
        if (phone !== before) continue;
        phone = read;
        on.changed();
        return;
      }
    },
    async learn({ phone: now, write }) {
      phone = now;
      on.changed();
      try {
        await writeSettings(write);
      } catch (error) {
        on.report(error);
      }
    },
  };
}
