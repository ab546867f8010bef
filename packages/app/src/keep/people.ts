import { type Author, newId } from "@witnessmark/ledger";
import type { Connection } from "./storage/open-database.ts";
import { writeStrictly } from "./storage/strict-write.ts";

export interface People {
  readonly people: readonly Author[];
  readonly person: Author | null;
}

export async function readPeople(connection: Connection): Promise<People> {
  return await connection.run(async (database) => {
    const transaction = database.transaction(["people", "settings"], "readonly");
    const [people, person] = await Promise.all([
      transaction.objectStore("people").getAll(),
      transaction.objectStore("settings").get("person"),
      transaction.done,
    ]);
    // UUIDv7 sort by when they were made: the first to be introduced stands first.
    return { people, person: people.find(({ id }) => id === person) ?? null };
  });
}

/** Adds a person and puts the phone into their hand. */
export async function introducePerson(
  connection: Connection,
  { name, role }: Pick<Author, "name" | "role">,
): Promise<Author> {
  const trimmed = name.trim();
  if (trimmed === "") throw new Error("A name or initials are needed, so that the record says who looked.");
  const author: Author = { id: newId(), name: trimmed, role };
  await connection.run((database) =>
    writeStrictly(database, ["people", "settings"], async (transaction) => {
      await transaction.objectStore("people").put(author);
      await transaction.objectStore("settings").put(author.id, "person");
    }),
  );
  return author;
}

export async function handTo(connection: Connection, id: string): Promise<void> {
  await connection.run((database) =>
    writeStrictly(database, ["people", "settings"], async (transaction) => {
      if ((await transaction.objectStore("people").get(id)) === undefined) {
        throw new Error(`No person ${id} is known on this phone. Introduce them first.`);
      }
      await transaction.objectStore("settings").put(id, "person");
    }),
  );
}
