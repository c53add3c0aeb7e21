/** A record without one of its keys. */
export function without<Value>(
  record: Readonly<Record<string, Value>>,
  key: string,
): Readonly<Record<string, Value>> {
  return Object.fromEntries(Object.entries(record).filter(([other]) => other !== key));
}
