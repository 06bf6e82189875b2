/**
 * One step for each older version of the record: from the data of that version to the data of the next.
 * A step reads plain data and is tested with a file of its version that stays in the tests for ever.
 * Version 1 is the first: there is no step yet.
 */
export const MIGRATIONS: ReadonlyMap<number, (data: unknown) => unknown> = new Map();
