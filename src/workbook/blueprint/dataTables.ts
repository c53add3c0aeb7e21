/**
 * The tables that players fill, by the part of the content that stands in each. Opening a file, the
 * pane and the starter data go by this list. Names are a file format: never change one.
 */
export const DATA_TABLES = {
  throws: "Throws",
  bag: "Bag",
  course: "Course",
  results: "Results",
  putts: "Putts",
} as const;

export type DataPart = keyof typeof DATA_TABLES;

export const DATA_PARTS = Object.keys(DATA_TABLES) as readonly DataPart[];

/**
 * Something for each of these tables.
 *
 * @example forEachTable((name) => name.length).bag // 3
 */
export const forEachTable = <T>(make: (name: string, part: DataPart) => T): Record<DataPart, T> =>
  Object.fromEntries(DATA_PARTS.map((part) => [part, make(DATA_TABLES[part], part)])) as Record<
    DataPart,
    T
  >;
