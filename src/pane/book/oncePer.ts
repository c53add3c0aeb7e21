/**
 * Works something out once for each value it is asked about, and forgets it with that value.
 * For what takes longer than a redraw may: coverage, worth, the plan.
 */
export function oncePer<Key extends object, Value>(work: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    let found = known.get(key);
    if (!found) known.set(key, (found = { value: work(key) }));
    return found.value;
  };
}

/** The same for what depends on two things. */
export function oncePerPair<One extends object, Other extends object, Value>(
  work: (one: One, other: Other) => Value,
): (one: One, other: Other) => Value {
  const byOne = oncePer((one: One) => oncePer((other: Other) => work(one, other)));
  return (one, other) => byOne(one)(other);
}
