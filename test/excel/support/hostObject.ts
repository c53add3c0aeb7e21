/**
 * What an object of the host in memory is: its properties and methods carry the names that the
 * client library sends, so that a name which is not there is one that the host does not know.
 */
export class HostError extends Error {
  constructor(
    readonly code: string,
    message: string,
  ) {
    super(message);
  }
}

export const notFound = (what: string): HostError =>
  new HostError("ItemNotFound", `The requested resource doesn't exist: ${what}`);
export const invalid = (what: string): HostError =>
  new HostError("InvalidArgument", `The argument is invalid or missing: ${what}`);

/** A test asked the host for something that it cannot do. No error of Excel's; the test must fail. */
export class UnknownToHost extends Error {}

export abstract class HostObject {
  /** Name of the class in the client library. */
  abstract readonly kind: string;
}

export abstract class HostCollection<Item extends HostObject> extends HostObject {
  abstract readonly items: readonly Item[];

  GetCount(): number {
    return this.items.length;
  }

  GetItemAt(index: number): Item {
    const item = this.items[index];
    if (!item) throw invalid(`index ${index}`);
    return item;
  }
}

type Members = Record<string, unknown>;

function descriptorOf(object: HostObject, name: string): PropertyDescriptor {
  for (let at: object = object; at !== Object.prototype; at = Object.getPrototypeOf(at)) {
    const found = Object.getOwnPropertyDescriptor(at, name);
    if (found && /^_?[A-Z]/.test(name)) return found;
  }
  throw new UnknownToHost(`The host in memory knows no ${object.kind}.${name}.`);
}

export function readMember(object: HostObject, name: string): unknown {
  descriptorOf(object, name);
  return (object as unknown as Members)[name];
}

export function setMember(object: HostObject, name: string, value: unknown): void {
  const { set, writable } = descriptorOf(object, name);
  if (!set && !writable)
    throw new UnknownToHost(`The host in memory cannot set ${object.kind}.${name}.`);
  (object as unknown as Members)[name] = value;
}

export function callMember(object: HostObject, name: string, args: readonly unknown[]): unknown {
  const method = readMember(object, name);
  if (typeof method !== "function")
    throw new UnknownToHost(`${object.kind}.${name} is no method of the host in memory.`);
  return method.apply(object, args);
}
