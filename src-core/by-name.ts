/** An empty record for names from a file: "constructor" and "__proto__" are names like any other in it. */
export const byName = <Value>(): Record<string, Value> => Object.create(null) as Record<string, Value>

/** What a record from a file has under a name; what every object has by itself is nothing. */
export const ownOf = <Value>(
  record: Readonly<Record<string, Value>> | undefined,
  name: string,
): Value | undefined => (record && Object.hasOwn(record, name) ? record[name] : undefined)
