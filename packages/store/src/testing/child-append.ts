// Appends batches to a one-file database from a process of its own, and says when it is done.
import { openSqlite } from "../sqlite/open-sqlite.ts";
import { run } from "./arrivals.ts";

const { FILE = "", DEVICE = "", BATCHES = "0", SIZE = "0" } = process.env;
const store = await openSqlite({ file: FILE });
const own = store.forOperator("own");
for (let batch = 0; batch < Number(BATCHES); batch += 1) {
  const first = batch * Number(SIZE) + 1;
  await own.append("ZZ-SKR", run(DEVICE, first, first + Number(SIZE) - 1), 1_000 + batch);
}
await store.close();
