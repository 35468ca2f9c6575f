/** An empty record for names from a file: "constructor" and "__proto__" are names like any other in it. */
export const byName = <Value>(): Record<string, Value> => Object.create(null) as Record<string, Value>
