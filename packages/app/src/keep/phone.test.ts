import { describe, expect, it } from "vitest";
import { readPhone, UNKNOWN_PHONE } from "./phone.ts";
import { connect } from "./storage/open-database.ts";
import { newPhone } from "./testing/phone.ts";

describe("what is known of the phone", () => {
  it("keeps what an exchange has just found out and the storage does not hold yet", async () => {
    const connection = connect(newPhone());
    const met = { ...UNKNOWN_PHONE, operator: "isles", server: "reached" as const, lastReachedAt_ms: 5 };
    expect(await readPhone(connection, met)).toMatchObject({ operator: "isles", server: "reached" });
    connection.close();
  });
});
