import { storeContract } from "../testing/contract.ts";
import { createSqlite } from "../testing/sqlite-backend.ts";

storeContract("SQLite", createSqlite);
