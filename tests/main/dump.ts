import SqliteDatabase from 'better-sqlite3';

/** Every row of every table as one text. */
export function dump(file: string): string {
  const database = new SqliteDatabase(file, { readonly: true });
  try {
    const tables = database
      .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
      .pluck()
      .all() as string[];
    return JSON.stringify(
      tables.map((table) => [table, database.prepare(`SELECT * FROM "${table}"`).raw().all()]),
    );
  } finally {
    database.close();
  }
}
